import library from "jstat";
import { describe, expect, test } from "vitest";
import { Z90 } from "@/lib/reference/estimate";
import {
	differenceCdf,
	pairedDifference,
	unpairedDifference,
} from "@/lib/trial/difference";
import { fitLogistic } from "@/lib/trial/logistic";
import { holmAdjusted, luckPaired, luckUnpaired } from "@/lib/trial/luck";
import { pairsForPower, shotsForPower } from "@/lib/trial/more-shots";
import { williamsSquare } from "@/lib/trial/order";

const { jStat } = library;

/** Fisher, The Design of Experiments (1935): eight cups, three of four named right; one-sided 17/70. */
describe("Fisher's tea tasting", () => {
	test("two-sided it is 34/70", () => {
		expect(luckUnpaired([1, 3], [3, 1])).toBeCloseTo(34 / 70, 12);
	});
	test("all four right is 2/70", () => {
		expect(luckUnpaired([0, 4], [4, 0])).toBeCloseTo(2 / 70, 12);
	});
});

/**
 * Altham, J. R. Statist. Soc. B 31 (1969) 261 (from memory): with priors that favour neither but lean
 * against the finding, β(0, 1) and β(1, 0), the posterior chance that the order is the other way is
 * Fisher's one-sided chance exactly.
 */
describe("Altham's identity of Bayes and Fisher", () => {
	test.each([
		[3, 1, 1, 3],
		[34, 16, 29, 21],
		[12, 3, 5, 9],
		[7, 43, 2, 48],
	])(
		"%i:%i against %i:%i, residual below 1e-8",
		(hits1, miss1, hits2, miss2) => {
			const shots1 = hits1 + miss1;
			const all = shots1 + hits2 + miss2;
			let fisher = 0;
			for (let k = hits1; k <= Math.min(shots1, hits1 + hits2); k++)
				fisher += jStat.hypgeom.pdf(k, all, hits1 + hits2, shots1);
			const bayes = differenceCdf(
				{ a: hits1, b: miss1 + 1 },
				{ a: hits2 + 1, b: miss2 },
			)(0);
			expect(Math.abs(bayes - fisher)).toBeLessThan(1e-8);
		},
	);
});

/** P(second > first) of whole-number betas as a finite sum (a closed form found in many texts; from memory). */
test("the chance of the higher share is the closed sum, residual below 1e-9", () => {
	const lnB = (a: number, b: number) =>
		jStat.gammaln(a) + jStat.gammaln(b) - jStat.gammaln(a + b);
	for (const [a1, b1, a2, b2] of [
		[4, 7, 6, 5],
		[35, 17, 30, 22],
		[2, 1, 1, 2],
		[120, 80, 9, 3],
	] as const) {
		let sum = 0;
		for (let i = 0; i < a2; i++)
			sum += Math.exp(
				lnB(a1 + i, b1 + b2) - Math.log(b2 + i) - lnB(1 + i, b2) - lnB(a1, b1),
			);
		const { chanceFirstHigher } = unpairedDifference(
			{ a: a1, b: b1 },
			{ a: a2, b: b2 },
		);
		expect(Math.abs(1 - chanceFirstHigher - sum)).toBeLessThan(1e-9);
	}
});

/** Agresti, Categorical Data Analysis, approval asked twice: 794, 150, 86, 570; −0.04, standard error 0.0095 (from memory). */
test("paired shares of a textbook table", () => {
	const { value, sd, low, high } = pairedDifference({
		both: 794,
		onlyFirst: 150,
		onlySecond: 86,
		neither: 570,
	});
	expect(value).toBeCloseTo(0.04, 3);
	expect(Math.abs(sd - 0.0095)).toBeLessThan(1e-4);
	expect(low).toBeCloseTo(0.04 - Z90 * 0.0095, 3);
	expect(high).toBeCloseTo(0.04 + Z90 * 0.0095, 3);
});

/** The exact form of McNemar's test is a sign test: a binomial tail with p = ½. */
test("pairs: the binomial tail of a general-purpose library", () => {
	for (const [won, lost] of [
		[9, 3],
		[14, 9],
		[5, 0],
		[40, 22],
	] as const) {
		const tail = 2 * jStat.binomial.cdf(lost, won + lost, 0.5);
		const differences = [
			...new Array<number>(won).fill(1),
			...new Array<number>(lost).fill(-1),
			...new Array<number>(11).fill(0),
		];
		expect(luckPaired(differences)).toBeCloseTo(tail, 8);
	}
	// 0.146 for 9 against 3, as in tables of the sign test (from memory).
	expect(luckPaired([...Array(9).fill(1), ...Array(3).fill(-1)])).toBeCloseTo(
		0.146,
		3,
	);
});

/**
 * Shots for a power: worked examples in the manual of a statistics system (R, power.prop.test; from
 * memory): shares 0.50 and 0.75 need 76.7 in each group for 90 %, and 50 give a power of 0.740.
 */
describe("shots for a power", () => {
	const shares = { first: 0.5, second: 0.75, luck: 0.05 };
	test("76.7 for 90 %", () => {
		expect(shotsForPower({ ...shares, power: 0.9 })).toBeCloseTo(76.7, 1);
	});
	test("50 for 74.0 %", () => {
		expect(shotsForPower({ ...shares, power: 0.7402 })).toBeCloseTo(50, 1);
	});
	test("pairs of independent shots need as many as separate shots, for a small difference", () => {
		const [first, second] = [0.6, 0.58];
		const pairs = pairsForPower({
			differing: first * (1 - second) + second * (1 - first),
			difference: first - second,
			power: 0.8,
			luck: 0.05,
		});
		const separate = shotsForPower({ first, second, power: 0.8, luck: 0.05 });
		expect(pairs / separate).toBeCloseTo(1, 2);
	});
});

/** Physicians' aspirin study as in Agresti: 189 of 11034 and 104 of 11037; log odds ratio 0.605, standard error 0.123 (from memory). */
test("logistic regression of a two-by-two table", () => {
	const open = { mean: 0, sd: 1e4 };
	const { coefficients, covariance } = fitLogistic(
		[
			{ x: [1, 1], hits: 189, shots: 11_034 },
			{ x: [1, 0], hits: 104, shots: 11_037 },
		],
		[open, open],
	);
	expect(coefficients[1]).toBeCloseTo(0.605, 3);
	expect(Math.sqrt(covariance[1]?.[1] ?? 0)).toBeCloseTo(0.123, 3);
	// Closed form: ln of the ratio of odds, and the root of the sum of reciprocal counts (Woolf 1955).
	expect(coefficients[1]).toBeCloseTo(
		Math.log((189 * (11_037 - 104)) / (104 * (11_034 - 189))),
		6,
	);
	expect(covariance[1]?.[1]).toBeCloseTo(
		1 / 189 + 1 / (11_034 - 189) + 1 / 104 + 1 / (11_037 - 104),
		9,
	);
});

/** Adjusted chances as the manual of R's p.adjust would give them for these four (from memory). */
test("Holm's step-down", () => {
	const adjusted = holmAdjusted([0.01, 0.04, 0.03, 0.005]);
	for (const [i, expected] of [0.03, 0.06, 0.06, 0.02].entries())
		expect(adjusted[i]).toBeCloseTo(expected, 12);
});

/** Williams (1949), four treatments, as reprinted in texts on cross-over trials (from memory). */
test("the square of four is Williams's", () => {
	expect(
		williamsSquare(4).map((row) => row.map((i) => "ABCD"[i]).join("")),
	).toEqual(["ABDC", "BCAD", "CDBA", "DACB"]);
});
