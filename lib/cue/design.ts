import type { Estimate } from "@/lib/reference/estimate";
import type { MetalId } from "@/lib/reference/metals";
import type { WoodId } from "@/lib/reference/woods";

/** The taper curve runs through these; stations from the tip crown, rising to the full length. */
export interface TaperPoint {
	readonly stationMm: number;
	readonly diameterMm: number;
}

/** Plain shapes; what they mean is in taper.ts. */
export type TaperShapeId =
	| "straight"
	| "even"
	| "slim-forward"
	| "full-forward";

export type LayoutId = "one-piece" | "three-quarter" | "centre";

export type SpliceId = "plain" | "hand-four-point" | "machine-four-point";

export type FerruleMetalId = "brass" | "stainless-steel";

export type MaterialId = WoodId | MetalId | "tip-leather" | "phenolic";

/** A workshop's own billet density. */
export interface BilletDensity {
	readonly kgM3: number;
	readonly sd: number;
}

export type BilletDensities = Readonly<Partial<Record<WoodId, BilletDensity>>>;

export interface CueRequest {
	readonly lengthMm: number;
	readonly buttDiameterMm: number;
	readonly tipDiameterMm: number;
	readonly taperShape: TaperShapeId;
	readonly shaftWood: WoodId;
	readonly buttWood: WoodId;
	readonly splice: SpliceId;
	readonly layout: LayoutId;
	readonly ferruleMetal: FerruleMetalId;
	readonly densities?: BilletDensities;
	/** Diameters at free stations between tip and butt, instead of the named shape. */
	readonly freeTaper?: readonly TaperPoint[];
	readonly splicing?: SplicingRequest;
	readonly fittings?: FittingsRequest;
}

/**
 * Where a flat is planed. Two of the three fix it, the third follows; one or none takes the
 * project's usual for the rest.
 */
export interface FlatRequest {
	/** Where the wedge comes to its point on the surface. */
	readonly pointFromButtMm?: number;
	/** Distance of the flat from the axis at the butt end: half the core that is left. */
	readonly coreHalfWidthMm?: number;
	/** The flat against the axis. */
	readonly planeAngleDeg?: number;
	/** Thin sheets glued on the flat before the wedge, innermost first. */
	readonly veneers?: readonly Veneer[];
}

export interface Veneer {
	readonly wood: WoodId;
	readonly thicknessMm: number;
}

/** How the butt is spliced, within what can be planed: see splicing.ts. */
export interface SplicingRequest {
	/** The hand splice's first four points: two pairs of flats, the second planed across the first. */
	readonly points?: FlatRequest;
	/** Four more points between the first, from two more pairs: an eight-point hand splice. */
	readonly pointsBetween?: FlatRequest & { readonly wood: WoodId };
	/** One decorative wedge on the front, glued last. */
	readonly frontWedge?: FlatRequest & {
		readonly wood: WoodId;
		/** Default 0, the front. */
		readonly faceAngleDeg?: number;
	};
	/** Equal wedges all round the butt. */
	readonly allRound?: FlatRequest & {
		readonly wood: WoodId;
		readonly count: number;
		/** Where the first stands; default half a turn between two. */
		readonly faceAngleDeg?: number;
	};
}

/** Parts a workshop may make otherwise than the project's usual. */
export interface FittingsRequest {
	readonly tipHeightMm?: number;
	readonly domeRadiusMm?: number;
	readonly ferruleLengthMm?: number;
	readonly ferruleWallMm?: number;
	/** Where a three-quarter or centre joint stands. */
	readonly jointFromButtMm?: number;
	readonly jointMetal?: MetalId;
	/** Length of a screw-in piece at the butt end, part of the full length; none by default. */
	readonly endPieceMm?: number;
	readonly buttEndRadiusMm?: number;
}

/** A leather tip, flat behind, spherical in front. The dome's crown is station 0. */
export interface Tip {
	readonly heightMm: number;
	readonly domeRadiusMm: number;
}

/** A metal sleeve behind the tip over a wooden tenon of the shaft. */
export interface Ferrule {
	readonly metal: FerruleMetalId;
	readonly lengthMm: number;
	readonly wallMm: number;
}

/**
 * One planed flat with wood glued on it. The flat is the plane n·(x, y) = offset, n pointing out at
 * `faceAngleDeg`; offset falls towards the butt at `angleDeg` to the axis and is `buttOffsetMm` at
 * the butt end. Everything outside the plane becomes `wood`. Later cuts replace earlier wood.
 */
export interface PlaneCut {
	readonly part: string;
	readonly wood: WoodId;
	readonly faceAngleDeg: number;
	readonly buttOffsetMm: number;
	readonly angleDeg: number;
}

/** What the wood is before any flat is planed. */
export type BaseWood =
	/** Shaft wood from end to end. */
	| { readonly kind: "through" }
	/** Butt wood behind `joinStationMm`, bored for a tenon of shaft wood. */
	| {
			readonly kind: "tenon";
			readonly joinStationMm: number;
			readonly tenonDiameterMm: number;
			readonly tenonLengthMm: number;
	  }
	/**
	 * Four butt prongs with their edges at 0°, 90°, 180° and 270° between four shaft prongs: the shaft
	 * wood is a cross of two strips along the diagonals, of half-width falling from R/√2 at
	 * `pointStationMm` (R the radius there) to nothing at `endStationMm`.
	 */
	| {
			readonly kind: "prongs";
			readonly pointStationMm: number;
			readonly endStationMm: number;
			/** Half-width of the strips where the butt prongs' points meet the surface. */
			readonly pointHalfWidthMm: number;
	  };

export interface Splice {
	readonly id: SpliceId;
	readonly base: BaseWood;
	/** In glue order. */
	readonly cuts: readonly PlaneCut[];
}

/** A metal joint: a solid pin along the axis and two full-width collars that meet at the station. */
export interface Joint {
	readonly stationMm: number;
	readonly metal: MetalId;
	readonly pinDiameterMm: number;
	/** How far the pin reaches into each piece. */
	readonly pinReachMm: number;
	/** Length of each collar. */
	readonly collarMm: number;
}

/** A metal cylinder on the axis; with `annulusInnerMm`, a ring that leaves what is inside it. */
export interface Slug {
	readonly fromStationMm: number;
	readonly toStationMm: number;
	readonly diameterMm: number;
	readonly metal: MetalId;
	readonly annulusInnerMm?: number;
}

/** A wooden plug on the axis that closes a bore. */
export interface Plug {
	readonly fromStationMm: number;
	readonly toStationMm: number;
	readonly diameterMm: number;
	readonly wood: WoodId;
}

/** The one geometric description: weight, bending, sheet and picture all come from it. */
export interface CueDesign {
	readonly lengthMm: number;
	readonly taper: readonly TaperPoint[];
	readonly tip: Tip;
	readonly ferrule: Ferrule;
	readonly shaftWood: WoodId;
	readonly buttWood: WoodId;
	readonly splice: Splice;
	readonly layout: LayoutId;
	readonly joint: Joint | null;
	/** The thread of a screw-in piece at the butt end. */
	readonly endJoint: Joint | null;
	readonly addedWeight: readonly Slug[];
	readonly plugs: readonly Plug[];
	/** Radius of the rounded edge at the butt end. */
	readonly buttEndRadiusMm: number;
	readonly densities: BilletDensities;
}

/** The density a design uses for a material, with what it rests on. */
export type DensityKgM3 = Estimate;
