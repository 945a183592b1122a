import type { FittingInput } from "@/lib/advice/input";
import { seededUniform } from "@/lib/advice/normal";
import {
	type Prepared,
	prepare,
	type SearchChoices,
} from "@/lib/advice/prepare";
import {
	type CueSearch,
	type SearchOptions,
	searchCues,
} from "@/lib/advice/search";
import { must } from "@/lib/numerics/outcome";

export const prepared = (
	input: FittingInput,
	choices: SearchChoices = {},
): Prepared => must(prepare(input, choices));

/** A small search: enough to show what is tested, quick enough to repeat. */
export const searched = (
	input: FittingInput,
	options: Partial<SearchOptions> = {},
): CueSearch =>
	must(
		searchCues(input, {
			candidateCount: 8000,
			drawCount: 100,
			uniform: seededUniform(1),
			...options,
		}),
	);
