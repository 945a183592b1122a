import type { CueRequest } from "@/lib/cue/design";
import { TAPER_LIMITS } from "@/lib/cue/taper";
import { designFrom, TEMPLATE } from "@/lib/cue/template";
import { must } from "@/lib/numerics/outcome";
import { estimatePrice } from "@/lib/price/estimate";
import { GAMES } from "@/lib/reference/rules";
import { endMassOfDesignG } from "@/lib/shot/endmass";
import { tipTradeoff } from "@/lib/shot/tip";
import type { CriteriaInput, CriterionPart } from "./criteria-for";
import { atLeast, atMost } from "./desirability";
import { forgivenessShare } from "./forgiveness";
import {
	BENCH_ZONE,
	BUDGET_BUILD,
	PRICE_LIMIT_SHARE,
	TIP_ZONE_MM,
	USUAL_LAYOUT,
	USUAL_SHAFT,
} from "./judgement";

/** Shapes of what the cue does and costs, whatever the player's body. */

const judged = ["project-judgement"] as const;

/** From the game's usual tips by the model: their lowest deflection is ideal, well past their highest unacceptable. */
export function deflection({ needs, doctrine }: CriteriaInput): CriterionPart {
	const { gameId } = needs;
	const [slim, wide] = GAMES[gameId].usual.tipMm;
	const at = (tipDiameterMm: number) =>
		tipTradeoff({
			gameId,
			tipDiameterMm,
			domeRadiusMm: TEMPLATE.domeRadiusMm,
			endMassG: endMassOfDesignG(
				must(designFrom({ ...usualRequest(needs), tipDiameterMm })),
			),
		}).squirtDegAtHalf;
	const ideal = at(slim);
	const wideMm = Math.min(
		wide + TIP_ZONE_MM.deflection,
		TAPER_LIMITS.tipDiameterMm[1],
	);
	return {
		shape: atMost(ideal.value, at(wideMm).value),
		role: doctrine?.deflection === "no-matter" ? "left-out" : "counts",
		basis: "derived",
		sources: [...ideal.sources, "common-practice", ...judged],
		facts: { slimMm: slim, wideMm },
	};
}

/** A cue of usual length and butt for the game, whatever this player's: only its front matters here. */
function usualRequest({ gameId }: CriteriaInput["needs"]): CueRequest {
	const [low, high] = GAMES[gameId].usual.lengthMm;
	return {
		lengthMm: (low + high) / 2,
		buttDiameterMm: 29,
		tipDiameterMm: GAMES[gameId].usual.tipMm[0],
		taperShape: "even",
		shaftWood: USUAL_SHAFT[gameId],
		buttWood: "indian-rosewood",
		splice: "hand-four-point",
		layout: USUAL_LAYOUT[gameId],
		ferruleMetal: "brass",
	};
}

export function forgiveness({ needs }: CriteriaInput): CriterionPart {
	const level = needs.input.level ?? "club";
	const [slim, wide] = GAMES[needs.gameId].usual.tipMm;
	const ideal = forgivenessShare({ level, tipDiameterMm: wide });
	const limit = forgivenessShare({
		level,
		tipDiameterMm: slim - TIP_ZONE_MM.forgiveness,
	});
	const differs = ideal - limit > 0.005;
	return {
		shape: differs ? atLeast(ideal, limit) : { low: null, high: null },
		role: differs ? "counts" : "no-difference",
		basis: "derived",
		sources: ["alciatore-2-1", "alciatore-b1", "common-practice", ...judged],
		facts: { level, wideMm: wide, slimMm: slim - TIP_ZONE_MM.forgiveness },
	};
}

/** Metal only; the bore against the glued flats is a second measure of the same criterion. */
export const build = (): CriterionPart => ({
	shape: atMost(BENCH_ZONE.addedG.ideal, BENCH_ZONE.addedG.limit),
	role: "counts",
	basis: "assumed",
	sources: ["common-practice", ...judged],
	facts: {
		boreIdealMm: BENCH_ZONE.boreBeyondCoreMm.ideal,
		boreLimitMm: BENCH_ZONE.boreBeyondCoreMm.limit,
	},
});

export const finish = (): CriterionPart => ({
	shape: atLeast(4, -2),
	role: "counts",
	basis: "common-practice",
	sources: ["common-practice", ...judged],
	facts: { best: 4 },
});

/** Up to what the budget's own build costs is ideal; a budget without limit leaves price out. */
export function price(input: CriteriaInput): CriterionPart {
	const { needs, priceList, maxPriceMinor } = input;
	const { budget = "middle" } = needs.input;
	const { currency, minorPerUnit, basis: list } = priceList;
	const facts = { budget, currency, minorPerUnit, list };
	const part = {
		basis: priceList.basis === "workshop" ? "measured" : "assumed",
		sources: ["common-practice", ...judged],
	} as const;
	if (maxPriceMinor !== undefined)
		return {
			...part,
			shape: atMost(0.8 * maxPriceMinor, 1.1 * maxPriceMinor),
			role: "counts",
			facts: { ...facts, maxPriceMinor },
		};
	const own = ownPriceMinor(input, budget);
	if (own === null)
		return {
			...part,
			shape: { low: null, high: null },
			role: "no-difference",
			facts,
		};
	return {
		...part,
		shape: atMost(own, PRICE_LIMIT_SHARE * own),
		role: budget === "open" ? "left-out" : "counts",
		facts: { ...facts, tierMinor: own },
	};
}

/** Price of the budget's usual build, or of the nearest the workshop has a price for; null where it has none. */
function ownPriceMinor(
	{ needs, priceList, catalogue }: CriteriaInput,
	budget: keyof typeof BUDGET_BUILD,
): number | null {
	const tier = BUDGET_BUILD[budget];
	const usual = usualRequest(needs);
	const butts = [
		tier.buttWoods[budget === "low" ? 1 : 0],
		...tier.buttWoods,
		...catalogue.buttWoods.map(({ id }) => id),
	];
	for (const shaftWood of [usual.shaftWood, ...catalogue.shaftWoods])
		for (const buttWood of butts) {
			const priced = estimatePrice({
				list: priceList,
				request: { ...usual, shaftWood, buttWood, splice: tier.splice },
				hasAddedWeight: true,
			});
			if (priced.ok && priced.value.totalMinor > 0)
				return priced.value.totalMinor;
		}
	return null;
}

/** Pieces as long as the usual layout's are ideal, or those a case takes. */
export function carrying({
	needs,
	longestPieceMm,
}: CriteriaInput): CriterionPart {
	const lengthMm = needs.length.value;
	const usual =
		USUAL_LAYOUT[needs.gameId] === "centre" ? 0.5 * lengthMm : 0.7 * lengthMm;
	const ideal = longestPieceMm ?? 1.03 * usual;
	return {
		shape: atMost(ideal, Math.max(ideal * 1.02, 1.3 * lengthMm)),
		role: "counts",
		basis: longestPieceMm === undefined ? "common-practice" : "wish",
		sources: ["common-practice", ...judged],
		facts: { idealMm: ideal },
	};
}
