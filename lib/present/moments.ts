import type { Reader } from "@/lib/words/reader";

const LOCALES = { en: "en-GB", de: "de-DE" } as const;

/**
 * A moment as somebody standing there says it: "14:32" on the same day, "3 May, 14:32" on another.
 * In the time zone given, by default the device's own: so on the device only, never on a server.
 */
export function formatMoment(
	at: Date,
	{ language }: Pick<Reader, "language">,
	{ now, timeZone }: { now: Date; timeZone?: string },
): string {
	const day = new Intl.DateTimeFormat("en-CA", { timeZone });
	const isToday = day.format(at) === day.format(now);
	return new Intl.DateTimeFormat(LOCALES[language], {
		...(isToday ? {} : { day: "numeric", month: "long" }),
		hour: "2-digit",
		minute: "2-digit",
		timeZone,
	}).format(at);
}
