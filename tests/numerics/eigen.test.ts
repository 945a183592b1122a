import { EigenvalueDecomposition, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import {
	emptyBand,
	multiply,
	STRIDE,
	type SymmetricBand,
} from "@/lib/numerics/banded";
import {
	denseGeneralised,
	lowestAbove,
	lowestPairs,
} from "@/lib/numerics/eigen";

const SIZE = 30;

/** Springs and masses in a row: stiffness 2, −1 with free ends, and a mass that varies. */
function chain(): { stiffness: SymmetricBand; mass: SymmetricBand } {
	const stiffness = emptyBand(SIZE);
	const mass = emptyBand(SIZE);
	for (let i = 0; i < SIZE; i++) {
		stiffness.values[i * STRIDE] = i === 0 || i === SIZE - 1 ? 1 : 2;
		if (i > 0) stiffness.values[i * STRIDE + 1] = -1;
		mass.values[i * STRIDE] = 1 + 0.5 * Math.sin(i);
	}
	return { stiffness, mass };
}

/** The same by a general-purpose library: M^(−½) K M^(−½). */
function wanted(): readonly number[] {
	const { stiffness, mass } = chain();
	const m = Matrix.zeros(SIZE, SIZE);
	for (let i = 0; i < SIZE; i++)
		for (let k = 0; k <= Math.min(1, i); k++) {
			const value =
				(stiffness.values[i * STRIDE + k] as number) /
				Math.sqrt(
					(mass.values[i * STRIDE] as number) *
						(mass.values[(i - k) * STRIDE] as number),
				);
			m.set(i, i - k, value);
			m.set(i - k, i, value);
		}
	return new EigenvalueDecomposition(m, {
		assumeSymmetric: true,
	}).realEigenvalues
		.slice()
		.sort((a, b) => a - b);
}

describe("lowest eigenpairs of a banded pencil against a dense library", () => {
	it("values, with one free move among them", () => {
		const result = lowestPairs({ ...chain(), count: 5, shift: 0.01 });
		if (!result.converged) throw new Error("did not converge");
		const all = wanted();
		result.pairs.forEach((pair, i) => {
			expect(Math.abs(pair.value - (all[i] as number))).toBeLessThan(1e-9);
		});
	});

	it("vectors satisfy the pencil and have unit mass", () => {
		const { stiffness, mass } = chain();
		const result = lowestPairs({ stiffness, mass, count: 4, shift: 0.01 });
		if (!result.converged) throw new Error("did not converge");
		for (const { value, vector } of result.pairs) {
			const k = new Float64Array(SIZE);
			const m = new Float64Array(SIZE);
			multiply(stiffness, vector, k);
			multiply(mass, vector, m);
			let modal = 0;
			for (let i = 0; i < SIZE; i++) {
				modal += (vector[i] as number) * (m[i] as number);
				expect(
					Math.abs((k[i] as number) - value * (m[i] as number)),
				).toBeLessThan(1e-5);
			}
			expect(modal).toBeCloseTo(1, 9);
		}
	});

	it("the lowest above the free move, from a start apart from it", () => {
		const { stiffness, mass } = chain();
		let weight = 0;
		let moment = 0;
		for (let i = 0; i < SIZE; i++) {
			weight += mass.values[i * STRIDE] as number;
			moment += i * (mass.values[i * STRIDE] as number);
		}
		const start = Float64Array.from(
			{ length: SIZE },
			(_, i) => i - moment / weight,
		);
		const result = lowestAbove({ stiffness, mass, start, tolerance: 1e-8 });
		if (!result.converged) throw new Error("did not converge");
		const second = wanted()[1] as number;
		expect(Math.abs(result.value / second - 1)).toBeLessThan(1e-7);
	});

	it("says so when it does not settle", () => {
		const { stiffness, mass } = chain();
		const start = Float64Array.from({ length: SIZE }, (_, i) =>
			Math.sin(7 * i),
		);
		const result = lowestAbove({ stiffness, mass, start, tolerance: 1e-15 });
		expect(result.converged).toBe(false);
		expect(result.residual).toBeGreaterThan(0);
	});
});

describe("small dense pencils", () => {
	it("agree with the library", () => {
		const a = [
			[4, 1, 0.5],
			[1, 3, -0.2],
			[0.5, -0.2, 2],
		];
		const b = [
			[2, 0.3, 0],
			[0.3, 1, 0.1],
			[0, 0.1, 1.5],
		];
		const { values, vectors } = denseGeneralised(a, b);
		// By the determinant of A − λB, an independent statement.
		for (const value of values) {
			const m = new Matrix(
				a.map((row, i) => row.map((x, j) => x - value * (b[i]?.[j] as number))),
			);
			const singular = new EigenvalueDecomposition(m, {
				assumeSymmetric: true,
			}).realEigenvalues;
			expect(Math.min(...singular.map(Math.abs))).toBeLessThan(1e-12);
		}
		expect(vectors).toHaveLength(3);
		expect(() =>
			denseGeneralised(a, [
				[-1, 0, 0],
				[0, 1, 0],
				[0, 0, 1],
			]),
		).toThrow(/not positive definite/);
	});
});
