import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readAmount } from "@/lib/forms/money";
import { formatAmount } from "@/lib/present/money";
import { METRIC, reading } from "../support/readers";

describe("an amount as people write it", () => {
	test.each([
		["480", 100, 48_000],
		["480.5", 100, 48_050],
		["480,50", 100, 48_050],
		["1,250", 100, 125_000],
		["1.250", 100, 125_000],
		["1 250", 100, 125_000],
		["480.505", 100, 48_050_500],
		["1,250.50", 100, 125_050],
		["1.250,50", 100, 125_050],
		["0", 100, 0],
		[".99", 100, 99],
		// Sums that binary fractions miss: 1.15 × 100 is 114.99999999999999, 8.2 × 1000 is 8199.999….
		["1.15", 100, 115],
		["8.2", 1000, 8200],
		["64000", 1, 64_000],
	])("%s at %i to the unit", (text, minorPerUnit, minor) => {
		expect(readAmount(text, minorPerUnit)).toEqual({ ok: true, minor });
	});

	test.each([
		["", "missing"],
		["  ", "missing"],
		["about 400", "not-an-amount"],
		["-5", "not-an-amount"],
		["4 1/2", "not-an-amount"],
		["480.5055", "not-an-amount"],
		["1,25,0", "not-an-amount"],
		["99999999999", "too-much"],
		["1e5", "not-an-amount"],
	])("“%s” is none", (text, problem) => {
		expect(readAmount(text, 100)).toEqual({ ok: false, problem });
	});

	test("what two habits read differently is none: 1,250 with three decimals", () => {
		expect(readAmount("1,250", 1000)).toMatchObject({ ok: false });
		expect(readAmount("1.250", 1000)).toMatchObject({ ok: false });
	});

	test("whatever is written out reads back to the same whole minor units, in both languages", () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 0, max: 99_999_999 }),
				fc.constantFrom(1, 100),
				(minor, minorPerUnit) => {
					for (const reader of [METRIC, reading("metric", "de")])
						expect(
							readAmount(
								formatAmount({ minor, minorPerUnit }, reader),
								minorPerUnit,
							),
						).toEqual({ ok: true, minor });
				},
			),
		);
	});
});
