import type { Reader } from "@/lib/words/reader";
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
	},
	reader: Reader,
): SheetHead {
	return {
		title: `Job sheet ${p.number}/${p.revision}`,
		lines: [
			`For ${p.playerName}, fitting ${p.fittingNumber}`,
			`Saved ${formatDay(p.savedAt, reader)}, models ${p.modelVersion}`,
		],
		replaced:
			p.revision < p.latestRevision
				? `REPLACED by revision ${p.latestRevision}: do not build from this sheet`
				: null,
	};
}
