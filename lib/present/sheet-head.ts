import type { Reader } from "@/lib/words/reader";
import type { Header } from "@/lib/workshop/settings";
import { formatDay } from "./dates";

export interface SheetHead {
	readonly title: string;
	readonly lines: readonly string[];
	/** In place of a line with a name that no face at hand can print. */
	readonly unnamedLine: string;
	/** Set where nobody should build from this sheet, or not without asking. */
	readonly replaced: string | null;
}

type Workshop = Pick<Header, "name" | "lines" | "contact">;

/** What stands at the top of a spec's sheet, on screen and on paper. */
export function sheetHead(
	p: {
		number: number;
		revision: number;
		latestRevision: number;
		fittingNumber: number;
		playerName: string;
		savedAt: Date;
		modelVersion: string;
		/** Whose sheet it is. */
		workshop?: Workshop;
	},
	reader: Reader,
): SheetHead {
	const { say } = reader;
	const fitting = p.fittingNumber;
	return {
		title: say("sheet.title", { number: p.number, revision: p.revision }),
		lines: [
			...workshopLine(p.workshop),
			say("sheet.forFitting", { name: p.playerName, fitting }),
			say("sheet.saved", {
				date: formatDay(p.savedAt, reader),
				models: p.modelVersion,
			}),
		],
		unnamedLine: say("sheet.forPage", {
			rest: say("sheet.fittingAfter", { fitting }),
		}),
		replaced:
			p.revision < p.latestRevision
				? say("sheet.replaced", { revision: p.latestRevision })
				: null,
	};
}

/** Whether a bench may build from a job's sheet, and if not, why. */
export type JobSheetStanding =
	| { readonly may: "build" }
	| { readonly may: "ask"; readonly laterRevision: number }
	| {
			readonly may: "not";
			readonly because: "not-agreed" | "cancelled";
	  };

/** What stands at the top of a job's sheet. */
export function jobSheetHead(
	p: {
		number: number;
		revision: number;
		customerName: string;
		/** ISO date. */
		dueOn: string | null;
		writtenAt: Date;
		agreed: { readonly name: string; readonly at: Date } | null;
		standing: JobSheetStanding;
		modelVersion: string;
		workshop: Workshop;
	},
	reader: Reader,
): SheetHead {
	const { say } = reader;
	const { agreed, number: job, modelVersion: models } = p;
	return {
		title: say("sheet.titleOfJob", { job, revision: p.revision }),
		lines: [
			...workshopLine(p.workshop),
			say("sheet.forJob", { name: p.customerName }),
			agreed === null
				? say("sheet.notAgreed", {
						date: formatDay(p.writtenAt, reader),
						models,
					})
				: say("sheet.agreedOn", {
						date: formatDay(agreed.at, reader),
						name: agreed.name,
						models,
					}),
			...(p.dueOn === null
				? []
				: [say("sheet.due", { date: formatDay(p.dueOn, reader) })]),
		],
		unnamedLine: say("sheet.forPage", { rest: say("sheet.jobAfter", { job }) }),
		replaced: standingText(p.standing, reader),
	};
}

function standingText(
	standing: JobSheetStanding,
	{ say }: Reader,
): string | null {
	if (standing.may === "build") return null;
	if (standing.may === "ask")
		return say("sheet.changeWaits", { revision: standing.laterRevision });
	return say(
		standing.because === "cancelled" ? "sheet.cancelled" : "sheet.waitsForYes",
	);
}

/** Name, address and contact in one line; none where nothing was set. */
function workshopLine(workshop: Workshop | undefined): string[] {
	if (workshop === undefined) return [];
	const { name, lines, contact } = workshop;
	const line = [name, ...lines, contact].filter(Boolean).join(" · ");
	return line === "" ? [] : [line];
}
