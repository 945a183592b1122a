import type { LayoutId, SpliceId, TaperShapeId } from "@/lib/cue/design";
import type { MetalId } from "@/lib/reference/metals";
import type { GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import type { BuildContent, TargetId } from "@/lib/workshop/job-content";
import type {
	JobDifference,
	JobDifferences,
	Told,
} from "@/lib/workshop/job-difference";
import type { JobEventFacts, JobEventKind } from "@/lib/workshop/job-event";
import type { JobState, WaitingFor } from "@/lib/workshop/job-state";
import type { MayVary } from "@/lib/workshop/may-vary";
import { addDays } from "@/lib/workshop/working-days";
import { checkEventText } from "./check-event-words";
import { formatDay } from "./dates";
import { formatLength, formatMass } from "./figures";
import {
	gameName,
	handLabel,
	inSentence,
	layoutLabel,
	metalName,
	spliceLabel,
	taperLabel,
	woodName,
} from "./labels";
import { formatAmount } from "./money";
import { formatFigure } from "./reasons";

export const stateName = (state: JobState, { say }: Reader): string =>
	say(`job.state.${state}`);

/** "waiting to dry, until 3 May 2026 at the latest". */
export const waitingText = (
	waiting: { for: WaitingFor; expectedOn: string },
	reader: Reader,
): string =>
	reader.say(`job.waitingUntil.${waiting.for}`, {
		date: formatDay(waiting.expectedOn, reader),
	});

export type DueStanding = "overdue" | "this-week" | "later" | "none";

/** Closed jobs are never late. Today counts as this week. */
export function dueView(p: {
	dueOn: string | null;
	isOpen: boolean;
	today: string;
	reader: Reader;
}): { text: string; standing: DueStanding } {
	const { dueOn, today, reader } = p;
	if (dueOn === null)
		return { text: reader.say("job.noDue"), standing: "none" };
	const text = formatDay(dueOn, reader);
	if (!p.isOpen) return { text, standing: "later" };
	if (dueOn < today) return { text, standing: "overdue" };
	return {
		text,
		standing: dueOn < addDays(today, 7) ? "this-week" : "later",
	};
}

/** "1473 mm, white ash and Gaboon ebony, hand-cut splice": enough to know a cue by in a list. */
export function cueLine(
	{ request, targets }: Pick<BuildContent, "request" | "targets">,
	reader: Reader,
): string {
	return reader.say("job.cueLine", {
		length: formatFigure("length", targets.length.value, reader),
		shaft: inSentence.wood(request.shaftWood, reader),
		butt: inSentence.wood(request.buttWood, reader),
		splice: inSentence.splice(request.splice, reader),
	});
}

/** One line of a job's history. */
export function eventText(
	event: {
		kind: JobEventKind;
		toState: JobState | null;
		facts: JobEventFacts;
	},
	reader: Reader,
): string {
	const { say } = reader;
	const { kind, toState, facts } = event;
	const moved =
		toState === null || kind === "moved"
			? ""
			: say("job.event.nowIn", { state: stateName(toState, reader) });
	const revision = String(facts.revision ?? "");
	switch (kind) {
		case "moved":
			if (toState === null) throw new TypeError("a move goes nowhere");
			return facts.waitingFor !== undefined && facts.expectedOn !== undefined
				? say("job.event.waits", {
						what: waitingText(
							{ for: facts.waitingFor, expectedOn: facts.expectedOn },
							reader,
						),
					})
				: say("job.event.moved", { state: stateName(toState, reader) });
		case "quoted":
			return say("job.event.quoted", { revision }) + moved;
		case "changed":
			return say("job.event.changed", { revision }) + moved;
		case "agreed":
			return (
				say(
					facts.via === "bench"
						? "job.event.agreedBench"
						: "job.event.agreedPage",
					{ revision },
				) + moved
			);
		case "due-set":
			return facts.dueOn == null
				? say("job.event.dueTaken")
				: say("job.event.dueSet", { date: formatDay(facts.dueOn, reader) });
		case "opened":
		case "noted":
		case "customer-changed":
		case "link-made":
		case "links-revoked":
		case "player-erased":
			return say(`job.event.${kind}`);
		case "checked":
		case "decided":
		case "evidence-taken":
		case "evidence-withdrawn":
		case "evidence-restored":
			return checkEventText(kind, facts, reader);
	}
}

const DEVIATIONS: Readonly<
	Record<"mass-g" | "balance-mm" | "length-mm" | "diameter-mm", TargetId>
> = {
	"mass-g": "mass",
	"balance-mm": "balance",
	"length-mm": "length",
	"diameter-mm": "butt",
};

/** "The weight, by up to 7 g either way". */
export function mayVaryText({ code, within }: MayVary, reader: Reader): string {
	const { say } = reader;
	if (code === "grain-and-colour" || within === null)
		return say(`job.mayVary.${code}`);
	if (code === "hand-over-days")
		return say("job.mayVaryBy.hand-over-days", { days: within });
	return say(`job.mayVaryBy.${code}`, {
		amount: deviation(code, within, reader),
	});
}

const deviation = (
	code: keyof typeof DEVIATIONS,
	within: number,
	reader: Reader,
): string =>
	code === "mass-g"
		? formatMass(within, reader)
		: formatLength(
				within,
				reader,
				code === "diameter-mm" ? "bench" : "station",
			);

export interface DifferenceRow {
	readonly label: string;
	readonly before: string;
	readonly after: string;
}

/** What a revision changes, a row each; the last rows say what no figure names. */
export function differenceRows(
	{ told, largestDiameterChangeMm, isMore }: JobDifferences,
	reader: Reader,
): DifferenceRow[] {
	const { say } = reader;
	const rows = told.map(
		({ what, before, after }: JobDifference): DifferenceRow => ({
			label: say(`job.difference.${what}`),
			before: toldText(before, reader),
			after: toldText(after, reader),
		}),
	);
	if (largestDiameterChangeMm !== null)
		rows.push({
			label: say("job.difference.stations"),
			before: "",
			after: say("job.stationsChange", {
				amount: formatLength(largestDiameterChangeMm, reader, "bench"),
			}),
		});
	if (isMore)
		rows.push({
			label: say("job.difference.more"),
			before: "",
			after: say("job.moreChanged"),
		});
	return rows;
}

function toldText(told: Told, reader: Reader): string {
	switch (told.kind) {
		case "figure":
			return formatFigure(told.id, told.value, reader);
		case "length-mm":
			return reader.say("job.fromButt", {
				length: formatLength(told.value, reader, "station"),
			});
		case "mass-g":
			return formatMass(told.value, reader, "added");
		case "wood":
			return woodName(told.id as WoodId, reader);
		case "woods":
			return woodsText(told.ids, reader);
		case "splice":
			return spliceLabel(told.id as SpliceId, reader);
		case "layout":
			return layoutLabel(told.id as LayoutId, reader);
		case "taper":
			return taperLabel(told.id as TaperShapeId, reader);
		case "metal":
			return metalName(told.id as MetalId, reader);
		case "game":
			return gameName(told.id as GameId, reader);
		case "hand":
			return handLabel(told.id as "right" | "left", reader);
		case "money":
			return formatAmount(told.minor, told, reader);
		case "date":
			return formatDay(told.isoDate, reader);
		case "may-vary":
			return told.list.map((one) => mayVaryText(one, reader)).join("; ");
		case "text":
			return told.text;
		case "none":
			return reader.say("job.nothing");
	}
}

/** "snakewood, 4 × maple": each wood once, with how often. */
export const woodsText = (ids: readonly string[], reader: Reader): string =>
	counted(ids)
		.map(([wood, count]) =>
			count === 1
				? woodName(wood as WoodId, reader)
				: `${count}\u00a0× ${woodName(wood as WoodId, reader)}`,
		)
		.join(", ");

function counted(ids: readonly string[]): (readonly [string, number])[] {
	return [...new Set(ids)].map((id) => [
		id,
		ids.filter((one) => one === id).length,
	]);
}
