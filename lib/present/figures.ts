import {
	GRAMS_PER_OUNCE,
	gramsToOunces,
	INCHES_PER_FOOT,
	mmToInches,
	OUNCES_PER_POUND,
} from "@/lib/units/quantity";
import { inSystem, type Reader } from "@/lib/words/reader";

import { decimalMark, fillFigure } from "./figure-patterns";

/**
 * The only place where numbers are rounded and put into text. Every function throws on a number that
 * is not finite. No-break spaces stand between number and unit; a minus is the sign U+2212.
 */

/**
 * How a length is written. `length`: cues, reach, balance (1 mm; quarters of an inch). `diameter`:
 * 0.1 mm, and odd quarters as they are; 0.001 in. `station`: bench positions (1 mm; 0.01 in). `gap`: small signed distances
 * (0.1 mm; 0.01 in). `bench`: what is turned and gauged (0.01 mm; 0.001 in). `body`: stature and span (0.5 cm; feet and quarter inches). `limb`: 0.5 cm;
 * quarter inches.
 */
export type LengthKind =
	| "length"
	| "diameter"
	| "station"
	| "gap"
	| "bench"
	| "body"
	| "limb";
/** `cue`: 1 g; 0.1 oz, and quarters as they are. `added`: 1 g; 0.01 oz, for weights of metal. `body`: 0.5 kg; 1 lb. */
export type MassKind = "cue" | "added" | "body";

const NBSP = "\u00a0";
const MINUS = "\u2212";

/** A number as text beside its unit, so that bands can share one unit. */
interface Written {
	readonly number: string;
	/** With its leading space where it takes one; empty where the number carries its own marks. */
	readonly unit: string;
}

const joined = ({ number, unit }: Written): string => number + unit;

function finite(value: number, what: string): number {
	if (Number.isFinite(value)) return value;
	throw new RangeError(`cannot write ${what} = ${value}`);
}

/** A number to a fixed count of decimals with the language's decimal mark; thousands grouped from five digits on. */
export function formatNumber(
	value: number,
	reader: Reader,
	decimals = 0,
): string {
	const text = Math.abs(finite(value, "a number")).toFixed(decimals);
	const [whole = "0", fraction] = text.split(".");
	const grouped =
		whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, "\u202f") : whole;
	const sign = value < 0 && Number(text) !== 0 ? MINUS : "";
	return (
		sign +
		grouped +
		(fraction === undefined ? "" : decimalMark(reader) + fraction)
	);
}

const QUARTERS = ["", "¼", "½", "¾"] as const;

/** The nearest quarter: 57.4 is "57½". */
export function formatQuarters(value: number, reader: Reader): string {
	const quarters = Math.round(Math.abs(finite(value, "quarters")) * 4);
	const whole = Math.floor(quarters / 4);
	const part = QUARTERS[quarters % 4];
	const digits = whole === 0 && part !== "" ? "" : formatNumber(whole, reader);
	return (value < 0 && quarters !== 0 ? MINUS : "") + digits + part;
}

const unitless = (number: string): Written => ({ number, unit: "" });
const withUnit = (number: string, unit: string): Written => ({
	number,
	unit: NBSP + unit,
});

/** To the nearest half, without a decimal where it is whole: "175", "175.5". */
const halves = (value: number, reader: Reader): string => {
	const rounded = Math.round(value * 2) / 2;
	return formatNumber(rounded, reader, Number.isInteger(rounded) ? 0 : 1);
};

function feetAndInches(mm: number, reader: Reader): Written {
	const quarters = Math.round(mmToInches(Math.abs(mm)) * 4);
	const feet = Math.floor(quarters / (4 * INCHES_PER_FOOT));
	const inches = quarters / 4 - feet * INCHES_PER_FOOT;
	const text =
		feet === 0
			? `${formatQuarters(inches, reader)}${NBSP}in`
			: `${formatNumber(feet, reader)}${NBSP}ft${NBSP}${formatQuarters(inches, reader)}${NBSP}in`;
	return unitless((mm < 0 && quarters !== 0 ? MINUS : "") + text);
}

/**
 * Quarters are the bench's own step, of an ounce and of a millimetre: 18¼ oz is "18.25 oz", never
 * "18.3 oz".
 */
const isOddQuarter = (value: number): boolean =>
	Math.abs(Math.abs((value * 2) % 1) - 0.5) < 1e-9;

function metricDecimals(mm: number, kind: LengthKind): number {
	if (kind === "bench" || (kind === "diameter" && isOddQuarter(mm))) return 2;
	return kind === "diameter" || kind === "gap" ? 1 : 0;
}

function writeLength(mm: number, reader: Reader, kind: LengthKind): Written {
	finite(mm, `a ${kind} in mm`);
	if (reader.system === "metric") {
		if (kind === "body" || kind === "limb")
			return withUnit(halves(mm / 10, reader), "cm");
		return withUnit(formatNumber(mm, reader, metricDecimals(mm, kind)), "mm");
	}
	if (kind === "body") return feetAndInches(mm, reader);
	const inches = mmToInches(mm);
	if (kind === "diameter" || kind === "bench")
		return withUnit(formatNumber(inches, reader, 3), "in");
	if (kind === "station" || kind === "gap")
		return withUnit(formatNumber(inches, reader, 2), "in");
	return withUnit(formatQuarters(inches, reader), "in");
}

