import type { AddedWeightPlan } from "@/lib/build/added-weight";
import type { RuleFinding } from "@/lib/build/rules";
import type { CueRequest } from "@/lib/cue/design";
import { type Caution, must } from "@/lib/numerics/outcome";
import { estimatePrice, type PriceEstimate } from "@/lib/price/estimate";
import type { Band, Estimate } from "@/lib/reference/estimate";
import { AT, CRITERION_IDS, type CriterionId } from "./criteria";
import { type Draw, spreadsOf } from "./latent";
import type { Prepared } from "./prepare";
import { type ReferenceCue, referenceEvaluate } from "./reference-evaluate";
import type { Refined, Valued } from "./refine";
import { type Outlook, outlookOf } from "./uncertainty";

/** One criterion of one cue. */
export interface CriterionResult {
	readonly value: number;
	/** Central 90 % band of the measure as the cue will turn out. */
	readonly band: Band;
	/** 0–1; of a criterion that takes no part it is what it would be. */
	readonly desirability: number;
	/** What snapping to the bench's steps cost of it. */
	readonly snappingCost: number;
}

/** A cue the search puts forward, with everything a sheet needs. Plain JSON. */
export interface CueOption {
	readonly request: CueRequest;
	/** Null: the wood's own weight. */
	readonly wantedMassG: number | null;
	/** Null: the weight as far back as the bench usually puts it. */
	readonly wantedBalanceFromButtMm: number | null;
	readonly overall: number;
	/** Mean and central 90 % band of the worth over what is not known; both lie below the estimate. */
	readonly overallMean: number;
	readonly overallBand: Band;
	/** Share of the draws in which the wood lets the ordered weight be reached. */
	readonly weightReachedShare: number;
	readonly results: Readonly<Record<CriterionId, CriterionResult>>;
	/** Overall desirability between the steps less that on them. */
	readonly snappingCost: number;
	readonly betweenSteps: {
		readonly lengthMm: number;
		readonly massG: number;
		readonly buttDiameterMm: number;
		readonly tipDiameterMm: number;
	};
	readonly plan: Omit<AddedWeightPlan, "finished" | "cautions">;
	readonly naturalMassG: Estimate;
	readonly inertiaAboutGripKgM2: Estimate;
	readonly endMassG: Estimate;
	readonly giveMmPerN: Estimate;
	readonly price: PriceEstimate;
	readonly rules: readonly RuleFinding[];
	readonly cautions: readonly Caution[];
}

/** A cue worked out in full: what is told of it, and what comparisons need. */
export interface Worked {
	readonly option: CueOption;
	readonly refined: Refined;
	readonly valued: Valued;
	readonly reference: ReferenceCue;
	readonly outlook: Outlook;
}

/**
 * Works a refined cue out by the models one at a time, with bands over the draws. Null where the full
 * plan refuses what the tables allowed, which leaves the cue out.
 */
export function workOut(p: {
	prepared: Prepared;
	refined: Refined;
	draws: readonly Draw[];
}): Worked | null {
	const { prepared, refined, draws } = p;
	const { setting, compiled, needs, feel, priceList } = prepared;
	const { snapped, continuous } = refined;
	const { candidate } = snapped;
	const full = referenceEvaluate(candidate, setting);
	if (!full.ok) return null;
	const reference = full.value;
	const outlook = outlookOf(
		{
			valued: snapped,
			reference,
			setting,
			compiled,
			spreads: spreadsOf(needs, feel),
			priceSpreadFraction: priceList.spreadFraction,
		},
		draws,
	);
	const { finished, cautions, ...plan } = reference.plan;
	const { request, forwardMm } = candidate;
	const between = continuous.candidate.request;
	const option: CueOption = {
		request,
		wantedMassG: candidate.massG,
		wantedBalanceFromButtMm:
			forwardMm > 0 ? (reference.row[AT.balance] as number) : null,
		overall: snapped.overall,
		overallMean: outlook.overallMean,
		overallBand: outlook.overallBand,
		weightReachedShare: outlook.weightReachedShare,
		results: Object.fromEntries(
			CRITERION_IDS.map((id, i) => {
				const value = reference.row[i] as number;
				return [
					id,
					{
						value,
						band: outlook.bands[i] as Band,
						desirability: compiled.desirability(i, value),
						snappingCost: refined.snappingCostBy[i] as number,
					},
				];
			}),
		) as Record<CriterionId, CriterionResult>,
		snappingCost: refined.snappingCost,
		betweenSteps: {
			lengthMm: between.lengthMm,
			massG: continuous.measured.load.massG,
			buttDiameterMm: between.buttDiameterMm,
			tipDiameterMm: between.tipDiameterMm,
		},
		plan,
		naturalMassG: reference.natural.massG,
		inertiaAboutGripKgM2: reference.inertiaAboutGripKgM2,
		endMassG: reference.tipTradeoff.endMassG,
		giveMmPerN: reference.giveMmPerN,
		price: must(
			estimatePrice({
				list: priceList,
				request,
				hasAddedWeight: plan.metalMassG > 0,
			}),
		),
		rules: reference.rules,
		cautions,
	};
	return { option, refined, valued: snapped, reference, outlook };
}
