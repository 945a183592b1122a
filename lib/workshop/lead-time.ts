import type { CueRequest, LayoutId, SpliceId } from "@/lib/cue/design";
import { accept, type Outcome, outside, refuse } from "@/lib/numerics/outcome";
import type { WoodId } from "@/lib/reference/woods";
import { afterWorkingDays, type WorkCalendar } from "./working-days";

/** How long a cue takes on this bench. Days are working days, half days allowed. */
export interface LeadTimes extends WorkCalendar {
	readonly basis: "invented" | "workshop";
	/** Cues the workshop finishes in a week without closed days. */
	readonly cuesPerWeek: number;
	/** Any cue. */
	readonly baseDays: number;
	readonly spliceDays: Readonly<Record<SpliceId, number>>;
	readonly layoutDays: Readonly<Record<LayoutId, number>>;
	/** A wood that takes longer, or that has to be had first. */
	readonly buttWoodDays: Readonly<Partial<Record<WoodId, number>>>;
	readonly addedWeightDays: number;
	readonly pointsBetweenDays: number;
	readonly frontWedgeDays: number;
	/** For each wedge of an all-round pattern. */
	readonly allRoundWedgeDays: number;
	/** For each veneer on each set of flats. */
	readonly veneerDays: number;
	readonly endPieceDays: number;
}

export interface LeadTimeLine {
	/** "queue", "base", "splice", … as in the price list. */
	readonly part: string;
	readonly choice: string | null;
	readonly days: number;
}

export interface LeadTime {
	readonly lines: readonly LeadTimeLine[];
	/** Until the bench is free for this cue, and on this cue. Working days. */
	readonly queueDays: number;
	readonly benchDays: number;
	/** ISO date. */
	readonly dueOn: string;
}

/**
 * When a cue asked for on a day is ready: the cues ahead of it at the workshop's pace, then its own
 * working days, on the days the workshop is open. Refuses days that never come (working-days.ts) and a
 * queue that is not 0–10 000 cues.
 */
export function leadTime(p: {
	leadTimes: LeadTimes;
	request: CueRequest;
	hasAddedWeight: boolean;
	/** Cues not yet begun that are made first. */
	cuesAhead: number;
	/** ISO date from which it counts: that of the agreement, or today. */
	from: string;
}): Outcome<LeadTime> {
	const { leadTimes: t, request, cuesAhead } = p;
	const queue = outside("cuesAhead", cuesAhead, 0, 10_000);
	if (queue) return refuse(queue);
	const queueDays = (cuesAhead / t.cuesPerWeek) * t.openWeekdays.length;
	const lines = benchLines(t, request, p.hasAddedWeight);
	const benchDays = lines.reduce((sum, { days }) => sum + days, 0);
	const due = afterWorkingDays(p.from, roundUp(queueDays + benchDays), t);
	if (!due.ok) return due;
	return accept({
		lines: [{ part: "queue", choice: null, days: queueDays }, ...lines].filter(
			({ days }) => days > 0,
		),
		queueDays,
		benchDays,
		dueOn: due.value,
	});
}

/** Up to whole days; sums of tenths a hair above a whole number are that number. */
const roundUp = (days: number): number => Math.ceil(days - 1e-9);

function benchLines(
	t: LeadTimes,
	{ splice, layout, buttWood, splicing = {}, fittings = {} }: CueRequest,
	hasAddedWeight: boolean,
): LeadTimeLine[] {
	const { points, pointsBetween, frontWedge, allRound } = splicing;
	const veneers = [points, pointsBetween, frontWedge, allRound].reduce(
		(sum, flat) => sum + (flat?.veneers?.length ?? 0),
		0,
	);
	const line = (
		part: string,
		choice: string | null,
		days: number,
	): LeadTimeLine => ({ part, choice, days });
	return [
		line("base", null, t.baseDays),
		line("splice", splice, t.spliceDays[splice]),
		line("layout", layout, t.layoutDays[layout]),
		line("butt-wood", buttWood, t.buttWoodDays[buttWood] ?? 0),
		line("added-weight", null, hasAddedWeight ? t.addedWeightDays : 0),
		line(
			"points-between",
			pointsBetween?.wood ?? null,
			pointsBetween ? t.pointsBetweenDays : 0,
		),
		line(
			"front-wedge",
			frontWedge?.wood ?? null,
			frontWedge ? t.frontWedgeDays : 0,
		),
		line(
			"all-round-wedges",
			allRound?.wood ?? null,
			(allRound?.count ?? 0) * t.allRoundWedgeDays,
		),
		line("veneers", null, veneers * t.veneerDays),
		line(
			"end-piece",
			null,
			fittings.endPieceMm === undefined ? 0 : t.endPieceDays,
		),
	];
}