function writeMass(g: number, reader: Reader, kind: MassKind): Written {
	finite(g, `a ${kind} mass in g`);
	if (kind === "body")
		return reader.system === "metric"
			? withUnit(halves(g / 1000, reader), "kg")
			: withUnit(
					formatNumber(g / GRAMS_PER_OUNCE / OUNCES_PER_POUND, reader),
					"lb",
				);
	if (reader.system === "metric") return withUnit(formatNumber(g, reader), "g");
	const ounces = gramsToOunces(g);
	const decimals = kind === "added" || isOddQuarter(ounces) ? 2 : 1;
	return withUnit(formatNumber(ounces, reader, decimals), "oz");
}

/** The same reader in the other units. */
const otherThan = (reader: Reader): Reader =>
	inSystem(reader, reader.system === "metric" ? "trade" : "metric");

export const formatLength = (
	mm: number,
	reader: Reader,
	kind: LengthKind = "length",
): string => joined(writeLength(mm, reader, kind));

export const formatMass = (
	g: number,
	reader: Reader,
	kind: MassKind = "cue",
): string => joined(writeMass(g, reader, kind));

/** The chosen reader first, the other one beside it. */
export interface Both {
	readonly main: string;
	readonly other: string;
}

export const formatBothLength = (
	mm: number,
	reader: Reader,
	kind: LengthKind = "length",
): Both => ({
	main: formatLength(mm, reader, kind),
	other: formatLength(mm, otherThan(reader), kind),
});

export const formatBothMass = (
	g: number,
	reader: Reader,
	kind: MassKind = "cue",
): Both => ({
	main: formatMass(g, reader, kind),
	other: formatMass(g, otherThan(reader), kind),
});

/** A quantity of either dimension; `formatBoth` is what figures and fields show. */
export type Quantity =
	| { readonly mm: number; readonly kind?: LengthKind }
	| { readonly g: number; readonly kind?: MassKind };

export const formatBoth = (quantity: Quantity, reader: Reader): Both =>
	"mm" in quantity
		? formatBothLength(quantity.mm, reader, quantity.kind)
		: formatBothMass(quantity.g, reader, quantity.kind);

/** "57¼–58 in"; one number where both ends round to the same; "to" between negative numbers. */
function writeBand(low: Written, high: Written, reader: Reader): string {
	if (low.number === high.number) return joined(high);
	const signed = low.number.startsWith(MINUS) || high.number.startsWith(MINUS);
	return fillFigure(signed ? "figure.signedBand" : "figure.band", reader, [
		low.number,
		joined(high),
	]);
}

interface Ends {
	readonly low: number;
	readonly high: number;
}

export const formatLengthBand = (
	bandMm: Ends,
	reader: Reader,
	kind: LengthKind = "length",
): string =>
	writeBand(
		writeLength(bandMm.low, reader, kind),
		writeLength(bandMm.high, reader, kind),
		reader,
	);

export const formatMassBand = (
	bandG: Ends,
	reader: Reader,
	kind: MassKind = "cue",
): string =>
	writeBand(
		writeMass(bandG.low, reader, kind),
		writeMass(bandG.high, reader, kind),
		reader,
	);

export const formatNumberBand = (
	band: Ends,
	reader: Reader,
	decimals = 0,
	unit = "",
): string =>
	writeBand(
		{ number: formatNumber(band.low, reader, decimals), unit },
		{ number: formatNumber(band.high, reader, decimals), unit },
		reader,
	);

const signed = (text: string, value: number): string =>
	value > 0 && /[1-9¼½¾]/.test(text) ? `+${text}` : text;

/** "+12 mm", "−½ in", "0 mm". */
export const formatLengthDifference = (
	mm: number,
	reader: Reader,
	kind: LengthKind = "length",
): string => signed(formatLength(mm, reader, kind), mm);

export const formatMassDifference = (
	g: number,
	reader: Reader,
	kind: MassKind = "cue",
): string => signed(formatMass(g, reader, kind), g);

export const formatAngle = (
	angleDeg: number,
	reader: Reader,
	decimals = 1,
): string => `${formatNumber(finite(angleDeg, "angleDeg"), reader, decimals)}°`;

/** A fraction of one as percent: 0.125 with one decimal is "12.5%". */
export const formatPercent = (
	fraction: number,
	reader: Reader,
	decimals = 0,
): string =>
	fillFigure("figure.percent", reader, [
		formatNumber(finite(fraction, "a fraction") * 100, reader, decimals),
	]);

export const formatRatio = (
	ratio: number,
	reader: Reader,
	decimals = 2,
): string => formatNumber(finite(ratio, "a ratio"), reader, decimals);

/** The suffix of a field or an axis in the reader’s units. */
export function lengthUnitOf(reader: Reader, kind: LengthKind): string {
	if (reader.system === "trade") return "in";
	return kind === "body" || kind === "limb" ? "cm" : "mm";
}

export function massUnitOf(reader: Reader, kind: MassKind): string {
	if (kind === "body") return reader.system === "metric" ? "kg" : "lb";
	return reader.system === "metric" ? "g" : "oz";
}
