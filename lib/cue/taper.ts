import { type Curve, monotoneCubic } from "@/lib/numerics/interpolation";
import { accept, type Outcome, outside, refuse } from "@/lib/numerics/outcome";
import { rememberLast } from "@/lib/numerics/remember-last";
import type { CueDesign, TaperPoint, TaperShapeId } from "./design";

/**
 * Named shapes: fraction of the growth from tip to butt that is reached at a fraction of the length.
 * straight: a cone. even: a little slimmer than the cone in the shaft. slim-forward: the shaft stays
 * slim longest and fills out towards the hand. full-forward: a shaft fuller than the cone.
 * Common practice of the trade in plain words; the numbers are this project's.
 */
export const TAPER_SHAPES: Readonly<
	Record<TaperShapeId, readonly (readonly [number, number])[]>
> = {
	straight: [
		[0, 0],
		[1, 1],
	],
	even: [
		[0, 0],
		[0.2, 0.13],
		[0.4, 0.3],
		[0.7, 0.64],
		[1, 1],
	],
	"slim-forward": [
		[0, 0],
		[0.2, 0.07],
		[0.4, 0.21],
		[0.7, 0.58],
		[1, 1],
	],
	"full-forward": [
		[0, 0],
		[0.2, 0.22],
		[0.4, 0.43],
		[0.7, 0.73],
		[1, 1],
	],
};

/** The limits the project builds within, mm. */
export const TAPER_LIMITS = {
	lengthMm: [700, 1700],
	buttDiameterMm: [22, 34],
	tipDiameterMm: [7, 14],
	/** The butt end is at least this much thicker than the tip. */
	minGrowthMm: 8,
} as const;

/** Points of a named shape between a tip and a butt diameter. */
export function taperPoints(p: {
	taperShape: TaperShapeId;
	tipDiameterMm: number;
	buttDiameterMm: number;
	lengthMm: number;
}): readonly TaperPoint[] {
	return TAPER_SHAPES[p.taperShape].map(([along, grown]) => ({
		stationMm: along * p.lengthMm,
		diameterMm: p.tipDiameterMm + grown * (p.buttDiameterMm - p.tipDiameterMm),
	}));
}

/** Diameter in mm over station in mm, monotone cubic through the taper points. */
export const taperCurve: (taper: readonly TaperPoint[]) => Curve = rememberLast(
	(taper: readonly TaperPoint[]) =>
		monotoneCubic(
			taper.map((point) => point.stationMm),
			taper.map((point) => point.diameterMm),
		),
);

/**
 * Diameter of the round taper in mm. The tip's dome and the rounded butt edge are left out: see
 * `outlineRadiusMm`. Throws RangeError outside 0–lengthMm.
 */
export function diameterAtMm(design: CueDesign, stationMm: number): number {
	return taperCurve(design.taper).at(stationMm);
}

/** Station where the tip's dome R − √(R² − r²) meets the taper; the taper hardly grows on the way. */
export function domeDepthMm(design: CueDesign): number {
	const { domeRadiusMm } = design.tip;
	let depthMm = 0;
	for (let step = 0; step < 6; step++) {
		const edgeMm = diameterAtMm(design, depthMm) / 2;
		depthMm =
			domeRadiusMm - Math.sqrt(domeRadiusMm * domeRadiusMm - edgeMm * edgeMm);
	}
	return depthMm;
}

/** Radius of the turned cue in mm, with the tip's dome and the rounded butt edge. */
export function outlineRadiusMm(design: CueDesign, stationMm: number): number {
	const radiusMm = diameterAtMm(design, stationMm) / 2;
	const { domeRadiusMm, heightMm } = design.tip;
	if (stationMm < heightMm) {
		const onDomeMm =
			stationMm < domeRadiusMm
				? Math.sqrt(stationMm * (2 * domeRadiusMm - stationMm))
				: domeRadiusMm;
		return Math.min(radiusMm, onDomeMm);
	}
	const edgeMm = design.buttEndRadiusMm;
	const intoEdgeMm = stationMm - (design.lengthMm - edgeMm);
	if (intoEdgeMm <= 0) return radiusMm;
	return (
		radiusMm -
		edgeMm +
		Math.sqrt(Math.max(0, edgeMm * edgeMm - intoEdgeMm * intoEdgeMm))
	);
}

/**
 * The butt-end diameter in mm that gives `diameterMm` at `stationMm`. The curve is the tip plus the
 * growth times a fixed function of station/length, so the answer is linear in the wanted diameter.
 * Refuses where the station is off the cue or in front of its first tenth, and where the answer is
 * outside what the project builds.
 */
export function buttDiameterForMm(p: {
	taperShape: TaperShapeId;
	tipDiameterMm: number;
	lengthMm: number;
	stationMm: number;
	diameterMm: number;
}): Outcome<number> {
	const [shortMm, longMm] = TAPER_LIMITS.lengthMm;
	const [slimMm, thickMm] = TAPER_LIMITS.tipDiameterMm;
	const refusals = [
		outside("lengthMm", p.lengthMm, shortMm, longMm),
		outside("tipDiameterMm", p.tipDiameterMm, slimMm, thickMm),
		outside("stationMm", p.stationMm, 0.1 * p.lengthMm, p.lengthMm),
		outside(
			"diameterMm",
			p.diameterMm,
			p.tipDiameterMm,
			TAPER_LIMITS.buttDiameterMm[1],
		),
	].filter((refusal) => refusal !== null);
	if (refusals.length > 0) return refuse(...refusals);
	const grown = growthCurve(p.taperShape).at(p.stationMm / p.lengthMm);
	const buttMm = p.tipDiameterMm + (p.diameterMm - p.tipDiameterMm) / grown;
	const [low, high] = TAPER_LIMITS.buttDiameterMm;
	const refusal = outside(
		"buttDiameterMm",
		buttMm,
		Math.max(low, p.tipDiameterMm + TAPER_LIMITS.minGrowthMm),
		high,
	);
	return refusal ? refuse(refusal) : accept(buttMm);
}

/** Fraction of the growth from tip to butt reached at a fraction of the length. */
export function growthCurve(taperShape: TaperShapeId): Curve {
	const shape = TAPER_SHAPES[taperShape];
	return monotoneCubic(
		shape.map(([along]) => along),
		shape.map(([, grown]) => grown),
	);
}
