import type { CueRequest } from "@/lib/cue/design";

/**
 * A cue picked among those that can be built, by the search or by hand. The needs stay what they are;
 * only what is built for them is given.
 */
export interface CueChoice {
	readonly request: CueRequest;
	/** Null: the wood's own weight. */
	readonly wantedMassG: number | null;
	/** Null: the weight as far back as the bench usually puts it. */
	readonly wantedBalanceFromButtMm: number | null;
}
