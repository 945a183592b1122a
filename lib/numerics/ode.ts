import {
	addScaled,
	factor,
	multiply,
	STRIDE,
	type SymmetricBand,
	solve,
} from "./banded";

/** Reusable storage for systems of up to `capacity` freedoms. */
export interface MotionScratch {
	readonly system: Float64Array;
	readonly q: Float64Array;
	readonly v: Float64Array;
	readonly a: Float64Array;
	readonly pulled: Float64Array;
}

export const motionScratch = (capacity: number): MotionScratch => ({
	system: new Float64Array(capacity * STRIDE),
	q: new Float64Array(capacity),
	v: new Float64Array(capacity),
	a: new Float64Array(capacity),
	pulled: new Float64Array(capacity),
});

/**
 * M q̈ + K q = shape·amplitude(t) from rest, by Newmark's constant average acceleration (β ¼, γ ½):
 * second order in the step, stable at any step, no numerical damping. Returns the velocities at the
 * last step, in the scratch's own storage where one is given. `amplitudes[i]` is the amplitude at step
 * i, i = 0 … steps; the start is at rest with q̈ = 0, so amplitudes[0] must be 0.
 */
export function velocityFromRest(p: {
	mass: SymmetricBand;
	stiffness: SymmetricBand;
	shape: Float64Array;
	amplitudes: Float64Array;
	stepS: number;
	scratch?: MotionScratch;
}): Float64Array {
	const { mass, stiffness, shape, amplitudes, stepS } = p;
	if (!(stepS > 0))
		throw new RangeError(`stepS must be positive, got ${stepS}`);
	if (amplitudes[0] !== 0)
		throw new RangeError(`amplitudes must start at 0, got ${amplitudes[0]}`);
	const { size } = mass;
	const { q, v, a, pulled, system } = p.scratch ?? motionScratch(size);
	const quarter = (stepS * stepS) / 4;
	const half = stepS / 2;
	const sum = addScaled(mass, stiffness, quarter, system);
	const factored = factor(sum, system);
	for (let i = 0; i < size; i++) {
		q[i] = 0;
		v[i] = 0;
		a[i] = 0;
	}
	for (let step = 1; step < amplitudes.length; step++) {
		const amplitude = amplitudes[step] as number;
		// Predictor: the part of the new q and v known before the new acceleration.
		for (let i = 0; i < size; i++) {
			const ai = a[i] as number;
			const vi = v[i] as number;
			q[i] = (q[i] as number) + stepS * vi + quarter * ai;
			v[i] = vi + half * ai;
		}
		multiply(stiffness, q, pulled);
		for (let i = 0; i < size; i++)
			a[i] = (shape[i] as number) * amplitude - (pulled[i] as number);
		solve(factored, a);
		for (let i = 0; i < size; i++) {
			const ai = a[i] as number;
			q[i] = (q[i] as number) + quarter * ai;
			v[i] = (v[i] as number) + half * ai;
		}
	}
	return v;
}
