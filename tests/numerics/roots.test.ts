import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rootBetween } from "@/lib/numerics/roots";

describe("rootBetween", () => {
	it("finds √2 and π", () => {
		const two = rootBetween({
			f: (x) => x * x - 2,
			from: 0,
			to: 2,
			tolerance: 1e-13,
		});
		const pi = rootBetween({ f: Math.sin, from: 2, to: 4, tolerance: 1e-13 });
		expect(two.converged && two.root).toBeCloseTo(Math.SQRT2, 12);
		expect(pi.converged && pi.root).toBeCloseTo(Math.PI, 12);
	});

	it("keeps its tolerance on steep, flat and kinked functions", () => {
		const root = 0.3172;
		for (const f of [
			(x: number) => (x - root) ** 5,
			(x: number) => Math.atan(1e4 * (x - root)),
			(x: number) => (x < root ? x - root : 1000 * (x - root)),
		]) {
			const found = rootBetween({ f, from: -3, to: 5, tolerance: 1e-9 });
			expect(found.converged && Math.abs(found.root - root)).toBeLessThan(2e-9);
		}
	});

	it("finds a random cubic's root with few steps", () => {
		fc.assert(
			fc.property(fc.double({ min: -5, max: 5, noNaN: true }), (root) => {
				const found = rootBetween({
					f: (x) => (x - root) * (1 + (x - root) ** 2),
					from: -11,
					to: 13,
					tolerance: 1e-10,
				});
				expect(found.converged).toBe(true);
				if (!found.converged) return;
				expect(Math.abs(found.root - root)).toBeLessThan(1e-9);
				expect(found.steps).toBeLessThan(40);
			}),
		);
	});

	it("says so where there is no change of sign, NaN included", () => {
		expect(
			rootBetween({ f: (x) => x * x + 1, from: -1, to: 1, tolerance: 1e-9 }),
		).toEqual({
			converged: false,
			reason: "no-sign-change",
			atFrom: 2,
			atTo: 2,
		});
		expect(
			rootBetween({ f: () => Number.NaN, from: -1, to: 1, tolerance: 1e-9 })
				.converged,
		).toBe(false);
	});
});
