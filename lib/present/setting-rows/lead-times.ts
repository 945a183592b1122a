import type { LayoutId, SpliceId } from "@/lib/cue/design";
import { DAY_FIELDS } from "@/lib/forms/settings/lead-times";
import { formatDay } from "@/lib/present/dates";
import { formatNumber } from "@/lib/present/figures";
import { NAMES } from "@/lib/present/setting-names";
import type { WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import type { LeadTimes } from "@/lib/workshop/lead-time";
import type { SettingRow } from "./row";

/** "Monday": 1 to 7 as ISO 8601 counts. */
export const weekdayName = (day: number, { say }: Reader): string => {
	const key =
		`settings.leadTimes.weekday.${day}` as "settings.leadTimes.weekday.1";
	if (!say.has(key)) throw new RangeError(`there is no weekday ${day}`);
	return say(key);
};

/** Days to at most two decimals, as written. */
export const formatDays = (days: number, reader: Reader): string =>
	formatNumber(
		days,
		reader,
		Number.isInteger(days) ? 0 : Number.isInteger(10 * days) ? 1 : 2,
	);

/** Pace, days of each part and choice, and when the workshop is closed. */
export function leadTimeRows(t: LeadTimes, reader: Reader): SettingRow[] {
	const { say } = reader;
	const named = <Id extends string>(
		key: "spliceDays" | "layoutDays",
		days: Readonly<Record<Id, number>>,
		name: (id: Id, reader: Reader) => string,
	): SettingRow[] =>
		(Object.entries(days) as [Id, number][]).map(([id, value]) => ({
			key: `${key}.${id}`,
			label: `${say(`settings.leadTimes.${key}`)} · ${name(id, reader)}`,
			value: formatDays(value, reader),
		}));
	return [
		{
			key: "openWeekdays",
			label: say("settings.leadTimes.openWeekdays"),
			value: t.openWeekdays.map((day) => weekdayName(day, reader)).join(", "),
		},
		{
			key: "cuesPerWeek",
			label: say("settings.leadTimes.cuesPerWeek"),
			value: formatDays(t.cuesPerWeek, reader),
		},
		...DAY_FIELDS.map((name) => ({
			key: name,
			label: `${say("settings.leadTimes.days")} · ${say(`settings.leadTimes.part.${name}`)}`,
			value: formatDays(t[name], reader),
		})),
		...named<SpliceId>("spliceDays", t.spliceDays, NAMES.splice),
		...named<LayoutId>("layoutDays", t.layoutDays, NAMES.layout),
		...(Object.entries(t.buttWoodDays) as [WoodId, number][]).map(
			([wood, days]) => ({
				key: `buttWoodDays.${wood}`,
				label: say("settings.leadTimes.buttWoodDays", {
					wood: NAMES.wood(wood, reader),
				}),
				value: formatDays(days, reader),
			}),
		),
		...t.closed.map(({ from, to, note }) => {
			const days =
				from === to
					? formatDay(from, reader)
					: say("settings.leadTimes.closedText", {
							from: formatDay(from, reader),
							to: formatDay(to, reader),
						});
			return {
				key: `closed ${from}`,
				label: `${say("settings.leadTimes.closed")} · ${formatDay(from, reader)}`,
				value:
					note === ""
						? days
						: say("settings.leadTimes.closedNoted", { days, note }),
			};
		}),
	];
}
