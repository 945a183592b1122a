import { NUMBER, numeralReadings, plainText } from "./numeral";
import type { UnitSystem } from "./quantity";
import {
	LENGTH_UNITS,
	type LengthUnit,
	MASS_UNITS,
	type MassUnit,
	type Unit,
} from "./unit-words";

/** What was wrong with a typed quantity. The same shape as a refusal of a computation. */
export interface ParseRefusal {
	readonly code:
		| "empty"
		| "not-a-number"
		| "unknown-unit"
		| "out-of-range"
		| "ambiguous";
	readonly field: string;
	/** The number in the field's storage unit when it is out of range, otherwise the text as typed. */
	readonly value: number | string | null;
	readonly min: number;
	readonly max: number;
}

type Refused = { readonly ok: false; readonly refusal: ParseRefusal };
/** `assumedUnit`: the unit that a bare number was taken in, null where the text names its unit. */
export type ParsedLength =
	| {
			readonly ok: true;
			readonly mm: number;
			readonly assumedUnit: string | null;
	  }
	| Refused;
export type ParsedMass =
	| {
			readonly ok: true;
			readonly g: number;
			readonly assumedUnit: string | null;
	  }
	| Refused;
export type ParsedNumber =
	| { readonly ok: true; readonly value: number }
	| Refused;

const PLAIN: Readonly<Record<string, Unit>> = {
	"": { size: 1, exponent: 0, words: [] },
};

/**
 * Reads a length as people write it: "1450", "175 cm", "1,75 m", "5 ft 9", `57½"`, "57 1/2 in".
 * A bare number is in `defaultUnit`, else mm (metric) or in (trade). Bounds in mm, inclusive.
 */
export function parseLength(
	text: string,
	p: {
		system: UnitSystem;
		minMm: number;
		maxMm: number;
		defaultUnit?: LengthUnit;
		field?: string;
	},
): ParsedLength {
	const read = readQuantity(text, {
		units: LENGTH_UNITS,
		defaultUnit: p.defaultUnit ?? (p.system === "metric" ? "mm" : "in"),
		field: p.field ?? "lengthMm",
		min: p.minMm,
		max: p.maxMm,
	});
	return "refusal" in read
		? read
		: { ok: true, mm: read.value, assumedUnit: read.assumedUnit };
}

/**
 * Reads a mass: "520", "520 g", "18.5 oz", "1 lb 3 oz", "11 st 4". A bare number is in
 * `defaultUnit`, else g (metric) or oz (trade). Bounds in g, inclusive.
 */
export function parseMass(
	text: string,
	p: {
		system: UnitSystem;
		minG: number;
		maxG: number;
		defaultUnit?: MassUnit;
		field?: string;
	},
): ParsedMass {
	const read = readQuantity(text, {
		units: MASS_UNITS,
		defaultUnit: p.defaultUnit ?? (p.system === "metric" ? "g" : "oz"),
		field: p.field ?? "massG",
		min: p.minG,
		max: p.maxG,
	});
	return "refusal" in read
		? read
		: { ok: true, g: read.value, assumedUnit: read.assumedUnit };
}

/** Reads a number without a unit (years, counts, shares) with the same commas and fractions. */
export function parseNumber(
	text: string,
	p: { min: number; max: number; field?: string },
): ParsedNumber {
	const read = readQuantity(text, {
		units: PLAIN,
		defaultUnit: "",
		field: p.field ?? "number",
		min: p.min,
		max: p.max,
	});
	return "refusal" in read ? read : { ok: true, value: read.value };
}

interface Reader {
	units: Readonly<Record<string, Unit>>;
	defaultUnit: string;
	field: string;
	min: number;
	max: number;
}

/** One number with its unit: what it may be worth in the storage unit, one value a reading. */
interface Term {
	readonly unit: string;
	readonly values: readonly number[];
	readonly whole: boolean;
}

