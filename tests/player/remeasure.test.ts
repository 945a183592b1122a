import { expect, test } from "vitest";
import { remeasureDue } from "@/lib/player/remeasure";

const nothing = {
	setOn: null,
	measuredOn: null,
	bornOn: null,
	answeredAgeYears: undefined,
	today: "2026-06-15",
};

test("nothing said of age and no day set: nothing is due", () => {
	expect(remeasureDue(nothing)).toBeNull();
	expect(remeasureDue({ ...nothing, measuredOn: "2020-01-01" })).toBeNull();
});

test("a day set by the coach is overdue from the day after, until the player is measured", () => {
	const set = { ...nothing, setOn: "2026-06-15" };
	expect(remeasureDue(set)).toEqual({
		on: "2026-06-15",
		by: "coach",
		isOverdue: false,
	});
	expect(remeasureDue({ ...set, today: "2026-06-16" })?.isOverdue).toBe(true);
	expect(remeasureDue({ ...set, measuredOn: "2026-06-14" })?.by).toBe("coach");
	expect(remeasureDue({ ...set, measuredOn: "2026-06-15" })).toBeNull();
});

test("juniors are due by age at the last fitting: half-yearly from 10 to 15, else yearly, never from 18", () => {
	const at = (bornOn: string) =>
		remeasureDue({ ...nothing, bornOn, measuredOn: "2025-08-31" });
	expect(at("2013-01-01")).toEqual({
		on: "2026-02-28",
		by: "growth",
		isOverdue: true,
	});
	expect(at("2009-01-01")).toEqual({
		on: "2026-08-31",
		by: "growth",
		isOverdue: false,
	});
	expect(at("2000-01-01")).toBeNull();
});

test("the age as answered serves where no date of birth is known, and the date goes first", () => {
	const junior = { ...nothing, measuredOn: "2026-01-10", answeredAgeYears: 12 };
	expect(remeasureDue(junior)?.on).toBe("2026-07-10");
	expect(remeasureDue({ ...junior, bornOn: "1990-01-01" })).toBeNull();
});
