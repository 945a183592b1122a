import type { AddedWeightPlan } from "@/lib/build/added-weight";
import { checkRules, type RuleFinding } from "@/lib/build/rules";
import { type SheetStation, sheetStations } from "@/lib/build/stations";
import type { CueDesign, CueRequest } from "@/lib/cue/design";
import { accept, type Caution, type Outcome } from "@/lib/numerics/outcome";
import type { Estimate } from "@/lib/reference/estimate";
import type { GameId } from "@/lib/reference/rules";
import type { Build } from "./build";
import { workshopCautions } from "./cautions";

/** Every number of a build that a bench works to, as it stood when it was frozen. Plain JSON. */
export interface FrozenBuild {
	readonly gameId: GameId;
	readonly request: CueRequest;
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
	/** For the bench. */
	readonly workshopCautions: readonly Caution[];
}

/**
 * Freezes a build of a finished mass. Refused where the weight cannot be had, with the plan's own
 * refusals, and where a rule of the game is broken: "rule-broken" for each.
 */
export function freezeBuild({
	build: { request, natural, plan },
	massG,
	gameId,
}: {
	build: Pick<Build, "request" | "natural" | "plan">;
	massG: number;
	gameId: GameId;
}): Outcome<FrozenBuild> {
	if (!plan.ok) return plan;
	const { finished, cautions: planCautions, ...addedWeight } = plan.value;
	const rules = checkRules(finished, massG, gameId);
	const broken = rules.filter(({ ok }) => !ok);
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
	return accept({
		gameId,
		request,
		stations: sheetStations(finished, {}),
		naturalMassG: natural.massG,
		naturalBalanceFromButtMm: natural.balanceFromButtMm,
		addedWeight,
		parts: natural.parts.map(({ part, material, massG: partG }) => ({
			part,
			material,
			massG: partG,
		})),
		design: finished,
		rules,
		workshopCautions: [
			...planCautions,
			...workshopCautions({
				request,
				metal: addedWeight.metalMassG > 0 ? addedWeight.metal : null,
			}),
		],
	});
}
