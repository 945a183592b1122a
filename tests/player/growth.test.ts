/** Forecasts: errors of holding the percentile, Berkeley Child Guidance Study (Tuddenham & Snyder 1954). */
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import {
	ageYearsOn,
	forecastSdMm,
	forecastStature,
	monthsAfter,
	monthsToGrow,
	monthsToRemeasure,
} from "@/lib/player/growth";

describe("spread of a forecast", () => {
	// Root mean square and 90th percentile of the error, cm, as printed: boys and girls, +1 y, +2 y, adult.
	test.each([
		["male", 8, 1, 0.7, 1.0],
		["male", 12, 1, 2.0, 3.0],
		["male", 12, 2, 3.6, 6.5],
		["male", 14, 4, 5.2, 8.7],
		["female", 10, 2, 2.1, 3.6],
		["female", 12, 6, 4.7, 8.0],
		["female", 16, 2, 0.7, 1.1],
	] as const)(
		"%s from %i, %i y on: at least the larger of %d cm and %d cm over 1.645",
		(sex, age, years, rmse, p90) => {
			const sd = forecastSdMm(sex, age, years) / 10;
			expect(sd).toBeCloseTo(Math.max(rmse, p90 / 1.645), 0);
			expect(1.645 * sd).toBeGreaterThan(p90 - 0.1);
		},
	);

	test("nothing at no horizon, growing over the first two years, flat past adulthood", () => {
		expect(forecastSdMm("male", 12, 0)).toBe(0);
		for (const age of [8, 10.5, 12.3, 14])
			expect(forecastSdMm("female", age, 2)).toBeGreaterThan(
				forecastSdMm("female", age, 0.5),
			);
		expect(forecastSdMm("male", 15, 9)).toBe(forecastSdMm("male", 15, 3));
	});

	test("between ages and horizons it moves without a jump", () => {
		for (let age = 8; age < 16; age += 0.25)
			expect(
				Math.abs(
					forecastSdMm("male", age + 1e-6, 1) - forecastSdMm("male", age, 1),
				),
			).toBeLessThan(0.01);
	});
});

describe("forecast", () => {
	test("the median boy of twelve stays the median: 149.05 to 163.84 cm in two years", () => {
		const f = must(
			forecastStature({ ageYears: 12, statureMm: 1490.5, sex: "male" }, 24),
		);
		expect(f.statureMm.value).toBeCloseTo(1638.4, 0);
		expect(f.statureMm.sd).toBeGreaterThan(36);
		expect(f.cautions).toContainEqual({ code: "growth-range-not-promise" });
	});

	test("sex not given: between, and wider", () => {
		const of = (sex?: "male" | "female") =>
			must(forecastStature({ ageYears: 11, statureMm: 1440, sex }, 36))
				.statureMm;
		const [f, m, open] = [of("female"), of("male"), of()];
		expect(open.value).toBeGreaterThan(Math.min(f.value, m.value));
		expect(open.value).toBeLessThan(Math.max(f.value, m.value));
		expect(open.sd).toBeGreaterThan(Math.min(f.sd, m.sd));
	});

	test("today is the reading itself", () => {
		const f = must(forecastStature({ ageYears: 9, statureMm: 1310 }, 0));
		expect(f.statureMm.value).toBeCloseTo(1310, 6);
		expect(f.statureMm.sd).toBeCloseTo(6, 6);
	});

	test("refused outside the table's ages, with the bound", () => {
		expect(forecastStature({ ageYears: 21, statureMm: 1800 }, 6)).toMatchObject(
			{
				ok: false,
				refusals: [{ field: "ageYears", value: 21, min: 4, max: 20 }],
			},
		);
		expect(
			forecastStature({ ageYears: 10, statureMm: 1400 }, -1),
		).toMatchObject({
			ok: false,
			refusals: [{ field: "months" }],
		});
	});
});

describe("when", () => {
	test("every half year from 10 to 15, yearly else, never past 18", () => {
		expect([9.9, 10, 14.9, 15, 17.9, 18, 40].map(monthsToRemeasure)).toEqual([
			12,
			6,
			6,
			12,
			12,
			null,
			null,
		]);
	});

	test("60 mm more: soonest before likely, never faster than 95 mm a year", () => {
		const due = must(
			monthsToGrow({ ageYears: 12, statureMm: 1490, sex: "male" }, 60),
		);
		expect(due.likely).not.toBeNull();
		expect(due.soonest as number).toBeLessThan(due.likely as number);
		expect(due.soonest as number).toBeGreaterThanOrEqual((12 * 60) / 95);
		// Median boys pass 1490 mm at 12.0 and 1550 mm at about 12.8 y: 0.8 y is 10 months.
		expect(Math.abs((due.likely as number) - 10)).toBeLessThanOrEqual(1);
	});

	test("a girl of sixteen is unlikely to grow another 60 mm", () => {
		const due = must(
			monthsToGrow({ ageYears: 16, statureMm: 1620, sex: "female" }, 60),
		);
		expect(due.likely).toBeNull();
	});

	test("calendar months", () => {
		expect(monthsAfter("2026-08-31", 6)).toBe("2027-02-28");
		expect(monthsAfter("2027-08-31", 6)).toBe("2028-02-29");
		expect(monthsAfter("2026-12-15", 1)).toBe("2027-01-15");
		expect(monthsAfter("2026-01-10", -1)).toBe("2025-12-10");
		expect(() => monthsAfter("31.08.2026", 6)).toThrow(/isoDate/);
		expect(ageYearsOn({ bornOn: "2014-08-31", on: "2026-08-31" })).toBeCloseTo(
			12,
			2,
		);
		expect(() => ageYearsOn({ bornOn: "", on: "2026-08-31" })).toThrow(/dates/);
	});
});
