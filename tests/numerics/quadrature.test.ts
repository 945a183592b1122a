import { describe, expect, it } from "vitest";
import { gaussLegendre, integratePanel } from "@/lib/numerics/quadrature";

describe("gaussLegendre", () => {
	it("has the classic three-point nodes ±√0.6 and weights 5/9, 8/9", () => {
		const { nodes, weights } = gaussLegendre(3);
		expect(nodes[0]).toBeCloseTo(-Math.sqrt(0.6), 14);
		expect(nodes[1]).toBeCloseTo(0, 14);
		expect(weights[0]).toBeCloseTo(5 / 9, 14);
		expect(weights[1]).toBeCloseTo(8 / 9, 14);
	});

	it.each([1, 2, 5, 8, 10, 16, 64])(
		"is exact for x^(2n−2) with %i points",
		(count) => {
			const degree = 2 * count - 2;
			const value = integratePanel({
				integrand: (x) => x ** degree,
				from: 0,
				to: 2,
				count,
			});
			expect(value / (2 ** (degree + 1) / (degree + 1))).toBeCloseTo(1, 12);
		},
	);

	it("is no longer exact at degree 2n", () => {
		const value = integratePanel({
			integrand: (x) => x ** 4,
			from: -1,
			to: 1,
			count: 2,
		});
		expect(Math.abs(value - 0.4)).toBeGreaterThan(0.1);
	});

	it("refuses a count it cannot make", () => {
		expect(() => gaussLegendre(0)).toThrow(/1–256/);
		expect(() => gaussLegendre(2.5)).toThrow(/1–256/);
	});
});
