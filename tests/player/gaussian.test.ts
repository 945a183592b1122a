/** Conditioning against the textbook block formula, computed with ml-matrix (npm). */
import { inverse, Matrix } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { chained, given, mixed } from "@/lib/player/gaussian";
import { adults } from "@/lib/player/populations";

const prior = adults("female");
const covariance = new Matrix(prior.covariance.map((row) => [...row]));

describe("given readings", () => {
	const readings = [
		{ index: 0, value: 1702, sd: 6 },
		{ index: 1, value: 1690, sd: 10 },
		{ index: 9, value: 171, sd: 3 },
	];
	const { posterior } = given(prior, readings);

	test("mean: x̄ + Σ₁₂ Σ₂₂⁻¹ (r − x̄₂) with the readings as they stand", () => {
		const known = readings.map((r) => r.index);
		const s22 = covariance.selection(known, known);
		const s12 = covariance.selection([...prior.mean.keys()], known);
		const surprise = Matrix.columnVector(
			readings.map((r) => r.value - (prior.mean[r.index] as number)),
		);
		const gain = s12.mmul(inverse(s22));
		const mean = gain.mmul(surprise).to1DArray();
		for (const [i, m] of prior.mean.entries())
			expect(posterior.mean[i]).toBeCloseTo(m + (mean[i] as number), 6);
		// Covariance: Σ₁₁ − K Σ₂₁, widened by K diag(sd²) Kᵀ.
		const noise = Matrix.diag(readings.map((r) => r.sd ** 2));
		const wanted = Matrix.add(
			Matrix.sub(covariance, gain.mmul(s12.transpose())),
			gain.mmul(noise).mmul(gain.transpose()),
		);
		for (const [i, row] of posterior.covariance.entries())
			for (const [j, c] of row.entries())
				expect(c).toBeCloseTo(wanted.get(i, j), 5);
	});

	test("the order of the readings does not matter", () => {
		const other = given(prior, [...readings].reverse()).posterior;
		for (const [i, m] of posterior.mean.entries())
			expect(other.mean[i]).toBeCloseTo(m, 8);
		for (const [i, row] of posterior.covariance.entries())
			for (const [j, c] of row.entries())
				expect(other.covariance[i]?.[j]).toBeCloseTo(c, 6);
	});

	test("a reading stands, with its own error", () => {
		for (const r of readings) {
			expect(posterior.mean[r.index]).toBeCloseTo(r.value, 9);
			expect(posterior.covariance[r.index]?.[r.index]).toBeCloseTo(
				r.sd ** 2,
				6,
			);
		}
	});

	test("one variable read twice is a programmer's error", () => {
		expect(() =>
			given(prior, [
				readings[0] as (typeof readings)[0],
				readings[0] as (typeof readings)[0],
			]),
		).toThrow(/variable 0/);
	});
});

test("log density of one reading is the normal's", () => {
	const { logDensity } = given(prior, [{ index: 0, value: 1700, sd: 6 }]);
	const variance = 64.2 ** 2 + 36;
	const z2 = (1700 - 1628.47) ** 2 / variance;
	expect(logDensity).toBeCloseTo(
		-0.5 * (z2 + Math.log(2 * Math.PI * variance)),
		10,
	);
});

test("a chain's variance adds slope² variance to the residual's", () => {
	const g = chained([
		{ intercept: 10, slopes: [], residualSd: 2 },
		{ intercept: 1, slopes: [[0, 3]], residualSd: 4 },
		{
			intercept: 0,
			slopes: [
				[0, 1],
				[1, -0.5],
			],
			residualSd: 1,
		},
	]);
	expect(g.mean).toEqual([10, 31, -5.5]);
	expect(g.covariance[1]?.[1]).toBeCloseTo(9 * 4 + 16, 12);
	expect(g.covariance[0]?.[2]).toBeCloseTo(4 - 0.5 * 12, 12);
	// (1 − 1.5)² · 4 + 0.25 · 16 + 1
	expect(g.covariance[2]?.[2]).toBeCloseTo(0.25 * 4 + 0.25 * 16 + 1, 12);
});

test("a mixture keeps the spread between its parts", () => {
	const part = (mean: number) => ({ mean: [mean], covariance: [[9]] });
	const m = mixed([
		{ weight: 2, of: part(0) },
		{ weight: 2, of: part(10) },
	]);
	expect(m.mean).toEqual([5]);
	expect(m.covariance[0]?.[0]).toBeCloseTo(9 + 25, 12);
});
