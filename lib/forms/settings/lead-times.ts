import type { LayoutId, SpliceId } from "@/lib/cue/design";
import type { WoodId } from "@/lib/reference/woods";
import type { UnitSystem } from "@/lib/units/quantity";
import { SETTING_LIMITS as LIMIT } from "@/lib/workshop/checks";
import type { LeadTimes } from "@/lib/workshop/lead-time";
import type { ClosedDays } from "@/lib/workshop/working-days";
import { FieldReader, type FormRead, numberText, readForm } from "./form";

/** Working days that a part of any cue takes. */
export const DAY_FIELDS = [
	"baseDays",
	"addedWeightDays",
	"pointsBetweenDays",
	"frontWedgeDays",
	"allRoundWedgeDays",
	"veneerDays",
	"endPieceDays",
] as const;

export interface LeadTimesForm
	extends Readonly<Record<(typeof DAY_FIELDS)[number], string>> {
	readonly openWeekdays: string[];
	readonly cuesPerWeek: string;
	readonly spliceDays: Readonly<Record<SpliceId, string>>;
	readonly layoutDays: Readonly<Record<LayoutId, string>>;
	readonly buttWoods: { readonly wood: WoodId; readonly days: string }[];
	readonly closed: ClosedDays[];
}

const texts = <Id extends string>(
	days: Readonly<Record<Id, number>>,
	mark: string,
) =>
	Object.fromEntries(
		Object.entries<number>(days).map(([id, value]) => [
			id,
			numberText(value, mark),
		]),
	) as Record<Id, string>;

/** `mark`: the reader's decimal mark. */
export const leadTimesForm = (t: LeadTimes, mark = "."): LeadTimesForm => ({
	...texts(
		Object.fromEntries(DAY_FIELDS.map((name) => [name, t[name]])) as Record<
			(typeof DAY_FIELDS)[number],
			number
		>,
		mark,
	),
	openWeekdays: t.openWeekdays.map(String),
	cuesPerWeek: numberText(t.cuesPerWeek, mark),
	spliceDays: texts(t.spliceDays, mark),
	layoutDays: texts(t.layoutDays, mark),
	buttWoods: Object.entries(t.buttWoodDays).map(([wood, days]) => ({
		wood: wood as WoodId,
		days: numberText(days, mark),
	})),
	closed: [...t.closed],
});

export function readLeadTimes(
	form: LeadTimesForm,
	system: UnitSystem,
): FormRead<"lead-times"> {
	const fields = new FieldReader(system);
	const days = (path: string, text: string) =>
		fields.number(path, text, LIMIT.days);
	const byChoice = <Id extends string>(
		name: string,
		from: Readonly<Record<Id, string>>,
	) =>
		Object.fromEntries(
			Object.entries<string>(from).map(([id, text]) => [
				id,
				days(`${name}.${id}`, text),
			]),
		) as Record<Id, number>;
	const seen = new Set<WoodId>();
	form.buttWoods.forEach(({ wood }, i) => {
		if (seen.has(wood))
			fields.refuse(`buttWoods.${i}.wood`, {
				code: "listed-twice",
				field: `leadTimes.buttWoodDays.${wood}`,
				value: wood,
			});
		seen.add(wood);
	});
	return readForm({
		kind: "lead-times",
		fields,
		content: {
			basis: "workshop",
			openWeekdays: form.openWeekdays.map(Number).sort((a, b) => a - b),
			closed: form.closed.map(({ from, to, note }) => ({
				from,
				to: to === "" ? from : to,
				note: note.trim(),
			})),
			cuesPerWeek: fields.number(
				"cuesPerWeek",
				form.cuesPerWeek,
				LIMIT.cuesPerWeek,
			),
			...(Object.fromEntries(
				DAY_FIELDS.map((name) => [name, days(name, form[name])]),
			) as Record<(typeof DAY_FIELDS)[number], number>),
			spliceDays: byChoice("spliceDays", form.spliceDays),
			layoutDays: byChoice("layoutDays", form.layoutDays),
			buttWoodDays: Object.fromEntries(
				form.buttWoods.map(({ wood, days: text }, i) => [
					wood,
					days(`buttWoods.${i}.days`, text),
				]),
			),
		},
		pathOf: (field) => field.replace(/^openWeekdays\.\d+$/, "openWeekdays"),
	});
}
