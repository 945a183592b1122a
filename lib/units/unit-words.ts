import {
	GRAMS_PER_OUNCE,
	INCHES_PER_FOOT,
	MM_PER_INCH,
	OUNCES_PER_POUND,
} from "./quantity";

export type LengthUnit = "mm" | "cm" | "m" | "in" | "ft";
export type MassUnit = "g" | "kg" | "oz" | "lb" | "st";

/** A unit as people write it. */
export interface Unit {
	/** Storage units (mm or g) in one of this unit. */
	readonly size: number;
	/** Power of ten, where the unit is metric: "1.005 m" is then read as 1.005e3, rounded once. */
	readonly exponent?: number;
	readonly words: readonly string[];
	/** The unit a bare number takes after this one, as in "5 ft 9" or "1 m 75". */
	readonly below?: string;
}

export const LENGTH_UNITS: Readonly<Record<LengthUnit, Unit>> = {
	mm: {
		size: 1,
		exponent: 0,
		words: ["mm", "millimetre", "millimeter", "millimetres", "millimeters"],
	},
	cm: {
		size: 10,
		exponent: 1,
		words: ["cm", "centimetre", "centimeter", "centimetres", "centimeters"],
	},
	m: {
		size: 1000,
		exponent: 3,
		words: ["m", "metre", "meter", "metres", "meters"],
		below: "cm",
	},
	in: { size: MM_PER_INCH, words: ["in", '"', "inch", "inches"] },
	ft: {
		size: MM_PER_INCH * INCHES_PER_FOOT,
		words: ["ft", "'", "foot", "feet"],
		below: "in",
	},
};

const POUND_G = GRAMS_PER_OUNCE * OUNCES_PER_POUND;
const POUNDS_PER_STONE = 14;

export const MASS_UNITS: Readonly<Record<MassUnit, Unit>> = {
	g: {
		size: 1,
		exponent: 0,
		words: ["g", "gram", "grams", "gramme", "grammes"],
	},
	kg: {
		size: 1000,
		exponent: 3,
		words: ["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"],
	},
	oz: { size: GRAMS_PER_OUNCE, words: ["oz", "ozs", "ounce", "ounces"] },
	lb: { size: POUND_G, words: ["lb", "lbs", "pound", "pounds"], below: "oz" },
	st: {
		size: POUND_G * POUNDS_PER_STONE,
		words: ["st", "stone", "stones"],
		below: "lb",
	},
};
