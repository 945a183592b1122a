import { describe, expect, test } from "vitest";
import {
	normalFrom,
	normalShareBelow,
	quantile,
	seededUniform,
} from "@/lib/advice/normal";

// Standard normal table, as printed in any textbook (from memory): five digits.
test.each([
	[0, 0.5],
	[1, 0.84134],
	[-1, 0.15866],
	[1.6448536, 0.95],
	[1.959964, 0.975],
	[3, 0.99865],
])("share below %f", (z, share) => {
	expect(normalShareBelow(z)).toBeCloseTo(share, 5);
});

describe("seeded chance", () => {
	test("the same seed repeats, another differs", () => {
		const take = (seed: number) => {
			const uniform = seededUniform(seed);
			return Array.from({ length: 5 }, uniform);
		};
		expect(take(4)).toEqual(take(4));
		expect(take(4)).not.toEqual(take(5));
	});
	test("is even, and its normal numbers are normal", () => {
		const N = 40_000;
		const uniform = seededUniform(8);
		const bins = new Array<number>(20).fill(0);
		for (let i = 0; i < N; i++) {
			const k = Math.floor(20 * uniform());
			bins[k] = (bins[k] ?? 0) + 1;
		}
		// χ² of 19 degrees of freedom passes 43.8 once in a thousand (table, from memory).
		const chi = bins.reduce(
			(sum, count) => sum + (count - N / 20) ** 2 / (N / 20),
			0,
		);
		expect(chi).toBeLessThan(43.8);
		const normal = normalFrom(uniform);
		const drawn = Array.from({ length: N }, normal);
		for (const z of [-1.5, -0.5, 0, 0.7, 2]) {
			const below = drawn.filter((one) => one < z).length / N;
			expect(Math.abs(below - normalShareBelow(z))).toBeLessThan(0.01);
		}
	});
});

describe("quantile", () => {
	test("is straight between neighbours", () => {
		expect(quantile([0, 10], 0.05)).toBeCloseTo(0.5, 12);
		expect(quantile([1, 2, 4], 0.5)).toBe(2);
		expect(quantile([1, 2, 4], 1)).toBe(4);
		expect(quantile([7], 0.3)).toBe(7);
	});
	test("of nothing is a programmer's error", () => {
		expect(() => quantile([], 0.5)).toThrow(/no numbers/);
	});
});
