import { snapTo } from "@/lib/units/quantity";

/** What a scan covers of one figure, its ends on the bench's steps unless a wish set it. */
export interface Span {
	readonly low: number;
	readonly high: number;
	readonly step: number;
}

/** How many of the bench's steps it holds; 0 where it is one value. */
export const benchSteps = ({ low, high, step }: Span): number =>
	Math.round((high - low) / step);

/** Two values more; from the bench's own steps on, the next whole part of a step. */
export function finerCount(span: Span, count: number): number {
	const steps = benchSteps(span);
	return count <= steps
		? Math.min(count + 2, steps + 1)
		: (Math.floor((count - 1) / steps) + 1) * steps + 1;
}

/**
 * Evenly spread, each on a bench step, each once; a span of no width keeps its value as it is. More
 * values than the bench has steps are whole parts of them, every step among them.
 */
export function valuesOf(span: Span, count: number): readonly number[] {
	const { low, high, step } = span;
	if (high === low) return [low];
	const steps = benchSteps(span);
	if (count > steps + 1) {
		const parts = (count - 1) / steps;
		return Array.from({ length: count }, (_, i) =>
			i % parts === 0
				? snapTo(low + (i / parts) * step, step)
				: low + (i * step) / parts,
		);
	}
	const values: number[] = [];
	for (let i = 0; i < count; i++) {
		const value = snapTo(low + ((high - low) * i) / (count - 1), step);
		const last = values[values.length - 1];
		if (last === undefined || value - last > step / 2) values.push(value);
	}
	return values;
}

/** A wish is one value; otherwise the bench's steps inside what is covered and allowed. */
export function spanOf(p: {
	wish: number | undefined;
	covered: readonly [number, number];
	allowed: readonly [number, number];
	step: number;
}): Span {
	const { step } = p;
	if (p.wish !== undefined) return { low: p.wish, high: p.wish, step };
	const [least, most] = p.allowed;
	const inside = (value: number) => Math.min(most, Math.max(least, value));
	const low = Math.ceil(inside(p.covered[0]) / step - 1e-9) * step;
	const high = Math.floor(inside(p.covered[1]) / step + 1e-9) * step;
	return low < high ? { low, high, step } : { low: high, high, step };
}
