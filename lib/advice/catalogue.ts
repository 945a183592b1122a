import type {
	BilletDensities,
	LayoutId,
	SpliceId,
	TaperShapeId,
} from "@/lib/cue/design";
import { TAPER_LIMITS } from "@/lib/cue/taper";
import {
	accept,
	type Outcome,
	outside,
	type Refusal,
	refuse,
} from "@/lib/numerics/outcome";
import type { MetalId } from "@/lib/reference/metals";
import type { GameId } from "@/lib/reference/rules";
import { WOODS, type WoodId } from "@/lib/reference/woods";
import type { Wishes } from "./input";
import { BUTT_LIMITS_MM, USUAL_LAYOUT, USUAL_SHAFT } from "./judgement";

type Range = readonly [number, number];

/** Something a workshop offers, with how it ranks in looks and hand work: 0 plain, 1 better, 2 best. */
export interface Offer<Id> {
	readonly id: Id;
	readonly tier: 0 | 1 | 2;
}

/** What a workshop makes, within what the project can compute. First of a kind is its usual. */
export interface Catalogue {
	readonly basis: "invented" | "workshop";
	readonly shaftWoods: readonly WoodId[];
	readonly buttWoods: readonly Offer<WoodId>[];
	readonly splices: readonly Offer<SpliceId>[];
	readonly layouts: readonly LayoutId[];
	readonly taperShapes: readonly TaperShapeId[];
	readonly addedMetal: MetalId;
	readonly lengthMm: Range;
	readonly buttDiameterMm: Range;
	readonly tipDiameterMm: Range;
	/** Billets that were weighed. */
	readonly densities?: BilletDensities;
}

/** Layouts offered for a game, the usual one first. Common practice, no source. */
const LAYOUTS: Readonly<Record<GameId, readonly LayoutId[]>> = {
	snooker: ["three-quarter", "one-piece"],
	"english-eight-ball": ["three-quarter", "one-piece"],
	"american-pool": ["centre", "three-quarter"],
	carom: ["centre", "three-quarter"],
};

/** A plain workshop's offer, invented; tiers after common practice: ebony over rosewood, hand over machine. */
export function inventedCatalogue(gameId: GameId): Catalogue {
	return {
		basis: "invented",
		shaftWoods: [USUAL_SHAFT[gameId]],
		buttWoods: [
			{ id: "indian-rosewood", tier: 1 },
			{ id: "gaboon-ebony", tier: 2 },
			{ id: "macassar-ebony", tier: 2 },
			{ id: "black-walnut", tier: 0 },
		],
		splices: [
			{ id: "hand-four-point", tier: 2 },
			{ id: "machine-four-point", tier: 1 },
			{ id: "plain", tier: 0 },
		],
		layouts: [
			USUAL_LAYOUT[gameId],
			...LAYOUTS[gameId].filter((one) => one !== USUAL_LAYOUT[gameId]),
		],
		taperShapes: ["even", "slim-forward", "straight", "full-forward"],
		addedMetal: "brass",
		lengthMm: TAPER_LIMITS.lengthMm,
		buttDiameterMm: [BUTT_LIMITS_MM.min, BUTT_LIMITS_MM.max],
		tipDiameterMm: TAPER_LIMITS.tipDiameterMm,
	};
}

/**
 * A catalogue cut down to what the customer fixed. What was wished for is taken up as it is, a figure
 * outside the workshop's usual range too; a wood or splice it does not rank gets tier 1.
 */
export function withWishes(catalogue: Catalogue, wishes: Wishes): Catalogue {
	const only = <Id>(offers: readonly Offer<Id>[], id: Id | undefined) =>
		id === undefined
			? offers
			: [offers.find((offer) => offer.id === id) ?? { id, tier: 1 as const }];
	const one = <Id>(all: readonly Id[], id: Id | undefined): readonly Id[] =>
		id === undefined ? all : [id];
	const reaching = (range: Range, wish: number | undefined): Range =>
		wish === undefined
			? range
			: [Math.min(range[0], wish), Math.max(range[1], wish)];
	return {
		...catalogue,
		lengthMm: reaching(catalogue.lengthMm, wishes.lengthMm),
		buttDiameterMm: reaching(catalogue.buttDiameterMm, wishes.buttDiameterMm),
		tipDiameterMm: reaching(catalogue.tipDiameterMm, wishes.tipDiameterMm),
		shaftWoods: one(catalogue.shaftWoods, wishes.shaftWood),
		buttWoods: only(catalogue.buttWoods, wishes.buttWood),
		splices: only(catalogue.splices, wishes.splice),
		layouts: one(catalogue.layouts, wishes.layout),
		taperShapes: one(catalogue.taperShapes, wishes.taperShape),
	};
}

/** Refuses a catalogue that offers nothing of a kind, a wood not used for that part, or crossed limits. */
export function checkedCatalogue(catalogue: Catalogue): Outcome<Catalogue> {
	const refusals: Refusal[] = [];
	for (const kind of [
		"shaftWoods",
		"buttWoods",
		"splices",
		"layouts",
		"taperShapes",
	] as const)
		if (catalogue[kind].length === 0)
			refusals.push({
				code: "nothing-offered",
				field: `catalogue.${kind}`,
				value: 0,
				min: 1,
			});
	for (const wood of catalogue.shaftWoods)
		if (!WOODS[wood].uses.includes("shaft"))
			refusals.push(notForPart("shaft", wood));
	for (const { id } of catalogue.buttWoods)
		if (!WOODS[id].uses.includes("butt")) refusals.push(notForPart("butt", id));
	for (const name of ["lengthMm", "buttDiameterMm", "tipDiameterMm"] as const) {
		const [low, high] = catalogue[name];
		const [least, most] = TAPER_LIMITS[name];
		const refusal =
			outside(`catalogue.${name}.0`, low, least, high) ??
			outside(`catalogue.${name}.1`, high, low, most);
		if (refusal) refusals.push(refusal);
	}
	return refusals.length > 0 ? refuse(...refusals) : accept(catalogue);
}

const notForPart = (part: "shaft" | "butt", wood: WoodId): Refusal => ({
	code: "wood-not-for-part",
	field: `catalogue.${part}Woods`,
	value: wood,
	facts: { part },
});
