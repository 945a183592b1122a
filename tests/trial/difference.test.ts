import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { seededChance } from "@/lib/trial/chance";
import {
	pairedDifference,
	posterior,
	shareFrom,
	unpairedDifference,
} from "@/lib/trial/difference";

const hits = fc.integer({ min: 0, max: 60 });

describe("one share", () => {
	test("mirrors when pots and misses are swapped, and narrows with shots", () => {
		const few = shareFrom(6, 4);
		const swapped = shareFrom(4, 6);
		expect(few.low).toBeCloseTo(1 - swapped.high, 10);
		const many = shareFrom(60, 40);
		expect(many.high - many.low).toBeLessThan(few.high - few.low);
	});
	test("no shots leave nearly everything possible", () => {
		const { value, low, high } = shareFrom(0, 0);
		expect(value).toBe(0.5);
		expect(low).toBeLessThan(0.01);
		expect(high).toBeGreaterThan(0.99);
	});
});

describe("two shares", () => {
	test("swapping the cues turns the difference round; its interval holds its mean", () => {
		fc.assert(
			fc.property(hits, hits, hits, hits, (a, b, c, d) => {
				const one = unpairedDifference(posterior(a, b), posterior(c, d));
				const other = unpairedDifference(posterior(c, d), posterior(a, b));
				expect(one.value).toBeCloseTo(-other.value, 10);
				expect(one.low).toBeCloseTo(-other.high, 5);
				expect(one.chanceFirstHigher).toBeCloseTo(
					1 - other.chanceFirstHigher,
					7,
				);
				expect(one.low).toBeLessThan(one.value);
				expect(one.value).toBeLessThan(one.high);
			}),
			{ numRuns: 40, seed: 2 },
		);
	});

	test("pairs: the same", () => {
		fc.assert(
			fc.property(
				hits,
				hits,
				hits,
				hits,
				(both, onlyFirst, onlySecond, neither) => {
					const one = pairedDifference({
						both,
						onlyFirst,
						onlySecond,
						neither,
					});
					const other = pairedDifference({
						both,
						onlyFirst: onlySecond,
						onlySecond: onlyFirst,
						neither,
					});
					expect(one.low).toBeCloseTo(-other.high, 5);
					expect(one.chanceFirstHigher).toBeCloseTo(
						1 - other.chanceFirstHigher,
						10,
					);
					expect(one.low).toBeLessThan(one.value);
					expect(one.value).toBeLessThan(one.high);
				},
			),
			{ numRuns: 40, seed: 3 },
		);
	});

	test("pairs that agree narrow the difference more than separate shots do", () => {
		const paired = pairedDifference({
			both: 40,
			onlyFirst: 6,
			onlySecond: 4,
			neither: 10,
		});
		const separate = unpairedDifference(posterior(46, 14), posterior(44, 16));
		expect(paired.high - paired.low).toBeLessThan(
			0.7 * (separate.high - separate.low),
		);
	});
});

/** Draws from a beta with whole or half shapes, by sums of squared normals (gamma of half-integer shape). */
function betaDraw(a: number, b: number, chance: () => number): number {
	const gamma = (shape: number) => {
		let sum = 0;
		for (let i = 0; i < 2 * shape; i++) {
			const radius = Math.sqrt(-2 * Math.log(1 - chance()));
			sum += (radius * Math.cos(2 * Math.PI * chance())) ** 2 / 2;
		}
		return sum;
	};
	const first = gamma(a);
	return first / (first + gamma(b));
}

describe("against seeded sampling from the same posterior", () => {
	const DRAWS = 40_000;
	/** Four standard errors of a share near 5 %. */
	const SLACK = 4 * Math.sqrt((0.05 * 0.95) / DRAWS);
	const below = (draws: readonly number[], x: number) =>
		draws.filter((draw) => draw < x).length / draws.length;

	test("separate shots: 5 % of the draws lie below the interval, 5 % above", () => {
		const chance = seededChance(41);
		const draws = Array.from(
			{ length: DRAWS },
			() => betaDraw(12.5, 8.5, chance) - betaDraw(9.5, 11.5, chance),
		);
		const found = unpairedDifference(posterior(12, 8), posterior(9, 11));
		expect(Math.abs(below(draws, found.low) - 0.05)).toBeLessThan(SLACK);
		expect(Math.abs(below(draws, found.high) - 0.95)).toBeLessThan(SLACK);
		expect(
			Math.abs(1 - below(draws, 0) - found.chanceFirstHigher),
		).toBeLessThan(4 * Math.sqrt(0.25 / DRAWS));
	});

	test("pairs", () => {
		const chance = seededChance(43);
		const draws = Array.from({ length: DRAWS }, () => {
			const differs = betaDraw(9 + 1, 11 + 1, chance);
			return differs * (2 * betaDraw(6.5, 3.5, chance) - 1);
		});
		const found = pairedDifference({
			both: 8,
			onlyFirst: 6,
			onlySecond: 3,
			neither: 3,
		});
		expect(Math.abs(below(draws, found.low) - 0.05)).toBeLessThan(SLACK);
		expect(Math.abs(below(draws, found.high) - 0.95)).toBeLessThan(SLACK);
		const mean = draws.reduce((sum, draw) => sum + draw, 0) / DRAWS;
		expect(mean).toBeCloseTo(found.value, 2);
	});
});

describe("coverage of the 90 % interval of a difference", () => {
	/** Trials of players whose shares are drawn from the prior itself: 90 % is then exact. */
	test("separate shots, 600 seeded trials of 25 shots each", () => {
		const chance = seededChance(77);
		const trials = 600;
		let covered = 0;
		for (let i = 0; i < trials; i++) {
			const [p, q] = [betaDraw(0.5, 0.5, chance), betaDraw(0.5, 0.5, chance)];
			const pots = (share: number) =>
				Array.from({ length: 25 }, () => chance() < share).filter(Boolean)
					.length;
			const [k, m] = [pots(p), pots(q)];
			const { low, high } = unpairedDifference(
				posterior(k, 25 - k),
				posterior(m, 25 - m),
			);
			if (low <= p - q && p - q <= high) covered++;
		}
		const error = 3 * Math.sqrt((0.9 * 0.1) / trials);
		expect(Math.abs(covered / trials - 0.9)).toBeLessThan(error);
	});
});
