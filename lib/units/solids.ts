import { plainText } from "./numeral";
import { type ParseRefusal, parseNumber } from "./parse";
import {
	GRAMS_PER_OUNCE,
	INCHES_PER_FOOT,
	MM_PER_INCH,
	OUNCES_PER_POUND,
	type UnitSystem,
} from "./quantity";

/** Exact: a cubic inch in cm³, a pound per cubic foot in kg/m³. */
export const CM3_PER_IN3 = (MM_PER_INCH / 10) ** 3;
export const KGM3_PER_LBFT3 =
	(GRAMS_PER_OUNCE * OUNCES_PER_POUND * 1000) /
	(CM3_PER_IN3 * INCHES_PER_FOOT ** 3);

interface SolidUnit {
	/** Storage units (cm³ or kg/m³) in one of this unit. */
	readonly size: number;
	/** As `plainText` leaves them: lower case, raised figures as figures. */
	readonly words: readonly string[];
}

const VOLUMES = {
	"cm³": { size: 1, words: ["cm3", "ccm", "cc", "ml"] },
	"dm³": { size: 1000, words: ["dm3", "l", "litre", "litres", "liter"] },
	"in³": { size: CM3_PER_IN3, words: ["in3", "cu in", "cu.in"] },
} satisfies Record<string, SolidUnit>;

const DENSITIES = {
	"kg/m³": { size: 1, words: ["kg/m3"] },
	"g/cm³": { size: 1000, words: ["g/cm3", "g/ccm", "kg/dm3", "kg/l"] },
	"lb/ft³": { size: KGM3_PER_LBFT3, words: ["lb/ft3", "lbs/ft3", "pcf"] },
} satisfies Record<string, SolidUnit>;

export type ParsedSolid =
	| {
			readonly ok: true;
			readonly value: number;
			/** The unit that a bare number was taken in. */
			readonly assumedUnit: string | null;
	  }
	| { readonly ok: false; readonly refusal: ParseRefusal };

export interface SolidBounds {
	readonly system: UnitSystem;
	readonly field: string;
	readonly min: number;
	readonly max: number;
}

export const volumeUnitOf = (system: UnitSystem) =>
	system === "metric" ? "cm³" : "in³";
export const densityUnitOf = (system: UnitSystem) =>
	system === "metric" ? "kg/m³" : "lb/ft³";

/** Reads a volume: "2100", "2,1 dm³", "128 in³". A bare number is in cm³ or in³. Bounds in cm³. */
export const parseVolume = (text: string, p: SolidBounds): ParsedSolid =>
	parseSolid(text, { ...p, units: VOLUMES, bare: volumeUnitOf(p.system) });

/** Reads a density: "672", "0.672 g/cm³", "42 lb/ft³". A bare number is in kg/m³ or lb/ft³. Bounds in kg/m³. */
export const parseDensity = (text: string, p: SolidBounds): ParsedSolid =>
	parseSolid(text, { ...p, units: DENSITIES, bare: densityUnitOf(p.system) });

function parseSolid(
	text: string,
	p: SolidBounds & {
		units: Readonly<Record<string, SolidUnit>>;
		bare: string;
	},
): ParsedSolid {
	const { units, bare, field, min, max } = p;
	const plain = plainText(text);
	const number = /^[-+]?[\d ./,]*/.exec(plain)?.[0] ?? "";
	const word = plain.slice(number.length).trim();
	const unit =
		word === ""
			? bare
			: Object.keys(units).find((id) => units[id]?.words.includes(word));
	const scale = unit === undefined ? undefined : units[unit];
	const typed = text.trim().slice(0, 40);
	if (scale === undefined)
		return {
			ok: false,
			refusal: {
				code: number.trim() === "" ? "not-a-number" : "unknown-unit",
				field,
				value: typed,
				min,
				max,
			},
		};
	const read = parseNumber(number, {
		min: min / scale.size,
		max: max / scale.size,
		field,
	});
	if (!read.ok) {
		const { code, value } = read.refusal;
		return {
			ok: false,
			refusal: {
				code,
				field,
				value: typeof value === "number" ? value * scale.size : value,
				min,
				max,
			},
		};
	}
	const value = read.value * scale.size;
	// A bound reached but for the last bits of the conversion is that bound.
	const onBound = [min, max].find(
		(bound) => Math.abs(value - bound) <= 1e-12 * bound,
	);
	return {
		ok: true,
		value: onBound ?? value,
		assumedUnit: word === "" ? bare : null,
	};
}
