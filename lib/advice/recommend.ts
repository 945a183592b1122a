import { accept, type Outcome } from "@/lib/numerics/outcome";
import { type Advice, advise } from "./advise";
import type { CueChoice } from "./choice";
import type { FittingInput, Priorities } from "./input";
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

/** Weight of a criterion that counts more; the usual ones are 0.25 to 1. */
const MORE = 2;

/** The customer's priorities as the search takes them. What counts more and not at all counts not at all. */
export function choicesFrom(priorities: Priorities = {}): SearchChoices {
	const { more = [], none = [], ...rest } = priorities;
	return {
		...rest,
		weights: Object.fromEntries([
			...more.map((id) => [id, MORE] as const),
			...none.map((id) => [id, 0] as const),
		]),
	};
}

/** The search as every caller runs it. `choices`: the workshop's own, beside the customer's. */
export const searchFor = (
	input: FittingInput,
	choices: SearchChoices = {},
): Outcome<CueSearch> =>
	searchCues(input, {
		...choicesFrom(input.priorities),
		...choices,
		uniform: seededUniform(SEARCH_SEED),
	});

/**
 * A weight that was wished for and that the woods cannot give is refused with the nearest they can, not
 * quietly replaced by a cue of another weight; those stay among the cues worth making.
 */
export const isAsWished = (
	{ wantedMassG }: CueChoice,
	{ wishes }: FittingInput,
): boolean =>
	wishes.massG === undefined ||
	(wantedMassG !== null && Math.abs(wantedMassG - wishes.massG) < 0.5);

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
	const advice = advise(
		input,
		isAsWished(best, input) ? choiceOf(best) : undefined,
	);
	return advice.ok ? accept({ ...advice.value, search: report }) : advice;
}
