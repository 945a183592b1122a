import type { Reader } from "@/lib/words/reader";
import type { Header } from "@/lib/workshop/settings";
import { formatDay } from "./dates";

export interface SheetHead {
	readonly title: string;
	readonly lines: readonly string[];
	/** Set where a later revision replaces this one. */
	readonly replaced: string | null;
}

/** What stands at the top of a job sheet, on screen and on paper. */
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
		workshop?: Pick<Header, "name" | "lines" | "contact">;
	},
	reader: Reader,
): SheetHead {
	return {
		title: `Job sheet ${p.number}/${p.revision}`,
		lines: [
			...workshopLine(p.workshop),
			`For ${p.playerName}, fitting ${p.fittingNumber}`,
			`Saved ${formatDay(p.savedAt, reader)}, models ${p.modelVersion}`,
		],
		replaced:
			p.revision < p.latestRevision
				? `REPLACED by revision ${p.latestRevision}: do not build from this sheet`
				: null,
	};
}

/** The head of a job's sheet; a job that is not agreed says so where it cannot be missed. */
export function jobSheetHead(
	p: {
		number: number;
		revision: number;
		customerName: string;
		writtenAt: Date;
		modelVersion: string;
		isAgreed: boolean;
		workshop: Pick<Header, "name" | "lines" | "contact">;
	},
	reader: Reader,
): SheetHead {
	const { say } = reader;
	return {
		title: say("job.sheet.title", {
			number: String(p.number),
			revision: String(p.revision),
		}),
		lines: [
			...workshopLine(p.workshop),
			say("job.sheet.for", { customer: p.customerName }),
			say("job.sheet.written", {
				day: formatDay(p.writtenAt, reader),
				model: p.modelVersion,
			}),
		],
		replaced: p.isAgreed ? null : say("job.sheet.notAgreed"),
	};
}

/** Name, address and contact in one line; none where nothing was set. */
function workshopLine(
	workshop: Pick<Header, "name" | "lines" | "contact"> | undefined,
): string[] {
	if (workshop === undefined) return [];
	const { name, lines, contact } = workshop;
	const line = [name, ...lines, contact].filter(Boolean).join(" · ");
	return line === "" ? [] : [line];
}
