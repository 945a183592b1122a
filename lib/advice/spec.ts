import type { AddedWeightPlan } from "@/lib/build/added-weight";
import type { RuleFinding } from "@/lib/build/rules";
import { type SheetStation, sheetStations } from "@/lib/build/stations";
import type { CueDesign, CueRequest } from "@/lib/cue/design";
import { accept, type Caution, type Outcome } from "@/lib/numerics/outcome";
import type { Band, Estimate } from "@/lib/reference/estimate";
import type { GameId } from "@/lib/reference/rules";
import type { Advice } from "./advise";
import { workshopCautions } from "./cautions";
import type { Figure } from "./figure";
import type { FittingInput } from "./input";
import type { SearchReport } from "./search";

/**
 * What a saved revision holds: every number the job sheet prints, so that a sheet opened years later
 * is the sheet that was saved, whatever the models have become. Plain JSON.
 */
export interface SpecContent {
	readonly schemaVersion: 1;
	readonly modelVersion: string;
	readonly gameId: GameId;
	readonly input: FittingInput;
	readonly request: CueRequest;
	readonly figures: Readonly<
		Record<"length" | "mass" | "butt" | "tip" | "balance", Figure>
	>;
	readonly buttRangeMm: Band;
	readonly stations: readonly SheetStation[];
	readonly naturalMassG: Estimate;
	readonly naturalBalanceFromButtMm: Estimate;
	readonly addedWeight: Omit<AddedWeightPlan, "finished" | "cautions">;
	readonly parts: readonly {
		readonly part: string;
		readonly material: string;
		readonly massG: Estimate;
	}[];
	/** The finished cue, metal and all: the picture is drawn from it. */
	readonly design: CueDesign;
	readonly rules: readonly RuleFinding[];
	/** What the search said of this cue and its rivals; null for a cue that was not searched for. */
	readonly search: SearchReport | null;
	/** For the player and the coach. */
	readonly cautions: readonly Caution[];
	/** For the bench. */
	readonly workshopCautions: readonly Caution[];
}

/** Freezes an advice into a spec; refused while the build cannot be made or breaks a rule. */
export function specFrom(
	advice: Advice,
	search: SearchReport | null,
): Outcome<SpecContent> {
	const { plan } = advice.build;
	if (!plan.ok) return plan;
	const broken = advice.rules.filter(({ ok }) => !ok);
	if (broken.length > 0)
		return {
			ok: false,
			refusals: broken.map(({ rule, field, value, bound }) => ({
				code: "rule-broken",
				field,
				value,
				...bound,
				facts: { rule },
			})),
		};
	const { finished, cautions: planCautions, ...addedWeight } = plan.value;
	const { request, natural } = advice.build;
	const stations = sheetStations(finished, {});
	return accept({
		schemaVersion: 1,
		modelVersion: advice.modelVersion,
		gameId: advice.gameId,
		input: advice.input,
		request,
		figures: {
			length: advice.length,
			mass: advice.mass,
			butt: advice.butt.figure,
			tip: advice.tip,
			balance: advice.balance,
		},
		buttRangeMm: advice.butt.rangeMm,
		stations,
		naturalMassG: natural.massG,
		naturalBalanceFromButtMm: natural.balanceFromButtMm,
		addedWeight,
		parts: natural.parts.map(({ part, material, massG }) => ({
			part,
			material,
			massG,
		})),
		design: finished,
		rules: advice.rules,
		search,
		cautions: advice.cautions,
		workshopCautions: [
			...planCautions,
			...workshopCautions({
				request,
				metal: addedWeight.metalMassG > 0 ? addedWeight.metal : null,
			}),
		],
	});
}
