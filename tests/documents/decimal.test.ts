import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decimal } from "@/lib/documents/decimal";

describe("a number for a machine", () => {
	test("comes back to half a unit of its last place, in plain ASCII", () => {
		fc.assert(
			fc.property(
				fc.double({ min: -1e9, max: 1e9, noNaN: true }),
				fc.integer({ min: 0, max: 6 }),
				(value, decimals) => {
					const text = decimal(value, decimals);
					expect(text).toMatch(/^-?\d+(\.\d+)?$/);
					// 1e-6: what a double of this size holds itself.
					expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(
						0.5 * 10 ** -decimals + 1e-6,
					);
				},
			),
		);
	});
	test.each([
		[-0, "0.00"],
		[-1e-13, "0.00"],
		[10466.85, "10466.85"],
		[-3.5, "-3.50"],
	])("%f is %s", (value, text) => {
		expect(decimal(value, 2)).toBe(text);
	});
	test.each([Number.NaN, Number.POSITIVE_INFINITY, 1e21])(
		"%f is refused",
		(value) => {
			expect(() => decimal(value, 2)).toThrow(RangeError);
		},
	);
});
