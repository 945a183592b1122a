import { accept, type Caution, type Outcome } from "@/lib/numerics/outcome";
import type { Band } from "@/lib/reference/estimate";
import type { Advice } from "./advise";
import type { Figure } from "./figure";
import { type FrozenBuild, freezeBuild } from "./frozen-build";
import type { FittingInput } from "./input";
import type { SearchReport } from "./search";

/**
 * What a saved revision holds: every number the job sheet prints, so that a sheet opened years later
 * is the sheet that was saved, whatever the models have become. Plain JSON.
 */
export interface SpecContent extends FrozenBuild {
	readonly schemaVersion: 1;
	readonly modelVersion: string;
	readonly input: FittingInput;
	readonly figures: Readonly<
		Record<"length" | "mass" | "butt" | "tip" | "balance", Figure>
	>;
	readonly buttRangeMm: Band;
	/** What the search said of this cue and its rivals; null for a cue that was not searched for. */
	readonly search: SearchReport | null;
	/** For the player and the coach. */
	readonly cautions: readonly Caution[];
}

/** Freezes an advice into a spec; refused while the build cannot be made or breaks a rule. */
export function specFrom(
	advice: Advice,
	search: SearchReport | null,
): Outcome<SpecContent> {
	const frozen = freezeBuild({
		build: advice.build,
		massG: advice.mass.value,
		gameId: advice.gameId,
	});
	if (!frozen.ok) return frozen;
	return accept({
		schemaVersion: 1,
		modelVersion: advice.modelVersion,
		...frozen.value,
		input: advice.input,
		figures: {
			length: advice.length,
			mass: advice.mass,
			butt: advice.butt.figure,
			tip: advice.tip,
			balance: advice.balance,
		},
		buttRangeMm: advice.butt.rangeMm,
		search,
		cautions: advice.cautions,
	});
}
