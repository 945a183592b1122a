import {
	addBusinessDays,
	eachDayOfInterval,
	format,
	isWeekend,
} from "date-fns";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import {
	addDays,
	afterWorkingDays,
	isIsoDate,
	isOpen,
	weekdayOf,
} from "@/lib/workshop/working-days";

const MONDAY_TO_FRIDAY = { openWeekdays: [1, 2, 3, 4, 5], closed: [] };

/** A local date of the library, at noon, clear of any change of the clocks. */
const local = (isoDate: string) => new Date(`${isoDate}T12:00:00`);
const iso = (date: Date) => format(date, "yyyy-MM-dd");
const anyDay = fc
	.integer({ min: 0, max: 40_000 })
	.map((days) => addDays("1950-01-01", days));

describe("against date-fns, a general date library", () => {
	test("days without closed ones are its business days", () => {
		fc.assert(
			fc.property(anyDay, fc.integer({ min: 1, max: 300 }), (from, days) => {
				expect(must(afterWorkingDays(from, days, MONDAY_TO_FRIDAY))).toBe(
					iso(addBusinessDays(local(from), days)),
				);
			}),
		);
	});

	test("with closed days: so many of its days that are neither weekend nor closed lie between", () => {
		fc.assert(
			fc.property(
				anyDay,
				fc.integer({ min: 1, max: 60 }),
				fc.array(
					fc.tuple(
						fc.integer({ min: -5, max: 90 }),
						fc.integer({ min: 0, max: 20 }),
					),
					{ maxLength: 5 },
				),
				(from, days, gaps) => {
					const closed = gaps.map(([after, length]) => ({
						from: addDays(from, after),
						to: addDays(from, after + length),
						note: "",
					}));
					const due = must(
						afterWorkingDays(from, days, { ...MONDAY_TO_FRIDAY, closed }),
					);
					const isWorked = (day: Date) =>
						!isWeekend(day) &&
						!closed.some((one) => one.from <= iso(day) && iso(day) <= one.to);
					const worked = eachDayOfInterval({
						start: local(addDays(from, 1)),
						end: local(due),
					}).filter(isWorked);
					expect(worked).toHaveLength(days);
					expect(iso(worked.at(-1) as Date)).toBe(due);
				},
			),
		);
	});

	test("weekdays are its ISO weekdays", () => {
		fc.assert(
			fc.property(anyDay, (day) => {
				expect(String(weekdayOf(day))).toBe(format(local(day), "i"));
			}),
		);
	});
});

describe("worked by hand on the calendar of 2026", () => {
	// 1 April 2026 is a Wednesday; Good Friday the 3rd, Easter Monday the 6th.
	const easter = {
		...MONDAY_TO_FRIDAY,
		closed: [{ from: "2026-04-03", to: "2026-04-06", note: "Easter" }],
	};

	test.each([
		["2026-04-01", 0, "2026-04-01"],
		["2026-04-01", 1, "2026-04-02"],
		["2026-04-01", 2, "2026-04-07"],
		["2026-04-01", 7, "2026-04-14"],
		["2026-04-04", 0, "2026-04-07"],
		["2026-04-04", 1, "2026-04-07"],
		["2026-04-01", 0.5, "2026-04-02"],
	])("%s and %s working days are %s", (from, days, due) => {
		expect(afterWorkingDays(from, days, easter)).toEqual({
			ok: true,
			value: due,
		});
	});

	test("a bench open on Tuesdays and Saturdays only", () => {
		const two = { openWeekdays: [2, 6], closed: [] };
		expect(isOpen("2026-04-04", two)).toBe(true);
		expect(isOpen("2026-04-06", two)).toBe(false);
		expect(afterWorkingDays("2026-04-04", 3, two)).toEqual({
			ok: true,
			value: "2026-04-14",
		});
	});

	test("over the end of February in a leap year and in another", () => {
		expect(addDays("2028-02-28", 1)).toBe("2028-02-29");
		expect(addDays("2026-02-28", 1)).toBe("2026-03-01");
	});
});

describe("refuses", () => {
	test("days that are no number of days, with the bound", () => {
		for (const days of [-1, 2001, Number.NaN, Number.POSITIVE_INFINITY])
			expect(
				afterWorkingDays("2026-04-01", days, MONDAY_TO_FRIDAY),
			).toMatchObject({
				ok: false,
				refusals: [{ code: "out-of-range", min: 0, max: 2000 }],
			});
	});

	test("a workshop that never opens", () => {
		expect(
			afterWorkingDays("2026-04-01", 1, { openWeekdays: [], closed: [] }),
		).toMatchObject({ ok: false, refusals: [{ code: "no-open-day" }] });
	});

	test.each(["2026-02-29", "2026-13-01", "26-01-01", "2026-1-1", "", "today"])(
		"%s as a date",
		(text) => {
			expect(isIsoDate(text)).toBe(false);
			expect(() => addDays(text, 1)).toThrow(RangeError);
		},
	);
});
