import { rootBetween } from "@/lib/numerics/roots";

const SQRT_2_PI = Math.sqrt(2 * Math.PI);

/** Density of the standard normal distribution. */
export const normalDensity = (z: number): number =>
	Math.exp(-0.5 * z * z) / SQRT_2_PI;

/**
 * Standard normal distribution function. Up to 5 by the series Φ(z) = ½ + φ(z) Σ z^(2k+1)/(2k+1)!!,
 * beyond by the continued fraction of the tail; Abramowitz & Stegun 26.2.11 and 26.2.14 (from memory).
 * The tail keeps its relative precision. Throws for NaN.
 */
export function normalCdf(z: number): number {
	if (Number.isNaN(z)) throw new RangeError("normalCdf: z is NaN");
	if (z > 5) return 1 - normalCdf(-z);
	if (z < -38.5) return 0;
	if (z < -5) {
		let fraction = 0;
		for (let k = 60; k >= 1; k--) fraction = k / (-z + fraction);
		return normalDensity(z) / (-z + fraction);
	}
	let term = z;
	let sum = z;
	for (let odd = 3; Math.abs(term) > 1e-17 * Math.abs(sum); odd += 2) {
		term *= (z * z) / odd;
		sum += term;
	}
	return 0.5 + normalDensity(z) * sum;
}

/** The z below which a share `p` of the standard normal lies. Throws unless 0 < p < 1. */
export function normalQuantile(p: number): number {
	if (!(p > 0 && p < 1))
		throw new RangeError(`normalQuantile: p must be within 0 and 1, got ${p}`);
	const found = rootBetween({
		f: (z) => normalCdf(z) - p,
		from: -38,
		to: 38,
		tolerance: 1e-13,
	});
	if (!found.converged) throw new RangeError(`normalQuantile(${p})`);
	return found.root;
}

/** The chance of a normal deviate at least this far from 0, either side. */
export const twoSidedTail = (z: number): number => 2 * normalCdf(-Math.abs(z));
