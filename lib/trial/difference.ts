import { rootBetween } from "@/lib/numerics/roots";
import { PRIOR_COUNT } from "./assumptions";
import {
	type Beta,
	betaCdf,
	betaMean,
	betaQuantile,
	betaVariance,
	gradedShares,
	meanOverBeta,
} from "./beta";

/** A share with its central 90 % interval. */
export interface Share {
	readonly value: number;
	readonly low: number;
	readonly high: number;
}

/** The first share less the second, between −1 and 1. */
export interface ShareDifference extends Share {
	readonly sd: number;
	/** That the first share is really the higher one, given the shots. */
	readonly chanceFirstHigher: number;
}

const TAIL = 0.05;

export const posterior = (hits: number, misses: number): Beta => ({
	a: hits + PRIOR_COUNT,
	b: misses + PRIOR_COUNT,
});

/**
 * Share of hits from its counts: posterior mean and central 90 % interval under Jeffreys' prior.
 * No shots give the prior itself, the widest interval there is.
 */
export function shareFrom(hits: number, misses: number): Share {
	const shape = posterior(hits, misses);
	return {
		value: betaMean(shape),
		low: betaQuantile(TAIL, shape),
		high: betaQuantile(1 - TAIL, shape),
	};
}

/** x to P(first − second ≤ x) of two independent beta-distributed shares: ∫ f₁(p) [1 − F₂(p − x)] dp. */
export function differenceCdf(
	first: Beta,
	second: Beta,
): (x: number) => number {
	const ends = gradedShares(first);
	const bends = [0, 1, ...gradedShares(second)];
	return (x) => {
		if (x <= -1) return 0;
		if (x >= 1) return 1;
		return meanOverBeta({
			shape: first,
			of: (share) => 1 - betaCdf(share - x, second),
			breaks: [...ends, ...bends.map((share) => share + x)],
		});
	};
}

/**
 * x to P(δ (2π − 1) ≤ x) of independent betas δ and π: the mean over δ of F_π((1 + x/δ)/2).
 */
export function contrastCdf(differs: Beta, won: Beta): (x: number) => number {
	const ends = gradedShares(differs);
	const bends = gradedShares(won).map((share) => 2 * share - 1);
	return (x) =>
		x === 0
			? betaCdf(0.5, won)
			: meanOverBeta({
					shape: differs,
					of: (share) => betaCdf((1 + x / share) / 2, won),
					breaks: [
						...ends,
						Math.abs(x),
						...bends.filter((bend) => bend !== 0).map((bend) => x / bend),
					],
				});
}

function quantileOf(cdf: (x: number) => number, part: number): number {
	const found = rootBetween({
		f: (x) => cdf(x) - part,
		from: -1,
		to: 1,
		tolerance: 1e-6,
	});
	if (!found.converged)
		throw new RangeError(`quantileOf ${part}: ${found.reason}`);
	return found.root;
}

const describe = (
	cdf: (x: number) => number,
	{ value, sd }: { value: number; sd: number },
): ShareDifference => ({
	value,
	sd,
	low: quantileOf(cdf, TAIL),
	high: quantileOf(cdf, 1 - TAIL),
	chanceFirstHigher: 1 - cdf(0),
});

/** Difference of two shares judged on separate shots. */
export function unpairedDifference(first: Beta, second: Beta): ShareDifference {
	return describe(differenceCdf(first, second), {
		value: betaMean(first) - betaMean(second),
		sd: Math.sqrt(betaVariance(first) + betaVariance(second)),
	});
}

/** How pairs of shots with the same set-up came out. */
export interface PairCounts {
	readonly both: number;
	readonly onlyFirst: number;
	readonly onlySecond: number;
	readonly neither: number;
}

/**
 * Difference of two shares judged on pairs. The four outcomes have Jeffreys' prior, Dirichlet(½, ½,
 * ½, ½); then the share δ of pairs that differ and the share π of those won by the first are
 * independent betas, and the difference is δ (2π − 1).
 */
export function pairedDifference(pairs: PairCounts): ShareDifference {
	const { onlyFirst, onlySecond } = pairs;
	const agree = pairs.both + pairs.neither;
	const differs: Beta = {
		a: onlyFirst + onlySecond + 2 * PRIOR_COUNT,
		b: agree + 2 * PRIOR_COUNT,
	};
	const won = posterior(onlyFirst, onlySecond);
	const total = differs.a + differs.b;
	const value = (onlyFirst - onlySecond) / total;
	// Variance of a contrast of Dirichlet shares: [Σ αᵢcᵢ²/α₀ − (Σ αᵢcᵢ/α₀)²]/(α₀ + 1).
	const sd = Math.sqrt((differs.a / total - value ** 2) / (total + 1));
	return describe(contrastCdf(differs, won), { value, sd });
}
