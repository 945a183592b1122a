/**
 * Desirability functions and their geometric mean. Derringer & Suich, J. Qual. Technol. 12 (1980) 214:
 * d = 0 at and beyond a limit, 1 at the ideal, ((y − limit)/(ideal − limit))^s between. A stretch of
 * ideal values in place of the paper's single target is this project's widening: two of its
 * one-sided functions back to back. Weights in the mean: Derringer, Qual. Prog. 27 (1994) 51 (from
 * memory), D = (Π dᵢ^wᵢ)^(1/Σw); with equal weights it is the paper's own.
 */
export interface Side {
	/** From here inward the value is as good as it gets. */
	readonly ideal: number;
	/** From here outward it is unacceptable. */
	readonly limit: number;
	/** The paper's s or t: above 1 asks to be near the ideal, below 1 forgives. Default 1. */
	readonly exponent?: number;
}

/** A side that is null is open: no value is too low, or too high. */
export interface Shape {
	readonly low: Side | null;
	readonly high: Side | null;
}

/** Share of the way from limit to ideal, 1 at the ideal, 0 at the limit, negative beyond it; not capped. */
const share = (side: Side, value: number): number =>
	(value - side.limit) / (side.ideal - side.limit);

/**
 * How far inside its limits a value is: 1 within the ideal stretch, 0 at a limit, below 0 outside,
 * there linear in the miss. What a relaxation is measured by.
 */
export function standingWithin({ low, high }: Shape, value: number): number {
	const below = low ? share(low, value) : 1;
	const above = high ? share(high, value) : 1;
	return Math.min(1, below, above);
}

/** 0 unacceptable to 1 ideal. */
export function desirability({ low, high }: Shape, value: number): number {
	const below = low ? oneSided(low, value) : 1;
	const above = high ? oneSided(high, value) : 1;
	return Math.min(below, above);
}

function oneSided(side: Side, value: number): number {
	const linear = share(side, value);
	if (linear >= 1) return 1;
	if (!(linear > 0)) return 0;
	const { exponent } = side;
	return exponent === undefined || exponent === 1 ? linear : linear ** exponent;
}

/** Weighted geometric mean; 0 as soon as one that counts is 0. Throws where nothing counts. */
export function overallDesirability(
	parts: readonly { readonly desirability: number; readonly weight: number }[],
): number {
	let logSum = 0;
	let weightSum = 0;
	for (const { desirability: value, weight } of parts) {
		if (!(weight >= 0))
			throw new RangeError(`weight must not be negative, got ${weight}`);
		if (weight === 0) continue;
		logSum += weight * Math.log(value);
		weightSum += weight;
	}
	if (weightSum === 0)
		throw new RangeError("overallDesirability: no weight is above 0");
	return Math.exp(logSum / weightSum);
}

/** Throws unless limits lie outside ideals and the sides do not cross. */
export function checkedShape(shape: Shape): Shape {
	const { low, high } = shape;
	if (low && !(low.limit < low.ideal))
		throw new RangeError(`low limit ${low.limit} is not below ${low.ideal}`);
	if (high && !(high.limit > high.ideal))
		throw new RangeError(`high limit ${high.limit} is not above ${high.ideal}`);
	if (low && high && low.ideal > high.ideal)
		throw new RangeError(`ideals cross: ${low.ideal} above ${high.ideal}`);
	return shape;
}

/** Equal slack on both sides of a value. */
export const around = (p: {
	value: number;
	idealHalf: number;
	limitHalf: number;
}): Shape =>
	checkedShape({
		low: { ideal: p.value - p.idealHalf, limit: p.value - p.limitHalf },
		high: { ideal: p.value + p.idealHalf, limit: p.value + p.limitHalf },
	});

export const atMost = (ideal: number, limit: number): Shape =>
	checkedShape({ low: null, high: { ideal, limit } });

export const atLeast = (ideal: number, limit: number): Shape =>
	checkedShape({ low: { ideal, limit }, high: null });
