import type { Reader } from "@/lib/words/reader";
import type { Header } from "@/lib/workshop/settings";
import { formatDay } from "./dates";

export interface SummaryHead {
	readonly title: string;
	readonly lines: readonly string[];
}

/** What stands at the top of a player's summary, on screen and on paper. */
export function summaryHead(
	p: {
		playerName: string;
		fittingNumber: number;
		answeredAt: Date;
		/** Null while no spec was saved. */
		spec: {
			readonly number: number;
			readonly revision: number;
			readonly savedAt: Date;
		} | null;
		modelVersion: string;
		workshop: Pick<Header, "name" | "lines" | "contact">;
	},
	reader: Reader,
): SummaryHead {
	const { say } = reader;
	const { name, lines, contact } = p.workshop;
	const workshop = [name, ...lines, contact].filter(Boolean).join(" · ");
	return {
		title: say("summary.title", { player: p.playerName }),
		lines: [
			...(workshop === "" ? [] : [workshop]),
			say("summary.fitting", {
				number: String(p.fittingNumber),
				day: formatDay(p.answeredAt, reader),
			}),
			p.spec === null
				? say("summary.unsaved", { version: p.modelVersion })
				: say("summary.saved", {
						number: String(p.spec.number),
						revision: String(p.spec.revision),
						day: formatDay(p.spec.savedAt, reader),
						version: p.modelVersion,
					}),
		],
	};
}
