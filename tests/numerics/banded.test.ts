import fc from "fast-check";
import { Matrix, solve as solveDense } from "ml-matrix";
import { describe, expect, it } from "vitest";
import {
	addScaled,
	emptyBand,
	factor,
	multiply,
	STRIDE,
	type SymmetricBand,
	solve,
	withoutFirst,
} from "@/lib/numerics/banded";

const dense = (a: SymmetricBand): Matrix =>
	Matrix.zeros(a.size, a.size).apply(function (this: Matrix, i, j) {
		const [row, column] = i >= j ? [i, j] : [j, i];
		if (row - column <= 3)
			this.set(i, j, a.values[row * STRIDE + row - column] as number);
	});

/** Random band with a heavy diagonal; entries above the first rows are poisoned, they must not be read. */
const band = fc.integer({ min: 1, max: 12 }).chain((size) =>
	fc
		.array(fc.double({ min: -1, max: 1, noNaN: true }), {
			minLength: size * STRIDE,
			maxLength: size * STRIDE,
		})
		.map((entries) => {
			const a = emptyBand(size);
			for (let i = 0; i < size; i++)
				for (let k = 0; k <= 3; k++)
					a.values[i * STRIDE + k] =
						k > i
							? Number.NaN
							: (entries[i * STRIDE + k] as number) + (k === 0 ? 8 : 0);
			return a;
		}),
);
const column = (size: number): Float64Array =>
	Float64Array.from({ length: size }, (_, i) => Math.sin(1 + 3 * i));

describe("bands of half-width three against a dense library", () => {
	it("multiply", () => {
		fc.assert(
			fc.property(band, (a) => {
				const x = column(a.size);
				const y = new Float64Array(a.size);
				multiply(a, x, y);
				const wanted = dense(a).mmul(Matrix.columnVector(x)).to1DArray();
				wanted.forEach((value, i) => {
					expect(y[i]).toBeCloseTo(value, 12);
				});
			}),
		);
	});

	it("factor and solve", () => {
		fc.assert(
			fc.property(band, (a) => {
				const x = column(a.size);
				const wanted = solveDense(dense(a), Matrix.columnVector(x)).to1DArray();
				const f = factor(a);
				solve(f, x);
				expect(f.negatives).toBe(0);
				wanted.forEach((value, i) => {
					expect(x[i]).toBeCloseTo(value, 12);
				});
			}),
		);
	});

	it("factor may overwrite its own matrix", () => {
		fc.assert(
			fc.property(band, (a) => {
				const x = column(a.size);
				const y = column(a.size);
				solve(factor(a), x);
				solve(factor(a, a.values), y);
				expect(Array.from(y)).toEqual(Array.from(x));
			}),
		);
	});

	it("without the first row and column", () => {
		fc.assert(
			fc.property(band, (a) => {
				if (a.size < 2) return;
				const rest = withoutFirst(a);
				const x = column(rest.size);
				const y = new Float64Array(rest.size);
				multiply(rest, x, y);
				const wanted = dense(a)
					.subMatrix(1, a.size - 1, 1, a.size - 1)
					.mmul(Matrix.columnVector(x))
					.to1DArray();
				wanted.forEach((value, i) => {
					expect(y[i]).toBeCloseTo(value, 12);
				});
			}),
		);
	});

	it("counts eigenvalues below a shift", () => {
		const a = emptyBand(6);
		const unit = emptyBand(6);
		for (let i = 0; i < 6; i++) {
			a.values[i * STRIDE] = i + 1;
			unit.values[i * STRIDE] = 1;
		}
		expect(factor(addScaled(a, unit, -3.5)).negatives).toBe(3);
	});
});

describe("misuse", () => {
	it("throws by name and number", () => {
		expect(() => emptyBand(0)).toThrow(/size.*0/);
		expect(() => factor(emptyBand(2))).toThrow(/zero pivot in row 0/);
		expect(() =>
			addScaled(emptyBand(3), emptyBand(3), 1, new Float64Array(4)),
		).toThrow(/buffer of 4 is short of 12/);
	});
});
