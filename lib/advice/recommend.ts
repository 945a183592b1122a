import { accept, type Outcome } from "@/lib/numerics/outcome";
import { type Advice, advise } from "./advise";
import type { CueChoice } from "./choice";
import type { FittingInput } from "./input";
import { seededUniform } from "./normal";
import type { CueOption } from "./option";
import type { SearchChoices } from "./prepare";
import { type CueSearch, type SearchReport, searchCues } from "./search";

/** One seed for every search, so that page, server and API draw the same bands. */
export const SEARCH_SEED = 1;

/** An advice for the best cue found, and what the search says of it and its rivals. Plain JSON. */
export interface Recommendation extends Advice {
	readonly search: SearchReport;
}

/** An option as a choice to build. */
export const choiceOf = ({
	request,
	wantedMassG,
	wantedBalanceFromButtMm,
}: CueOption): CueChoice => ({ request, wantedMassG, wantedBalanceFromButtMm });

/** The search as every caller runs it. */
export const searchFor = (
	input: FittingInput,
	choices: SearchChoices = {},
): Outcome<CueSearch> =>
	searchCues(input, { ...choices, uniform: seededUniform(SEARCH_SEED) });

/** From a fitting to the best cue that can be built, with its reasons and rivals. */
export function recommend(
	input: FittingInput,
	choices: SearchChoices = {},
): Outcome<Recommendation> {
	const search = searchFor(input, choices);
	if (!search.ok) return search;
	const { report } = search.value;
	const [best] = report.options;
	if (best === undefined) throw new RangeError("recommend: no option");
	const advice = advise(input, choiceOf(best));
	return advice.ok ? accept({ ...advice.value, search: report }) : advice;
}
