import type { PresentCue as CueReading } from "@/lib/cue/present-reading";
import {
	accept,
	type Outcome,
	outside,
	type Refusal,
	refuse,
} from "@/lib/numerics/outcome";
import { priceListRefusals } from "@/lib/price/estimate";
import { INVENTED_PRICE_LIST, type PriceList } from "@/lib/price/list";
import type { WoodId } from "@/lib/reference/woods";
import { type Catalogue, checkedCatalogue, withWishes } from "./catalogue";
import {
	CompiledCriteria,
	CRITERION_IDS,
	type Criterion,
	type CriterionId,
	type Doctrine,
} from "./criteria";
import { criteriaFor } from "./criteria-for";
import type { Setting } from "./evaluate";
import { evaluator } from "./evaluator";
import { type Feel, feelFor, readingOf } from "./feel";
import { type FittingNeeds, needsFor, needsOf } from "./fitting-needs";
import type { FittingInput } from "./input";
import { type HardLimits, limitsFor } from "./limits";
import { offeringFrom } from "./offering";
import { type Refining, worthOf } from "./refine";
import { catalogueOf } from "./usual-build";

/** What a workshop and a user may set beside the fitting itself. */
export interface SearchChoices {
	/** Default: the fitting's workshop, else an invented plain one. */
	readonly catalogue?: Catalogue;
	readonly priceList?: PriceList;
	readonly weights?: Readonly<Partial<Record<CriterionId, number>>>;
	readonly doctrine?: Doctrine;
	/** The most it may cost: hard. */
	readonly maxPriceMinor?: number;
	/** The longest piece a case takes: hard. */
	readonly longestPieceMm?: number;
	/** Gauge readings of the present cue; otherwise an even taper between its tip and butt stands in. */
	readonly presentCueReading?: CueReading;
}

/** A weight beyond this drowns every other criterion. */
const MOST_WEIGHT = 100;

/** One fitting ready to be searched. */
export interface Prepared {
	readonly needs: FittingNeeds;
	readonly feel: Feel;
	readonly catalogue: Catalogue;
	readonly priceList: PriceList;
	readonly setting: Setting;
	readonly limits: HardLimits;
	readonly criteria: readonly Criterion[];
	readonly compiled: CompiledCriteria;
}

/**
 * Refuses what body, stance, catalogue and price list refuse, a usual build that cannot be made, weights
 * outside 0–100, a price list without what is offered, and "nothing-counts" where every criterion is given no weight.
 * `known` are stance and feel of the same fitting with other wishes: then nothing of them is worked out anew.
 */
export function prepare(
	input: FittingInput,
	choices: SearchChoices,
	known?: Pick<Prepared, "needs" | "feel">,
): Outcome<Prepared> {
	const needs = known ? accept(needsOf(known.needs, input)) : needsFor(input);
	if (!needs.ok) return needs;
	const { gameId } = needs.value;
	const offered = checkedCatalogue(
		choices.catalogue ?? catalogueOf(input, gameId),
	);
	if (!offered.ok) return offered;
	const priceList =
		choices.priceList ?? input.workshop?.priceList ?? INVENTED_PRICE_LIST;
	const flaws = priceListRefusals(priceList);
	if (flaws.length > 0) return refuse(...flaws);
	const unpriced = unpricedRefusals(
		withWishes(offered.value, input.wishes),
		priceList,
	);
	if (unpriced.length > 0) return refuse(...unpriced);
	const feel = known
		? accept(known.feel)
		: feelFor(needs.value, choices.presentCueReading ?? readingOf(needs.value));
	if (!feel.ok) return feel;
	const weights = weightRefusals(choices.weights ?? {});
	if (weights.length > 0) return refuse(...weights);
	const catalogue = withWishes(offered.value, input.wishes);
	const criteria = criteriaFor({
		...choices,
		needs: needs.value,
		feel: feel.value,
		catalogue,
		priceList,
	});
	if (criteria.every(({ weight }) => weight === 0))
		return refuse({ code: "nothing-counts", field: "weights", value: 0 });
	return accept({
		needs: needs.value,
		feel: feel.value,
		catalogue,
		priceList,
		setting: {
			gameId,
			level: input.level ?? "club",
			hand: needs.value.hand,
			ringMm: needs.value.ringMm.value,
			addedMetal: catalogue.addedMetal,
			densities: catalogue.densities ?? {},
			offering: offeringFrom({ catalogue: offered.value, priceList }),
		},
		limits: limitsFor({ ...choices, gameId, wishes: input.wishes }),
		criteria,
		compiled: new CompiledCriteria(criteria),
	});
}

/** A list that prices no shaft, or no butt, of what is offered; empty where something can be priced. */
function unpricedRefusals(
	{ shaftWoods, buttWoods }: Catalogue,
	list: PriceList,
): readonly Refusal[] {
	const unpriced = (
		field: "shaftWood" | "buttWood",
		woods: readonly WoodId[],
		amounts: PriceList["shaftWoodMinor"],
	): readonly Refusal[] =>
		woods.some((wood) => amounts[wood] !== undefined)
			? []
			: woods
					.slice(0, 1)
					.map((value) => ({ code: "not-in-price-list", field, value }));
	return [
		...unpriced("shaftWood", shaftWoods, list.shaftWoodMinor),
		...unpriced(
			"buttWood",
			buttWoods.map(({ id }) => id),
			list.buttWoodMinor,
		),
	];
}

const weightRefusals = (
	weights: NonNullable<SearchChoices["weights"]>,
): readonly Refusal[] =>
	CRITERION_IDS.flatMap((id) => {
		const weight = weights[id];
		return weight === undefined
			? []
			: (outside(`weights.${id}`, weight, 0, MOST_WEIGHT) ?? []);
	});

/** The same fitting judged by other criteria. */
export const judgedBy = (
	prepared: Prepared,
	criteria: readonly Criterion[],
): Prepared => ({
	...prepared,
	criteria,
	compiled: new CompiledCriteria(criteria),
});

export const refiningOf = (prepared: Prepared): Refining => ({
	evaluate: evaluator(prepared.setting),
	worth: worthOf(prepared.compiled),
	compiled: prepared.compiled,
	wishes: prepared.needs.input.wishes,
	catalogue: prepared.catalogue,
	limits: prepared.limits,
});
