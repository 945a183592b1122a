import type { LanguageId } from "@/lib/words/languages";
import type { Reader } from "@/lib/words/reader";

const written = (locale: string) =>
	new Intl.DateTimeFormat(locale, {
		day: "numeric",
		month: "long",
		year: "numeric",
		timeZone: "UTC",
	});

const monthly = (locale: string) =>
	new Intl.DateTimeFormat(locale, {
		month: "long",
		year: "numeric",
		timeZone: "UTC",
	});

const MONTHS: Readonly<Record<LanguageId, Intl.DateTimeFormat>> = {
	en: monthly("en-GB"),
	de: monthly("de-DE"),
};

const DAYS: Readonly<Record<LanguageId, Intl.DateTimeFormat>> = {
	en: written("en-GB"),
	de: written("de-DE"),
};

/** The month of a day of the calendar, "May 2026". */
export const formatMonth = (
	day: string,
	{ language }: Pick<Reader, "language">,
): string => MONTHS[language].format(new Date(`${day}T00:00:00Z`));

/** A day of the calendar, "2026-05-03", or the day of a moment in universal time, as the reader writes it. */
export const formatDay = (
	day: string | Date,
	{ language }: Pick<Reader, "language">,
): string =>
	DAYS[language].format(
		typeof day === "string" ? new Date(`${day}T00:00:00Z`) : day,
	);

const short = (locale: string) =>
	new Intl.DateTimeFormat(locale, {
		day: "numeric",
		month: "short",
		timeZone: "UTC",
	});

const SHORT_DAYS: Readonly<Record<LanguageId, Intl.DateTimeFormat>> = {
	en: short("en-GB"),
	de: short("de-DE"),
};

/** "3 May", for a day within the year where there is little room. */
export const formatShortDay = (
	day: string,
	{ language }: Pick<Reader, "language">,
): string => SHORT_DAYS[language].format(new Date(`${day}T00:00:00Z`));
