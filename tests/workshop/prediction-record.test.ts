import { describe, expect, test } from "vitest";
import {
	differenceOf,
	isWithinBand,
	predictionRecord,
} from "@/lib/workshop/prediction-record";

const of = (expected: number, sd: number, measured: number) => ({
	expected,
	sd,
	measured,
});

describe("the record of predictions", () => {
	test("result less prediction, by hand", () => {
		expect(differenceOf(of(540, 10, 528))).toBe(-12);
		expect(
			predictionRecord([of(500, 10, 510), of(500, 10, 480), of(500, 10, 504)]),
		).toEqual({ builds: 3, withinBand: 2, meanDifference: -2 });
	});

	// 1.645: two-sided 90 % of the normal distribution, as in any printed table.
	test("the band is 1.645 standard deviations either way", () => {
		expect(isWithinBand(of(500, 10, 516.44))).toBe(true);
		expect(isWithinBand(of(500, 10, 516.46))).toBe(false);
		expect(isWithinBand(of(500, 10, 483.54))).toBe(false);
	});

	test("of evenly spread quantiles nine in ten lie inside, whatever each spread", () => {
		// The normal distribution function by Abramowitz & Stegun 7.1.26 (error below 1.5e-7), from memory,
		// inverted by halving.
		const phi = (z: number): number => {
			const t = 1 / (1 + (0.3275911 * Math.abs(z)) / Math.SQRT2);
			const erf =
				1 -
				t *
					(0.254829592 +
						t *
							(-0.284496736 +
								t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) *
					Math.exp(-(z * z) / 2);
			return 0.5 * (1 + Math.sign(z) * erf);
		};
		const quantile = (p: number): number => {
			let [low, high] = [-9, 9];
			for (let i = 0; i < 60; i++) {
				const middle = (low + high) / 2;
				if (phi(middle) < p) low = middle;
				else high = middle;
			}
			return low;
		};
		const builds = Array.from({ length: 1000 }, (_, i) => {
			const sd = 5 + (i % 7);
			return of(500, sd, 500 + sd * quantile((i + 0.5) / 1000));
		});
		expect(predictionRecord(builds).withinBand).toBe(900);
	});

	test("no build has no record", () => {
		expect(() => predictionRecord([])).toThrow(/no build/);
	});
});
