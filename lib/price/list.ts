import type { FerruleMetalId, LayoutId, SpliceId } from "@/lib/cue/design";
import type { WoodId } from "@/lib/reference/woods";

/**
 * A workshop's prices as data. Every amount is a whole number of the currency's minor unit (pence,
 * cents); `minorPerUnit` says how many make one unit.
 */
export interface PriceList {
	/** "invented" marks a list that no workshop has confirmed. */
	readonly basis: "invented" | "workshop";
	/** ISO 4217. */
	readonly currency: string;
	readonly minorPerUnit: number;
	/** Turning, tip, ferrule and finish of any cue. */
	readonly baseMinor: number;
	readonly spliceMinor: Readonly<Record<SpliceId, number>>;
	readonly layoutMinor: Readonly<Record<LayoutId, number>>;
	readonly shaftWoodMinor: Readonly<Partial<Record<WoodId, number>>>;
	readonly buttWoodMinor: Readonly<Partial<Record<WoodId, number>>>;
	/** On top of the base, for a ferrule that is not the usual one. */
	readonly ferruleMinor?: Readonly<Partial<Record<FerruleMetalId, number>>>;
	/** Boring, slug and plug where any weight is added. */
	readonly addedWeightMinor: number;
	/** Four more points between the first four. */
	readonly pointsBetweenMinor: number;
	readonly frontWedgeMinor: number;
	/** Each wedge of an all-round pattern. */
	readonly allRoundWedgeMinor: number;
	/** Each veneer on each set of flats. */
	readonly veneerMinor: number;
	/** A screw-in piece at the butt end. */
	readonly endPieceMinor: number;
	/** How far the bill usually ends from the estimate, as a share, either way. */
	readonly spreadFraction: number;
}

/**
 * Invented amounts. Their order is common practice of the trade, no source: hand splice over machine
 * over plain, ebony and blackwood over rosewood over walnut, each joint and decoration on top.
 */
export const INVENTED_PRICE_LIST: PriceList = {
	basis: "invented",
	currency: "GBP",
	minorPerUnit: 100,
	baseMinor: 14_000,
	spliceMinor: {
		plain: 0,
		"machine-four-point": 6_000,
		"hand-four-point": 16_000,
	},
	layoutMinor: { "one-piece": 0, "three-quarter": 6_500, centre: 6_000 },
	shaftWoodMinor: {
		"white-ash": 4_000,
		"european-ash": 4_000,
		"sugar-maple": 4_500,
		hornbeam: 5_000,
	},
	buttWoodMinor: {
		"white-ash": 1_000,
		"european-ash": 1_000,
		"sugar-maple": 1_000,
		hornbeam: 1_200,
		"black-walnut": 1_500,
		"european-walnut": 1_500,
		zebrano: 2_500,
		bubinga: 2_500,
		"african-padauk": 2_500,
		purpleheart: 2_500,
		olive: 3_500,
		bocote: 4_000,
		"indian-rosewood": 4_500,
		"burma-padauk": 4_500,
		"macassar-ebony": 8_000,
		"ceylon-ebony": 8_500,
		"gaboon-ebony": 9_000,
		cocobolo: 9_500,
		"african-blackwood": 9_500,
		snakewood: 16_000,
	},
	addedWeightMinor: 2_000,
	pointsBetweenMinor: 9_000,
	frontWedgeMinor: 3_000,
	allRoundWedgeMinor: 1_500,
	veneerMinor: 2_000,
	endPieceMinor: 4_000,
	spreadFraction: 0.1,
};
