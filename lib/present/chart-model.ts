import type { Reader } from "@/lib/words/reader";
import { formatNumber, formatQuarters } from "./figures";

/** A chart ready to draw: numbers already in the reader's units, every sentence written. */
export interface ChartModel {
	readonly id: string;
	readonly title: string;
	/** What the chart shows, in a sentence or two, for who does not see it. */
	readonly summary: string;
	readonly x: {
		readonly label: string;
		readonly unit: string;
		readonly domain: readonly [number, number];
		/** It counts: no tick lies between two whole numbers. */
		readonly isWhole?: boolean;
	};
	/** Stacked, sharing x: two quantities never share one panel's y. */
	readonly panels: readonly ChartPanel[];
	/** What is chosen now. */
	readonly marker?: { readonly x: number; readonly label: string };
	readonly table: {
		readonly columns: readonly string[];
		readonly rows: readonly (readonly string[])[];
	};
}

export interface ChartPanel {
	readonly label: string;
	readonly unit: string;
	readonly lines: readonly ChartLine[];
	readonly zones: readonly ChartZone[];
}

export interface ChartLine {
	readonly name: string;
	readonly points: readonly ChartPoint[];
	/** Default "line"; "points" where nothing lies between one and the next. */
	readonly mark?: "line" | "points";
}

/** `low` and `high`: the 90 % band, both or neither. */
export interface ChartPoint {
	readonly x: number;
	readonly y: number;
	readonly low?: number;
	readonly high?: number;
}

/** A stretch of one axis. `wanted`: where to be; `limit`: where not to be. */
export interface ChartZone {
	readonly axis: "x" | "y";
	readonly from: number;
	readonly to: number;
	readonly label: string;
	readonly kind: "wanted" | "limit";
}

export interface AxisTicks {
	readonly ticks: readonly number[];
	readonly step: number;
	/** First and last tick that enclose the range. */
	readonly domain: readonly [number, number];
}

const LEADS = [1, 2, 2.5, 5, 10] as const;

/**
 * Round ticks, about `count` of them, from at or below `from` to at or above `to`. Steps are 1, 2,
 * 2.5 or 5 times a power of ten. A range of one value gets half a unit to each side.
 */
export function axisTicks({
	from,
	to,
	count = 5,
}: {
	from: number;
	to: number;
	count?: number;
}): AxisTicks {
	if (!Number.isFinite(from) || !Number.isFinite(to) || from > to)
		throw new RangeError(`axisTicks: from ${from} to ${to}`);
	const [low, high] = from === to ? [from - 0.5, to + 0.5] : [from, to];
	const raw = (high - low) / Math.max(1, count - 1);
	const power = 10 ** Math.floor(Math.log10(raw));
	const lead =
		LEADS.find((candidate) => candidate * power >= raw * (1 - 1e-9)) ?? 10;
	const step = lead * power;
	const first = Math.floor(low / step + 1e-9);
	const last = Math.ceil(high / step - 1e-9);
	const ticks = Array.from({ length: last - first + 1 }, (_, index) =>
		Number(((first + index) * step).toPrecision(12)),
	);
	return { ticks, step, domain: [first * step, last * step] };
}

/** The ticks inside a fixed range, for an axis that must not grow. */
export function innerTicks(
	[from, to]: readonly [number, number],
	count?: number,
): { readonly ticks: readonly number[]; readonly step: number } {
	const { ticks, step } = axisTicks({ from, to, count });
	const slack = step * 1e-9;
	return {
		ticks: ticks.filter((tick) => tick >= from - slack && tick <= to + slack),
		step,
	};
}

/** A number on an axis: quarters of an inch as the trade writes them, else as many decimals as the step has. */
export function tickText(
	value: number,
	{ step, unit }: { step: number; unit: string },
	reader: Reader,
): string {
	if (unit === "in" && Number.isInteger(step * 4))
		return formatQuarters(value, reader);
	const decimals = [0, 1, 2, 3, 4, 5, 6].find(
		(count) =>
			Math.abs(step * 10 ** count - Math.round(step * 10 ** count)) < 1e-6,
	);
	return formatNumber(value, reader, decimals ?? 6);
}

/** The span of a panel: its lines, their bands, and the zones along y. */
export function panelRange({
	lines,
	zones,
}: Pick<ChartPanel, "lines" | "zones">): { from: number; to: number } {
	const values = [
		...lines.flatMap(({ points }) =>
			points.flatMap(({ y, low = y, high = y }) => [y, low, high]),
		),
		...zones.flatMap(({ axis, from, to }) => (axis === "y" ? [from, to] : [])),
	];
	if (values.length === 0) throw new RangeError("panelRange: an empty panel");
	return { from: Math.min(...values), to: Math.max(...values) };
}

/** The height of a line at x, straight between its points; null outside them. */
export function lineAt(
	points: readonly ChartPoint[],
	x: number,
): number | null {
	for (const [index, right] of points.entries()) {
		const left = points[index - 1];
		if (right.x === x) return right.y;
		if (left !== undefined && left.x <= x && x < right.x)
			return left.y + ((x - left.x) / (right.x - left.x)) * (right.y - left.y);
	}
	return null;
}
