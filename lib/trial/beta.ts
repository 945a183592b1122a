import { integratePanel } from "@/lib/numerics/quadrature";
import { rootBetween } from "@/lib/numerics/roots";

/** A beta distribution over a share between 0 and 1. */
export interface Beta {
	readonly a: number;
	readonly b: number;
}

// Lanczos' approximation with g = 7 and nine terms; coefficients after P. Godfrey (from memory; the
// tests hold them to factorials and to a general-purpose library).
const LANCZOS = [
	0.99999999999980993, 676.5203681218851, -1259.1392167224028,
	771.32342877765313, -176.61502916214059, 12.507343278686905,
	-0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/** ln Γ(x). Throws unless x > 0. */
export function logGamma(x: number): number {
	if (!(x > 0) || x === Number.POSITIVE_INFINITY)
		throw new RangeError(`logGamma: x must be above 0, got ${x}`);
	if (x < 0.5)
		return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
	const shifted = x - 1;
	const top = shifted + 7.5;
	const sum = LANCZOS.reduce(
		(total, coefficient, i) => total + coefficient / (shifted + i),
	);
	return (
		0.5 * Math.log(2 * Math.PI) +
		(shifted + 0.5) * Math.log(top) -
		top +
		Math.log(sum)
	);
}

export const logBeta = ({ a, b }: Beta): number =>
	logGamma(a) + logGamma(b) - logGamma(a + b);

/** ln of the number of ways to choose k of n. */
export const logChoose = (n: number, k: number): number =>
	logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);

const check = ({ a, b }: Beta, what: string): void => {
	if (!(a > 0 && b > 0 && Number.isFinite(a) && Number.isFinite(b)))
		throw new RangeError(`${what}: a = ${a} and b = ${b} must be above 0`);
};

/**
 * The share of a beta distribution below x: the regularised incomplete beta function, by its
 * continued fraction (DLMF 8.17.22) in the modified Lentz scheme. 0 and 1 outside [0, 1].
 */
export function betaCdf(x: number, shape: Beta): number {
	check(shape, "betaCdf");
	if (Number.isNaN(x)) throw new RangeError("betaCdf: x is NaN");
	if (x <= 0) return 0;
	if (x >= 1) return 1;
	const { a, b } = shape;
	// The fraction converges fast below the mean; above it the mirrored one does.
	if (x > (a + 1) / (a + b + 2)) return 1 - betaCdf(1 - x, { a: b, b: a });
	const front = Math.exp(
		a * Math.log(x) + b * Math.log1p(-x) - logBeta(shape) - Math.log(a),
	);
	return front * continuedFraction(x, a, b);
}

const TINY = 1e-300;
const away = (value: number): number => (Math.abs(value) < TINY ? TINY : value);

function continuedFraction(x: number, a: number, b: number): number {
	let c = 1;
	let d = 1 / away(1 - ((a + b) * x) / (a + 1));
	let value = d;
	for (let m = 1; m <= 20_000; m++) {
		const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
		d = 1 / away(1 + even * d);
		c = away(1 + even / c);
		value *= d * c;
		const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
		d = 1 / away(1 + odd * d);
		c = away(1 + odd / c);
		const change = d * c;
		value *= change;
		if (Math.abs(change - 1) < 1e-15) return value;
	}
	throw new RangeError(
		`betaCdf: the fraction did not settle at x = ${x}, a = ${a}, b = ${b}`,
	);
}

/** The share below which a part `p` of the distribution lies. Throws unless 0 ≤ p ≤ 1. */
export function betaQuantile(p: number, shape: Beta): number {
	check(shape, "betaQuantile");
	if (!(p >= 0 && p <= 1))
		throw new RangeError(`betaQuantile: p must be 0 to 1, got ${p}`);
	if (p === 0 || p === 1) return p;
	// In the angle whose sine squared is the share, both ends are told apart well.
	const found = rootBetween({
		f: (angle) => betaCdf(Math.sin(angle) ** 2, shape) - p,
		from: 0,
		to: Math.PI / 2,
		tolerance: 1e-15,
	});
	if (!found.converged)
		throw new RangeError(
			`betaQuantile(${p}) of a = ${shape.a}, b = ${shape.b}: ${found.reason}`,
		);
	return Math.sin(found.root) ** 2;
}

export const betaMean = ({ a, b }: Beta): number => a / (a + b);
export const betaVariance = ({ a, b }: Beta): number =>
	(a * b) / ((a + b) ** 2 * (a + b + 1));

/** Parts of a distribution between which a smooth function is integrated at once: close together at the ends. */
export const GRADED_PARTS = [
	1e-13,
	1e-9,
	1e-6,
	1e-4,
	5e-3,
	0.1,
	0.5,
	0.9,
	0.995,
	0.9999,
	0.999999,
	1 - 1e-9,
	1 - 1e-13,
] as const;

/** The shares below which those parts lie. */
export const gradedShares = (shape: Beta): number[] =>
	GRADED_PARTS.map((part) => betaQuantile(part, shape));

/**
 * Mean of a function of a beta-distributed share, by Gauss–Legendre panels in the angle whose sine
 * squared is the share: there the density is bounded for a, b ≥ ½, which is required.
 * `breaks`: shares between which the function is smooth and the density tame; give `gradedShares` of
 * the shape, and wherever the function bends.
 */
export function meanOverBeta(p: {
	shape: Beta;
	of: (share: number) => number;
	breaks: readonly number[];
}): number {
	const { a, b } = p.shape;
	if (!(a >= 0.5 && b >= 0.5))
		throw new RangeError(`meanOverBeta: a = ${a} and b = ${b} must be ≥ ½`);
	const logScale = Math.LN2 - logBeta(p.shape);
	const angles = p.breaks
		.filter((share) => share > 0 && share < 1)
		.map((share) => Math.asin(Math.sqrt(share)))
		.sort((one, other) => one - other);
	const ends = [0, ...angles, Math.PI / 2];
	let total = 0;
	for (let i = 0; i + 1 < ends.length; i++) {
		const [from, to] = [ends[i] as number, ends[i + 1] as number];
		if (to - from < 1e-15) continue;
		total += integratePanel({
			from,
			to,
			count: 16,
			integrand: (angle) => {
				const sine = Math.sin(angle);
				const density = Math.exp(
					logScale +
						(2 * a - 1) * Math.log(sine) +
						(2 * b - 1) * Math.log(Math.cos(angle)),
				);
				return density * p.of(sine * sine);
			},
		});
	}
	return total;
}
