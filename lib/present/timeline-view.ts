import type { Remeasure } from "@/lib/player/remeasure";
import type { Reader } from "@/lib/words/reader";
import type { JobState } from "@/lib/workshop/job-state";
import { formatDay } from "./dates";
import { formatLength, formatMass } from "./figures";

interface Placed {
	readonly id: string;
	/** ISO moment it stands under; what is only known by its day stands at the start of it. */
	readonly at: string;
	readonly isDemo: boolean;
}

/** One thing that happened to a player. */
export type DiaryEntry = Placed &
	(
		| {
				readonly kind: "fitting";
				readonly number: number;
				readonly hasSpec: boolean;
				readonly basedOnNumber: number | null;
		  }
		| {
				readonly kind: "spec";
				readonly number: number;
				readonly revision: number;
				readonly reason: string;
				readonly fittingNumber: number;
		  }
		| {
				readonly kind: "cue";
				readonly name: string;
				readonly lengthMm: number | null;
				readonly massG: number | null;
				readonly jobNumber: number | null;
				readonly asideAt: Date | null;
		  }
		| {
				readonly kind: "job";
				readonly number: number;
				readonly state: JobState;
		  }
		| {
				readonly kind: "trial";
				readonly number: number;
				readonly hasEnded: boolean;
		  }
		| { readonly kind: "note"; readonly text: string }
	);

export interface TimelineRow {
	readonly id: string;
	readonly day: string;
	/** Machine form of the day. */
	readonly isoDay: string;
	readonly kind: DiaryEntry["kind"];
	/** What kind of thing it is, in a word. */
	readonly kindName: string;
	readonly title: string;
	/** Where it is opened; null for what has no page of its own. */
	readonly href: string | null;
	readonly details: readonly string[];
	/** A second page of the same thing. */
	readonly also: { readonly href: string; readonly text: string } | null;
	readonly isDemo: boolean;
}

/** One entry of the diary as it is read. */
export const timelineRow = (
	entry: DiaryEntry,
	reader: Reader,
): TimelineRow => ({
	id: entry.id,
	isoDay: entry.at.slice(0, 10),
	day: formatDay(entry.at.slice(0, 10), reader),
	kind: entry.kind,
	kindName: reader.say(`timeline.kind.${entry.kind}`),
	isDemo: entry.isDemo,
	also:
		entry.kind === "fitting"
			? {
					href: `/fittings/${entry.number}/summary`,
					text: reader.say("summary.open"),
				}
			: null,
	...wordsOf(entry, reader),
});

function wordsOf(
	entry: DiaryEntry,
	reader: Reader,
): Pick<TimelineRow, "title" | "href" | "details"> {
	const { say } = reader;
	switch (entry.kind) {
		case "fitting":
			return {
				title: say("timeline.fitting", { number: String(entry.number) }),
				href: `/fittings/${entry.number}/${entry.hasSpec ? "recommendation" : "player"}`,
				details:
					entry.basedOnNumber === null
						? []
						: [
								say("timeline.refitOf", {
									number: String(entry.basedOnNumber),
								}),
							],
			};
		case "spec":
			return {
				title: say("timeline.spec", {
					number: String(entry.number),
					revision: String(entry.revision),
				}),
				href: `/specs/${entry.number}/${entry.revision}`,
				details: [
					say("timeline.ofFitting", { number: String(entry.fittingNumber) }),
					...(entry.reason === "" ? [] : [entry.reason]),
				],
			};
		case "cue":
			return {
				title: entry.name,
				href: null,
				details: [
					...(entry.lengthMm === null
						? []
						: [
								say("timeline.cueLength", {
									length: formatLength(entry.lengthMm, reader),
								}),
							]),
					...(entry.massG === null
						? []
						: [
								say("timeline.cueWeight", {
									weight: formatMass(entry.massG, reader),
								}),
							]),
					...(entry.jobNumber === null
						? []
						: [say("timeline.fromJob", { number: String(entry.jobNumber) })]),
					...(entry.asideAt === null
						? []
						: [
								say("timeline.aside", {
									date: formatDay(entry.asideAt, reader),
								}),
							]),
				],
			};
		case "job":
			return {
				title: say("timeline.job", { number: String(entry.number) }),
				href: `/workshop/${entry.number}`,
				details: [
					say("timeline.jobState", { state: say(`job.state.${entry.state}`) }),
				],
			};
		case "trial":
			return {
				title: say("timeline.trial", { number: String(entry.number) }),
				href: `/trials/${entry.number}`,
				details: [
					say(entry.hasEnded ? "timeline.trialEnded" : "timeline.trialOpen"),
				],
			};
		case "note":
			return { title: entry.text, href: null, details: [] };
	}
}

export interface RemeasureView {
	readonly text: string;
	/** Who set the day, or which rhythm gives it. */
	readonly because: string | null;
	readonly isOverdue: boolean;
}

export function remeasureView(
	due: Remeasure | null,
	reader: Reader,
): RemeasureView {
	const { say } = reader;
	if (due === null)
		return { text: say("timeline.notDue"), because: null, isOverdue: false };
	const date = formatDay(due.on, reader);
	return {
		text: due.isOverdue
			? say("timeline.overdueSince", { date })
			: say("timeline.dueOn", { date }),
		because: say(`timeline.dueBy.${due.by}`),
		isOverdue: due.isOverdue,
	};
}
