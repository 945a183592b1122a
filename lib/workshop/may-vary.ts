/** What a finished cue may differ in from the quote. */
export const MAY_VARY = [
	"mass-g",
	"balance-mm",
	"length-mm",
	"diameter-mm",
	"hand-over-days",
	"grain-and-colour",
] as const;
export type MayVaryCode = (typeof MAY_VARY)[number];

export interface MayVary {
	readonly code: MayVaryCode;
	/** In the unit of the code, either way; null where no number belongs to it. */
	readonly within: number | null;
}
