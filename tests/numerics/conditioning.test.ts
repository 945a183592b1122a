import fc from "fast-check";
import { inverse, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { condition, independent, sumOf } from "@/lib/numerics/conditioning";
import { rememberLast } from "@/lib/numerics/remember-last";

const unknown = fc.record({
	value: fc.double({ min: -10, max: 10, noNaN: true }),
	sd: fc.double({ min: 0.1, max: 5, noNaN: true }),
});
const reading = fc.record({
	weights: fc.array(fc.double({ min: -3, max: 3, noNaN: true }), {
		minLength: 3,
		maxLength: 3,
	}),
	value: fc.double({ min: -20, max: 20, noNaN: true }),
	sd: fc.double({ min: 0.05, max: 2, noNaN: true }),
});

describe("condition", () => {
	it("equals generalised least squares by ml-matrix after two readings", () => {
		fc.assert(
			fc.property(
				fc.array(unknown, { minLength: 3, maxLength: 3 }),
				reading,
				reading,
				(unknowns, one, two) => {
					const prior = independent(unknowns);
					const { state } = condition(condition(prior, one).state, two);
					// Posterior precision P = S⁻¹ + HᵀR⁻¹H, mean P⁻¹(S⁻¹m + HᵀR⁻¹y).
					const precision = inverse(
						new Matrix(prior.covariance.map((row) => [...row])),
					);
					const h = new Matrix([one.weights, two.weights]);
					const r = Matrix.diag([1 / one.sd ** 2, 1 / two.sd ** 2]);
					const y = Matrix.columnVector([one.value, two.value]);
					const posterior = inverse(
						Matrix.add(precision, h.transpose().mmul(r).mmul(h)),
					);
					const mean = posterior.mmul(
						Matrix.add(
							precision.mmul(Matrix.columnVector(unknowns.map((u) => u.value))),
							h.transpose().mmul(r).mmul(y),
						),
					);
					for (let i = 0; i < 3; i++) {
						expect(state.mean[i]).toBeCloseTo(mean.get(i, 0), 5);
						for (let j = 0; j < 3; j++)
							expect(state.covariance[i]?.[j]).toBeCloseTo(
								posterior.get(i, j),
								5,
							);
					}
				},
			),
		);
	});

	it("leaves things alone after a vague reading and pins them after a sharp one", () => {
		const state = independent([
			{ value: 5, sd: 1 },
			{ value: 7, sd: 1 },
		]);
		const vague = condition(state, { weights: [1, 1], value: 99, sd: 1e6 });
		expect(vague.state.mean[0]).toBeCloseTo(5, 9);
		const sharp = condition(state, { weights: [1, 1], value: 14, sd: 1e-6 });
		expect(sumOf(sharp.state, [1, 1]).value).toBeCloseTo(14, 9);
		expect(sumOf(sharp.state, [1, 1]).sd).toBeLessThan(1e-5);
		expect(sharp.surprise).toBeCloseTo(2 / Math.SQRT2, 6);
	});

	it("gives the normal density of the reading as evidence", () => {
		const { logEvidence, surprise } = condition(
			independent([{ value: 2, sd: 3 }]),
			{ weights: [2], value: 12, sd: 8 },
		);
		// Expected 4, variance 36 + 64 = 100: density of 12 under N(4, 10²).
		expect(surprise).toBeCloseTo(0.8, 12);
		expect(Math.exp(logEvidence)).toBeCloseTo(
			Math.exp(-0.32) / (10 * Math.sqrt(2 * Math.PI)),
			12,
		);
	});

	it("wants a spread", () => {
		expect(() =>
			condition(independent([{ value: 0, sd: 1 }]), {
				weights: [1],
				value: 1,
				sd: 0,
			}),
		).toThrow(/spread/);
	});
});

describe("rememberLast", () => {
	it("computes once for the same object and again for another", () => {
		let count = 0;
		const size = rememberLast((list: readonly number[]) => {
			count++;
			return list.length;
		});
		const a = [1, 2];
		const b = [3];
		expect([size(a), size(a), size(b), size(a)]).toEqual([2, 2, 1, 2]);
		expect(count).toBe(3);
	});
});
