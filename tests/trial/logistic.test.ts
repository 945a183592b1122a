import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	choleskyFactor,
	inverseFactored,
	quadraticForm,
	solveFactored,
} from "@/lib/trial/dense";
import { fitLogistic, logistic } from "@/lib/trial/logistic";

describe("dense solves", () => {
	test("Hilbert's matrix of five, whose inverse is known in whole numbers", () => {
		const hilbert = Array.from({ length: 5 }, (_, i) =>
			Float64Array.from({ length: 5 }, (_, j) => 1 / (i + j + 1)),
		);
		const inverse = inverseFactored(choleskyFactor(hilbert));
		// First row of the inverse (a standard test matrix; from memory).
		for (const [j, expected] of [25, -300, 1050, -1400, 630].entries())
			expect(inverse[0]?.[j]).toBeCloseTo(expected, 6);
		expect(
			quadraticForm([1, 0, 0, 0, 0], inverse, [0, 1, 0, 0, 0]),
		).toBeCloseTo(-300, 6);
	});
	test("a solution solves", () => {
		const matrix = [Float64Array.of(4, 1), Float64Array.of(1, 3)];
		const [x = 0, y = 0] = solveFactored(choleskyFactor(matrix), [1, 2]);
		expect(4 * x + y).toBeCloseTo(1, 14);
		expect(x + 3 * y).toBeCloseTo(2, 14);
	});
	test("an indefinite matrix is refused", () => {
		expect(() =>
			choleskyFactor([Float64Array.of(1, 2), Float64Array.of(2, 1)]),
		).toThrow(/not positive definite/);
	});
});

describe("logistic regression", () => {
	test("without shots it is the prior", () => {
		const { coefficients, covariance, steps } = fitLogistic(
			[],
			[
				{ mean: 0.4, sd: 2 },
				{ mean: -1, sd: 0.5 },
			],
		);
		expect(coefficients).toEqual([0.4, -1]);
		expect(covariance[0]?.[0]).toBeCloseTo(4, 12);
		expect(covariance[1]?.[1]).toBeCloseTo(0.25, 12);
		expect(steps).toBe(0);
	});
	test("one share is its log-odds, pulled to the prior", () => {
		const open = fitLogistic(
			[{ x: [1], hits: 30, shots: 40 }],
			[{ mean: 0, sd: 1e4 }],
		);
		expect(logistic(open.coefficients[0] ?? 0)).toBeCloseTo(0.75, 6);
		const held = fitLogistic(
			[{ x: [1], hits: 30, shots: 40 }],
			[{ mean: 0, sd: 0.2 }],
		);
		expect(logistic(held.coefficients[0] ?? 0)).toBeGreaterThan(0.5);
		expect(logistic(held.coefficients[0] ?? 0)).toBeLessThan(0.7);
	});
	test("an offset moves the intercept by itself", () => {
		const intercept = (offset: number) =>
			fitLogistic(
				[{ x: [1], offset, hits: 11, shots: 40 }],
				[{ mean: 0, sd: 1e4 }],
			).coefficients[0] ?? 0;
		expect(intercept(1.3)).toBeCloseTo(intercept(0) - 1.3, 6);
	});
	test("separated shots stay finite under a prior", () => {
		const { coefficients, residual } = fitLogistic(
			[
				{ x: [1, 0], hits: 20, shots: 20 },
				{ x: [1, 1], hits: 0, shots: 20 },
			],
			[
				{ mean: 0, sd: 5 },
				{ mean: 0, sd: 5 },
			],
		);
		expect(residual).toBeLessThan(1e-8);
		expect(coefficients.every(Number.isFinite)).toBe(true);
		expect(coefficients[1]).toBeLessThan(-4);
	});
	test("settles from any shots", () => {
		fc.assert(
			fc.property(
				fc.array(
					fc.record({
						x: fc.tuple(
							fc.constant(1),
							fc.double({ min: -8, max: 8, noNaN: true }),
						),
						shots: fc.integer({ min: 0, max: 300 }),
						share: fc.double({ min: 0, max: 1, noNaN: true }),
					}),
					{ maxLength: 12 },
				),
				(rows) => {
					const { residual, steps } = fitLogistic(
						rows.map(({ x, shots, share }) => ({
							x,
							shots,
							hits: Math.round(share * shots),
						})),
						[
							{ mean: 0, sd: 5 },
							{ mean: 0, sd: 5 },
						],
					);
					expect(residual).toBeLessThan(1e-8);
					expect(steps).toBeLessThan(30);
				},
			),
			{ numRuns: 200, seed: 4 },
		);
	});
	test("more pots than shots are refused", () => {
		expect(() =>
			fitLogistic([{ x: [1], hits: 3, shots: 2 }], [{ mean: 0, sd: 1 }]),
		).toThrow(/3 of 2/);
	});
});
