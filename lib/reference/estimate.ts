import type { CitationId } from "./citations";

/**
 * What a number rests on. `measured`: read on this player, cue or billet. `published`: a named
 * source. `derived`: computed here from published or measured values. `common-practice`: a fact of
 * the trade without a published source. `assumed`: this project's judgement.
 */
export type Standing =
	| "measured"
	| "published"
	| "derived"
	| "common-practice"
	| "assumed";

/** A sourced constant. `sd` is one standard deviation in the constant's unit, 0 where exact. */
export interface SourcedConstant {
	readonly value: number;
	readonly unit: string;
	readonly sd: number;
	readonly standing: Standing;
	readonly source: CitationId;
	readonly locator: string;
	readonly fromMemory: boolean;
}

/** A value with its standard deviation and what it rests on. The unit is in the owner's name. */
export interface Estimate {
	readonly value: number;
	readonly sd: number;
	readonly standing: Standing;
	readonly sources: readonly CitationId[];
}

/** Standard normal quantile of 0.95: half-width of a central 90 % band in standard deviations. */
export const Z90 = 1.6448536269514722;

export interface Band {
	readonly low: number;
	readonly high: number;
}

/** Central 90 % band of a normally distributed estimate. */
export function band90(estimate: { value: number; sd: number }): Band {
	return {
		low: estimate.value - Z90 * estimate.sd,
		high: estimate.value + Z90 * estimate.sd,
	};
}
