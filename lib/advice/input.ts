import type { LayoutId, SpliceId, TaperShapeId } from "@/lib/cue/design";
import type { PlayerMeasures } from "@/lib/player/measures";
import type { WoodId } from "@/lib/reference/woods";
import type { StanceAnswers } from "@/lib/stance/reach";
import type { CriterionId, Doctrine } from "./criteria";
import type { WorkshopOffer } from "./workshop-offer";

/** How the pads of thumb and forefinger are wanted round the butt: a choice of style, not a constant. */
export type ClosureWish = "touching" | "small-gap" | "small-overlap";

/** How long and how well somebody plays; moves the tip and the width of the weight advice only. */
export type Level = "new" | "club" | "county";

/** What the build may cost, in words; decides woods and splice only where no wish does. */
export type Budget = "low" | "middle" | "open";

/** What a player says of the present cue. */
export type Complaint =
	| "too-long"
	| "too-short"
	| "too-heavy"
	| "too-light"
	| "too-thick"
	| "too-slim"
	| "tip-too-big"
	| "tip-too-small"
	| "front-heavy"
	| "butt-heavy";

/** What a player likes of the present cue: pulls that figure towards it. */
export type LikedPart = "length" | "weight" | "butt" | "tip" | "balance";

export interface PresentCue {
	readonly lengthMm?: number;
	readonly massG?: number;
	readonly buttDiameterMm?: number;
	readonly tipDiameterMm?: number;
	/** Gauge readings 300 and 700 mm from the butt end: with the butt, the three a taper is read from. */
	readonly diameterAt300Mm?: number;
	readonly diameterAt700Mm?: number;
	/** Balance point, measured from the butt end. */
	readonly balanceFromButtMm?: number;
	readonly likes?: readonly LikedPart[];
	readonly dislikes?: readonly Complaint[];
}

export interface Wishes {
	readonly lengthMm?: number;
	readonly massG?: number;
	readonly buttDiameterMm?: number;
	readonly tipDiameterMm?: number;
	readonly closure?: ClosureWish;
	readonly buttWood?: WoodId;
	readonly shaftWood?: WoodId;
	readonly splice?: SpliceId;
	readonly layout?: LayoutId;
	readonly taperShape?: TaperShapeId;
	readonly ferruleMetal?: "brass" | "stainless-steel";
}

/** The wishes that are figures. */
export const WISHED_FIGURES = [
	"lengthMm",
	"massG",
	"buttDiameterMm",
	"tipDiameterMm",
] as const satisfies readonly (keyof Wishes)[];
export type WishedFigure = (typeof WISHED_FIGURES)[number];

/** How well a wish is known that was taken from trials at the table: what stands of it only while the wish is `value`. */
export interface WishSpread {
	readonly value: number;
	/** One standard deviation, above 0, in the figure's unit. */
	readonly sd: number;
	readonly sessions: number;
	readonly shots: number;
}

/** What counts more or not at all for this customer, and ceilings beside the cue itself. */
export interface Priorities {
	readonly more?: readonly CriterionId[];
	readonly none?: readonly CriterionId[];
	readonly doctrine?: Doctrine;
	/** The longest piece the case takes. */
	readonly longestPieceMm?: number;
	/** In the price list's minor unit. */
	readonly maxPriceMinor?: number;
}

/** Everything a fitting may tell. Every answer may be missing: the models then estimate. */
export interface FittingInput {
	readonly player: PlayerMeasures;
	readonly stance: StanceAnswers;
	readonly hand?: "right" | "left";
	readonly level?: Level;
	readonly presentCue: PresentCue;
	readonly wishes: Wishes;
	/** Of the wishes that trials gave; the others are the customer's own word. */
	readonly wishSpread?: Readonly<Partial<Record<WishedFigure, WishSpread>>>;
	readonly budget?: Budget;
	readonly priorities?: Priorities;
	/** What the workshop makes, weighs and charges; an invented plain one where it is left out. */
	readonly workshop?: WorkshopOffer;
}
