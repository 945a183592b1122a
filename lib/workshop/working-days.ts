import {
	accept,
	type Outcome,
	outside,
	type Refusal,
	refuse,
} from "@/lib/numerics/outcome";

/** Dates are ISO dates, "2026-03-31": days of the calendar, without a time zone. */
export interface ClosedDays {
	readonly from: string;
	/** The last closed day; the same as `from` for a single one. */
	readonly to: string;
	readonly note: string;
}

export interface WorkCalendar {
	/** 1 Monday to 7 Sunday, as ISO 8601 counts. */
	readonly openWeekdays: readonly number[];
	readonly closed: readonly ClosedDays[];
}

const DAY_MS = 86_400_000;
/** The furthest ahead a date is looked for. */
export const MOST_WORKING_DAYS = 2000;
const MOST_DAYS = 20 * 366;

/** True for a real day of the calendar in the form "2026-03-31", years 1900 to 2999. */
export function isIsoDate(text: string): boolean {
	if (!/^(19|2\d)\d\d-\d\d-\d\d$/.test(text)) return false;
	const ms = Date.parse(`${text}T00:00:00Z`);
	return !Number.isNaN(ms) && new Date(ms).toISOString().slice(0, 10) === text;
}

/** Refusals of text that is no date ("not-a-date") or lies before a day ("date-passed"). */
export function notBefore(
	field: string,
	value: string,
	earliest: string,
): readonly Refusal[] {
	if (!isIsoDate(value)) return [{ code: "not-a-date", field, value }];
	return value >= earliest
		? []
		: [{ code: "date-passed", field, value, facts: { earliest } }];
}

/** The day so many days later. Throws for text that is no date. */
export function addDays(isoDate: string, days: number): string {
	if (!isIsoDate(isoDate)) throw new RangeError(`not a date: ${isoDate}`);
	const ms = Date.parse(`${isoDate}T00:00:00Z`) + days * DAY_MS;
	return new Date(ms).toISOString().slice(0, 10);
}

/** 1 Monday to 7 Sunday. */
export const weekdayOf = (isoDate: string): number =>
	new Date(`${isoDate}T00:00:00Z`).getUTCDay() || 7;

export const isOpen = (isoDate: string, calendar: WorkCalendar): boolean =>
	calendar.openWeekdays.includes(weekdayOf(isoDate)) &&
	!calendar.closed.some(({ from, to }) => from <= isoDate && isoDate <= to);

/**
 * The day on which so many working days after `from` are done; `from` itself is not worked. Nought gives
 * `from` itself where the workshop is open, else the next open day. Refuses "out-of-range" for days that
 * are not 0–2000, and "no-open-day" where the workshop does not open often enough within 20 years.
 */
export function afterWorkingDays(
	from: string,
	workingDays: number,
	calendar: WorkCalendar,
): Outcome<string> {
	const refusal = outside("workingDays", workingDays, 0, MOST_WORKING_DAYS);
	if (refusal) return refuse(refusal);
	let day = from;
	let left = Math.ceil(workingDays);
	if (left === 0 && isOpen(day, calendar)) return accept(day);
	left = Math.max(left, 1);
	for (let i = 0; i < MOST_DAYS; i++) {
		day = addDays(day, 1);
		if (isOpen(day, calendar)) left--;
		if (left === 0) return accept(day);
	}
	return refuse({
		code: "no-open-day",
		field: "leadTimes.closed",
		value: from,
	});
}
