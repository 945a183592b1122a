import { Z90 } from "@/lib/reference/estimate";
import { gramsToOunces, mmToInches } from "@/lib/units/quantity";
import type { Reader } from "@/lib/words/reader";
import type { ChartPoint } from "./chart-model";

/** Points along each axis: enough for a smooth line, few enough for a table to be read. */
export const POINTS = 25;

export const range = (from: number, to: number, count = POINTS): number[] =>
	Array.from(
		{ length: count },
		(_, i) => from + ((to - from) * i) / (count - 1),
	);

export const axisLength = (mm: number, reader: Reader) =>
	reader.system === "metric" ? mm : mmToInches(mm);
export const axisMass = (g: number, reader: Reader) =>
	reader.system === "metric" ? g : gramsToOunces(g);
export const lengthUnit = (reader: Reader) =>
	reader.system === "metric" ? "mm" : "in";
export const massUnit = (reader: Reader) =>
	reader.system === "metric" ? "g" : "oz";

export const banded = (
	x: number,
	{ value, sd }: { value: number; sd: number },
	scale: (v: number) => number,
): ChartPoint => ({
	x,
	y: scale(value),
	low: scale(value - Z90 * sd),
	high: scale(value + Z90 * sd),
});

/** A few rows of a chart for its table: first, last and those between, evenly. */
export const thin = <T>(rows: readonly T[], keep = 9): T[] =>
	rows.filter((_, i) => i % Math.ceil((rows.length - 1) / (keep - 1)) === 0);
