import type { LayoutId, SpliceId } from "@/lib/cue/design";
import { DAY_FIELDS } from "@/lib/forms/settings/lead-times";
import { NAMES } from "@/lib/present/setting-names";
import type { Reader } from "@/lib/words/reader";

/** A field of the lead times' form as the page names it. */
export function leadTimesLabel(path: string, reader: Reader): string {
	const { say } = reader;
	const [first = "", second = "", third = ""] = path.split(".");
	const day = DAY_FIELDS.find((name) => name === first);
	if (day !== undefined) return say(`settings.leadTimes.part.${day}`);
	const place = String(Number(second) + 1);
	switch (first) {
		case "spliceDays":
			return NAMES.splice(second as SpliceId, reader);
		case "layoutDays":
			return NAMES.layout(second as LayoutId, reader);
		case "openWeekdays":
		case "cuesPerWeek":
			return say(`settings.leadTimes.${first}`);
		case "buttWoods":
			return `${say("settings.leadTimes.buttWoods")} ${place}`;
		case "closed":
			return `${say("settings.leadTimes.closed")} ${place}, ${say(
				`settings.leadTimes.${third === "to" ? "to" : third === "note" ? "note" : "from"}`,
			)}`;
		default:
			return path;
	}
}
