import fc from "fast-check";
import { jStat } from "jstat";
import { describe, expect, test } from "vitest";
import {
	momentsOf,
	type PopulationPrior,
	populationAfter,
} from "@/lib/numerics/normal-population";

const PRIOR: PopulationPrior = {
	mean: 672,
	meanSd: 47.5,
	degrees: 6,
	scale: 38.8,
};

/** The same by summing prior × likelihood, from jStat's densities, over a plain grid of mean and variance. */
function bruteForce(
	prior: PopulationPrior,
	readings: readonly { value: number; sd: number }[],
) {
	const { mean, meanSd, degrees, scale } = prior;
	let [total, first, second, variance] = [0, 0, 0, 0];
	const steps = 400;
	for (let i = 0; i < steps; i++) {
		// Even steps in log τ from 1 to 2000.
		const spread = Math.exp((Math.log(2000) * (i + 0.5)) / steps);
		const prior2 =
			jStat.invgamma.pdf(spread ** 2, degrees / 2, (degrees * scale ** 2) / 2) *
			2 *
			spread ** 2;
		for (let j = 0; j < steps; j++) {
			const m = mean + 6 * meanSd * ((2 * (j + 0.5)) / steps - 1);
			let density = prior2 * jStat.normal.pdf(m, mean, meanSd);
			for (const { value, sd } of readings)
				density *= 100 * jStat.normal.pdf(value, m, Math.hypot(spread, sd));
			total += density;
			first += density * m;
			second += density * m * m;
			variance += density * spread ** 2;
		}
	}
	const centre = first / total;
	return {
		mean: centre,
		meanSd: Math.sqrt(second / total - centre ** 2),
		spread: Math.sqrt(variance / total),
	};
}

describe("populationAfter", () => {
	test("without readings is the prior: spread ν₀s₀²/(ν₀ − 2)", () => {
		const { mean, meanSd, spread, nextSd } = momentsOf(
			populationAfter(PRIOR, []),
		);
		expect(mean).toBeCloseTo(672, 9);
		expect(meanSd).toBeCloseTo(47.5, 9);
		expect(spread).toBeCloseTo(38.8 * Math.sqrt(6 / 4), 4);
		expect(nextSd).toBeCloseTo(Math.hypot(meanSd, spread), 9);
	});

	test.each([
		["one sure reading", [{ value: 730, sd: 0 }]],
		["one vague reading", [{ value: 730, sd: 60 }]],
		[
			"readings of different worth",
			[
				{ value: 700, sd: 5 },
				{ value: 741, sd: 12 },
				{ value: 655, sd: 40 },
				{ value: 722, sd: 8 },
			],
		],
		[
			"readings closer together than their own spread",
			[
				{ value: 701, sd: 20 },
				{ value: 702, sd: 20 },
				{ value: 700, sd: 20 },
			],
		],
		[
			"readings far from the prior",
			[
				{ value: 820, sd: 8 },
				{ value: 835, sd: 8 },
			],
		],
	])("%s: as summed over a plain grid", (_, readings) => {
		const exact = bruteForce(PRIOR, readings);
		const found = momentsOf(populationAfter(PRIOR, readings));
		// The plain grid's own error; halving its steps moves it by less.
		expect(found.mean).toBeCloseTo(exact.mean, 3);
		expect(found.meanSd).toBeCloseTo(exact.meanSd, 3);
		expect(found.spread).toBeCloseTo(exact.spread, 3);
	});

	test("many readings: mean and spread of the list, by jStat", () => {
		const values = Array.from(
			{ length: 2000 },
			(_, i) => 700 + 25 * jStat.normal.inv((i + 0.5) / 2000, 0, 1),
		);
		const found = momentsOf(
			populationAfter(
				PRIOR,
				values.map((value) => ({ value, sd: 0 })),
			),
		);
		expect(Math.abs(found.mean - jStat.mean(values))).toBeLessThan(0.02);
		expect(Math.abs(found.spread - jStat.stdev(values))).toBeLessThan(0.1);
		expect(found.meanSd).toBeCloseTo(found.spread / Math.sqrt(2000), 2);
	});

	test("a reading that says nothing changes nothing; a sure one draws the mean towards it", () => {
		fc.assert(
			fc.property(
				fc.double({ min: 500, max: 900, noNaN: true }),
				fc.double({ min: 1, max: 50, noNaN: true }),
				(value, sd) => {
					const before = momentsOf(populationAfter(PRIOR, []));
					const empty = momentsOf(populationAfter(PRIOR, [{ value, sd: 1e7 }]));
					expect(empty.mean).toBeCloseTo(before.mean, 3);
					expect(empty.nextSd).toBeCloseTo(before.nextSd, 3);
					const after = momentsOf(populationAfter(PRIOR, [{ value, sd }]));
					expect(Math.sign(after.mean - before.mean)).toBe(
						Math.sign(value - before.mean),
					);
					expect(Math.abs(after.mean - before.mean)).toBeLessThan(
						Math.abs(value - before.mean),
					);
				},
			),
		);
	});

	test("the parts' weights add up to one", () => {
		const parts = populationAfter(PRIOR, [{ value: 700, sd: 5 }]);
		expect(parts.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(
			1,
			12,
		);
	});

	test.each([
		["no spread of the mean", { ...PRIOR, meanSd: 0 }, []],
		["no degrees", { ...PRIOR, degrees: 0 }, []],
		["not a number", PRIOR, [{ value: Number.NaN, sd: 1 }]],
		["a negative spread", PRIOR, [{ value: 700, sd: -1 }]],
	])("throws for %s", (_, prior, readings) => {
		expect(() => populationAfter(prior, readings)).toThrow(RangeError);
	});
});
