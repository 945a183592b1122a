import type { CitationId } from "@/lib/reference/citations";
import { FALL_OFF, TRIAL_FIELDS, WORTH_HAVING } from "@/lib/trial/assumptions";
import type { Reader } from "@/lib/words/reader";
import { formatNumber } from "./figures";
import { citationTitle } from "./labels";

/** How the numbers of a trial come about, for who wants to know. */
export function methodLines(reader: Reader): string[] {
	const { say } = reader;
	const figures = TRIAL_FIELDS.map((field) => {
		const fallOff = FALL_OFF[field];
		return say("trial.method.figure", {
			name: say(`trial.fieldMid.${field}`),
			value: formatNumber(fallOff, reader, Number.isInteger(fallOff) ? 0 : 1),
			unit: field === "massG" ? "g" : "mm",
		});
	});
	return [
		say("trial.method.share"),
		say("trial.method.difference"),
		say("trial.method.luck"),
		say("trial.method.more", {
			count: formatNumber(WORTH_HAVING * 100, reader),
		}),
		say("trial.method.pair"),
		say("trial.method.fallOff", { figures: figures.join(", ") }),
		say("trial.method.session"),
	];
}

const SOURCES: readonly CitationId[] = [
	"brown-cai-dasgupta-2001",
	"fisher-1935",
	"mcnemar-1947",
	"holm-1979",
	"williams-1949",
	"connor-1987",
	"fleiss-2003",
	"lindley-1956",
	"frazier-2009",
	"project-judgement",
];

export const methodSources = (reader: Reader): string[] =>
	SOURCES.map((id) => citationTitle(id, reader));
