import fc from "fast-check";
import { expect, test } from "vitest";
import { formatAmount } from "@/lib/present/money";
import { parseAmount } from "@/lib/units/amount";
import { METRIC, reading } from "../support/readers";

const GERMAN = reading("metric", "de");

test.each([
	[48_000, 100, "480.00\u00a0GBP", "480,00\u00a0GBP"],
	[5, 100, "0.05\u00a0GBP", "0,05\u00a0GBP"],
	[1_234_567, 100, "12\u202f345.67\u00a0GBP", "12\u202f345,67\u00a0GBP"],
	[64_000, 1, "64\u202f000\u00a0GBP", "64\u202f000\u00a0GBP"],
])("%i minor units at %i to the unit", (minor, minorPerUnit, en, de) => {
	const money = { minorPerUnit, currency: "GBP" };
	expect(formatAmount(minor, money, METRIC)).toBe(en);
	expect(formatAmount(minor, money, GERMAN)).toBe(de);
});

test("whatever is written out reads back to the same whole minor units", () => {
	fc.assert(
		fc.property(
			fc.integer({ min: 0, max: 999_999_999 }),
			fc.constantFrom(0, 2, 3),
			(minor, digits) => {
				const money = { minorPerUnit: 10 ** digits, currency: "" };
				// Behind a comma three digits are thousands as well: fields are filled with a point there.
				for (const reader of digits === 3 ? [METRIC] : [METRIC, GERMAN])
					expect(
						parseAmount(formatAmount(minor, money, reader), digits),
					).toEqual({
						ok: true,
						minor,
					});
			},
		),
	);
});