function readQuantity(
	text: string,
	reader: Reader,
): Refused | { value: number; assumedUnit: string | null } {
	const { min, max, field } = reader;
	const typed = text.trim().slice(0, 40);
	const refused = (
		code: ParseRefusal["code"],
		value: ParseRefusal["value"] = typed,
	): Refused => ({ ok: false, refusal: { code, field, value, min, max } });

	const plain = plainText(text);
	if (plain === "") return refused("empty", null);
	const sign = plain.startsWith("-") ? -1 : 1;
	const terms = readTerms(plain.replace(/^[+-]\s*/, ""), reader);
	if (typeof terms === "string") return refused(terms);

	const totals = new Set(
		terms.list.reduce<number[]>(
			(sums, term) =>
				sums.flatMap((sum) => term.values.map((value) => sum + sign * value)),
			[0],
		),
	);
	const within = [...totals]
		.map((total) => onBound(total, min, max))
		.filter((total) => total >= min && total <= max);
	const [value, other] = within;
	if (other !== undefined) return refused("ambiguous");
	if (value !== undefined)
		return { value, assumedUnit: terms.bare ? reader.defaultUnit : null };
	const [first = Number.NaN] = totals;
	return refused("out-of-range", Number.isFinite(first) ? first : typed);
}

/** A bound reached but for the last bits of a conversion (57 × 25.4 against 1447.8) is that bound. */
function onBound(total: number, min: number, max: number): number {
	for (const bound of [min, max])
		if (Math.abs(total - bound) <= 1e-12 * Math.abs(bound)) return bound;
	return total;
}

const UNIT = /^ ?([\p{L}µ°%#$€£]+|['"])\.?/u;

function readTerms(
	plain: string,
	{ units, defaultUnit }: Reader,
): { list: Term[]; bare: boolean } | "not-a-number" | "unknown-unit" {
	const list: Term[] = [];
	let rest = plain;
	let bare = false;
	while (rest !== "") {
		const number = NUMBER.exec(rest);
		if (number === null) return "not-a-number";
		rest = rest.slice(number[0].length);
		const above = list.at(-1);
		const word = UNIT.exec(rest);
		let unit: string | undefined;
		if (word !== null) {
			rest = rest.slice(word[0].length);
			unit = Object.keys(units).find((id) =>
				units[id]?.words.includes(word[1] ?? ""),
			);
			if (unit === undefined) return "unknown-unit";
		} else if (rest.trim() !== "") {
			return "not-a-number";
		} else if (above === undefined) {
			unit = defaultUnit;
			bare = true;
		} else {
			unit = units[above.unit]?.below;
		}
		const scale = unit === undefined ? undefined : units[unit];
		if (unit === undefined || scale === undefined) return "not-a-number";
		const term = { unit, ...readNumber(number, scale) };
		if (term.values.length === 0) return "not-a-number";
		// "5 ft 13 in" and "5.5 ft 3" are slips of the finger, not quantities.
		const step = above === undefined ? undefined : units[above.unit]?.size;
		if (above !== undefined && step !== undefined) {
			const fits = term.values.filter((value) => value < step * (1 - 1e-12));
			if (!above.whole || fits.length === 0) return "not-a-number";
			list.push({ ...term, values: fits });
		} else list.push(term);
		rest = rest.trimStart();
	}
	return { list, bare };
}

/** The values, in the storage unit, that a written number may stand for; none if it is malformed. */
function readNumber(
	match: RegExpExecArray,
	scale: Unit,
): { values: number[]; whole: boolean } {
	const [, mixed, mixedTop, mixedBottom, , top, bottom, numeral] = match;
	if (numeral !== undefined) {
		const decimals = numeralReadings(numeral);
		return {
			values: decimals.map((decimal) =>
				scale.exponent === undefined
					? Number(decimal) * scale.size
					: Number(`${decimal}e${scale.exponent}`),
			),
			whole: decimals.every((decimal) => /^\d+$/.test(decimal)),
		};
	}
	const over = Number(mixedTop ?? top);
	const under = Number(mixedBottom ?? bottom);
	if (under === 0 || (mixed !== undefined && over >= under))
		return { values: [], whole: false };
	return {
		values: [(Number(mixed ?? 0) + over / under) * scale.size],
		whole: false,
	};
}
