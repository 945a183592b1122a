/** Exact by definition: international inch, avoirdupois ounce and pound. */
export const MM_PER_INCH = 25.4;
export const INCHES_PER_FOOT = 12;
export const GRAMS_PER_OUNCE = 28.349523125;
export const OUNCES_PER_POUND = 16;

export const inchesToMm = (inches: number): number => inches * MM_PER_INCH;
export const mmToInches = (mm: number): number => mm / MM_PER_INCH;
export const ouncesToGrams = (ounces: number): number =>
	ounces * GRAMS_PER_OUNCE;
export const gramsToOunces = (grams: number): number => grams / GRAMS_PER_OUNCE;

/** Which units a person reads and types. Storage and computation are always mm and g. */
export type UnitSystem = "metric" | "trade";

/** Nearest multiple of `step`. */
export const snapTo = (value: number, step: number): number =>
	Math.round(value / step) * step;
