import library from "jstat";
import { describe, expect, test } from "vitest";
import { betaCdf, betaQuantile, logChoose, logGamma } from "@/lib/trial/beta";
import { shareFrom } from "@/lib/trial/difference";
import { normalCdf, normalQuantile } from "@/lib/trial/normal";

const { jStat } = library;
const SHAPES = [0.25, 0.5, 1, 3.5, 20.5, 80.5, 300.5];
const PARTS = [0.001, 0.05, 0.25, 0.5, 0.9, 0.95, 0.999];

/**
 * A general-purpose statistics library from npm (jstat 1.9.6). Its own incomplete beta stops at about
 * 2e-8, seen beside closed forms; that sets the tolerance.
 */
describe("against a general-purpose statistics library", () => {
	test("beta distribution function, largest residual below 5e-8", () => {
		let worst = 0;
		for (const a of SHAPES)
			for (const b of SHAPES)
				for (let x = 0.005; x < 1; x += 0.015)
					worst = Math.max(
						worst,
						Math.abs(betaCdf(x, { a, b }) - jStat.beta.cdf(x, a, b)),
					);
		expect(worst).toBeLessThan(5e-8);
		expect(worst).toBeGreaterThan(0);
	});
	test("beta quantiles, largest residual below 1e-7", () => {
		let worst = 0;
		for (const a of SHAPES.slice(1))
			for (const b of SHAPES.slice(1))
				for (const p of PARTS)
					worst = Math.max(
						worst,
						Math.abs(betaQuantile(p, { a, b }) - jStat.beta.inv(p, a, b)),
					);
		expect(worst).toBeLessThan(1e-7);
	});
	test("ln Γ, normal distribution and its quantiles", () => {
		for (const x of [0.1, 0.5, 1, 2.5, 17, 171.3, 1001])
			expect(logGamma(x)).toBeCloseTo(jStat.gammaln(x), 8);
		for (let z = -7; z <= 7; z += 0.23)
			expect(normalCdf(z)).toBeCloseTo(jStat.normal.cdf(z, 0, 1), 9);
		for (const p of PARTS)
			expect(normalQuantile(p)).toBeCloseTo(jStat.normal.inv(p, 0, 1), 7);
	});
	test("a sum of hypergeometric terms is what the counts give", () => {
		for (const [hits, all, marked, dealt] of [
			[3, 8, 4, 4],
			[12, 60, 30, 25],
		] as const)
			expect(
				Math.exp(
					logChoose(marked, hits) +
						logChoose(all - marked, dealt - hits) -
						logChoose(all, dealt),
				),
			).toBeCloseTo(jStat.hypgeom.pdf(hits, all, marked, dealt), 9);
	});
});

describe("closed forms", () => {
	test("whole-number shapes are binomial sums, to 1e-13", () => {
		for (const [k, n, p] of [
			[1, 4, 0.3],
			[7, 20, 0.42],
			[55, 100, 0.5],
			[130, 400, 0.35],
		] as const) {
			let sum = 0;
			for (let i = k; i <= n; i++)
				sum += Math.exp(
					logChoose(n, i) + i * Math.log(p) + (n - i) * Math.log1p(-p),
				);
			expect(Math.abs(betaCdf(p, { a: k, b: n - k + 1 }) - sum)).toBeLessThan(
				1e-12,
			);
		}
	});
	test("arcsine law: I(½, ½) = (2/π) asin √x, and I(1, b) = 1 − (1 − x)^b", () => {
		for (const x of [1e-9, 0.001, 0.2, 0.5, 0.77, 0.9999]) {
			expect(betaCdf(x, { a: 0.5, b: 0.5 })).toBeCloseTo(
				(2 / Math.PI) * Math.asin(Math.sqrt(x)),
				14,
			);
			expect(betaCdf(x, { a: 1, b: 7.5 })).toBeCloseTo(
				-Math.expm1(7.5 * Math.log1p(-x)),
				14,
			);
		}
	});
	test("factorials", () => {
		let factorial = 1;
		for (let n = 1; n <= 20; n++) {
			factorial *= n;
			expect(logGamma(n + 1)).toBeCloseTo(Math.log(factorial), 12);
		}
	});
});

/** Upper 5 % points of F, as in any table (Snedecor & Cochran; from memory). F and beta: x = d₁F/(d₁F + d₂). */
describe("tables of the F distribution", () => {
	test.each([
		[1, 10, 4.96],
		[2, 10, 4.1],
		[3, 10, 3.71],
		[5, 10, 3.33],
		[10, 10, 2.98],
		[1, 20, 4.35],
		[4, 20, 2.87],
		[10, 20, 2.35],
		[8, 12, 2.85],
		[12, 15, 2.48],
		[6, 6, 4.28],
		[10, 5, 4.74],
	])("F(%i, %i) at 5 %% is %f", (d1, d2, tabled) => {
		const x = betaQuantile(0.95, { a: d1 / 2, b: d2 / 2 });
		expect((d2 * x) / (d1 * (1 - x))).toBeCloseTo(tabled, 2);
	});
});

/** Cumulative binomial probabilities to four places (tables of the binomial distribution; from memory). */
describe("binomial tables", () => {
	test.each([
		[3, 10, 0.5, 0.1719],
		[4, 20, 0.3, 0.2375],
		[6, 15, 0.4, 0.6098],
		[1, 5, 0.2, 0.7373],
		[3, 25, 0.1, 0.7636],
	])("P(X ≤ %i), n = %i, p = %f is %f", (k, n, p, tabled) => {
		expect(1 - betaCdf(p, { a: k + 1, b: n - k })).toBeCloseTo(tabled, 4);
	});
});

/** Exact 95 % limits of Clopper & Pearson (1934), whose ends are beta quantiles (tables; from memory). */
describe("tables of exact binomial limits", () => {
	test.each([
		[0, 10, 0, 0.3085],
		[1, 10, 0.0025, 0.445],
		[5, 10, 0.1871, 0.8129],
		[10, 20, 0.272, 0.728],
	])("%i of %i: %f to %f", (k, n, low, high) => {
		if (k > 0)
			expect(betaQuantile(0.025, { a: k, b: n - k + 1 })).toBeCloseTo(low, 4);
		expect(betaQuantile(0.975, { a: k + 1, b: n - k })).toBeCloseTo(high, 4);
	});
});

/**
 * Brown, Cai & DasGupta, Statist. Sci. 16 (2001) 101: Jeffreys intervals are recommended because they
 * hold their level on average. Computed exactly here: the coverage of the 90 % interval over all
 * outcomes of 20 shots, averaged over shares of 0.1 to 0.9.
 */
test("the 90 % interval covers 90 % on average", () => {
	const shots = 20;
	const intervals = Array.from({ length: shots + 1 }, (_, hits) =>
		shareFrom(hits, shots - hits),
	);
	const shares = Array.from({ length: 161 }, (_, i) => 0.1 + i * 0.005);
	const coverage = shares.map((share) =>
		intervals.reduce(
			(sum, { low, high }, hits) =>
				low <= share && share <= high
					? sum +
						Math.exp(
							logChoose(shots, hits) +
								hits * Math.log(share) +
								(shots - hits) * Math.log1p(-share),
						)
					: sum,
			0,
		),
	);
	const mean = coverage.reduce((sum, one) => sum + one, 0) / coverage.length;
	expect(mean).toBeGreaterThan(0.89);
	expect(mean).toBeLessThan(0.91);
});
