import { accept, type Outcome, outside, refuse } from "@/lib/numerics/outcome";
import { rootBetween } from "@/lib/numerics/roots";
import type { CueDesign } from "./design";
import { taperCurve } from "./taper";

/**
 * Flat parallel rings of spacing t cut by the turned round. The ring normal leans by the tilt α from
 * square to the axis, towards the butt. On the front meridian r(z)·cos α + z·sin α counts the rings, on
 * the back −r(z)·cos α + z·sin α: each whole spacing is an arrow. Derived here, no published source.
 * On a straight taper of half-angle θ: spacing t/(cos α·tan θ ± sin α) along the axis.
 */
export interface Grain {
	/** Ring spacing square to the rings. */
	readonly ringSpacingMm: number;
	/** Lean of the rings against the axis, towards the butt on the front. */
	readonly tiltDeg: number;
	/** Where one ring's face stands on the axis at the tip, as a share of a spacing, 0 to 1. */
	readonly phaseShare?: number;
}

export type Face = "front" | "back";

export interface GrainArrow {
	readonly face: Face;
	readonly stationMm: number;
	/** Which way the V points. */
	readonly pointsTo: "tip" | "butt";
}

export interface FaceArrows {
	readonly arrows: readonly GrainArrow[];
	/** Mean distance along the axis; null with fewer than two. */
	readonly meanSpacingMm: number | null;
}

export interface GrainPicture {
	readonly front: FaceArrows;
	readonly back: FaceArrows;
	/** Arrows in the last part behind the ferrule, both faces. */
	readonly nearTip: readonly GrainArrow[];
	/** Least slope of the half-diameter over the shaft, as an angle: tilts beyond it turn arrows over. */
	readonly leastTaperDeg: number;
	readonly greatestTaperDeg: number;
}

export const GRAIN_LIMITS = {
	ringSpacingMm: [0.3, 15],
	tiltDeg: [-10, 10],
} as const;

/**
 * Arrows on both flat-sawn faces between two stations (default: behind the ferrule to the splice
 * points, or to the butt end where there is none). `nearTipMm` is the part looked at near the tip.
 * Refuses ring spacings outside 0.3–15 mm, tilts beyond 10°, and stations off the cue.
 */
export function grainArrows(p: {
	design: CueDesign;
	grain: Grain;
	fromStationMm?: number;
	toStationMm?: number;
	nearTipMm?: number;
}): Outcome<GrainPicture> {
	const { design, grain, nearTipMm = 150 } = p;
	const ferruleEndMm = design.tip.heightMm + design.ferrule.lengthMm;
	const fromMm = p.fromStationMm ?? ferruleEndMm;
	const toMm = p.toStationMm ?? shaftEndMm(design);
	const refusals = [
		outside(
			"grain.ringSpacingMm",
			grain.ringSpacingMm,
			...GRAIN_LIMITS.ringSpacingMm,
		),
		outside("grain.tiltDeg", grain.tiltDeg, ...GRAIN_LIMITS.tiltDeg),
		outside("grain.phaseShare", grain.phaseShare ?? 0, 0, 1),
		outside("fromStationMm", fromMm, 0, toMm),
		outside("toStationMm", toMm, fromMm, design.lengthMm),
		outside("nearTipMm", nearTipMm, 0, design.lengthMm),
	].filter((refusal) => refusal !== null);
	if (refusals.length > 0) return refuse(...refusals);
	const faces = (["front", "back"] as const).map((face) =>
		arrowsOn({ design, grain, face, fromMm, toMm }),
	);
	const [front = [], back = []] = faces;
	const slopes = slopesOf(design, fromMm, toMm);
	const degrees = (slope: number) => (Math.atan(slope) * 180) / Math.PI;
	return accept({
		front: faceOf(front),
		back: faceOf(back),
		nearTip: [...front, ...back]
			.filter((arrow) => arrow.stationMm <= ferruleEndMm + nearTipMm)
			.sort((a, b) => a.stationMm - b.stationMm),
		leastTaperDeg: degrees(Math.min(...slopes)),
		greatestTaperDeg: degrees(Math.max(...slopes)),
	});
}

function shaftEndMm(design: CueDesign): number {
	const { base, cuts } = design.splice;
	if (base.kind === "tenon") return base.joinStationMm;
	if (base.kind === "prongs") return base.pointStationMm;
	const curve = taperCurve(design.taper);
	let endMm = design.lengthMm;
	for (const cut of cuts) {
		const result = rootBetween({
			f: (stationMm) =>
				curve.at(stationMm) / 2 -
				cut.buttOffsetMm -
				(design.lengthMm - stationMm) *
					Math.tan((cut.angleDeg * Math.PI) / 180),
			from: 0,
			to: design.lengthMm,
			tolerance: 1e-6,
		});
		if (result.converged) endMm = Math.min(endMm, result.root);
	}
	return endMm;
}

const faceOf = (arrows: readonly GrainArrow[]): FaceArrows => {
	const first = arrows[0];
	const last = arrows[arrows.length - 1];
	return {
		arrows,
		meanSpacingMm:
			first && last && arrows.length > 1
				? (last.stationMm - first.stationMm) / (arrows.length - 1)
				: null,
	};
};

/** Samples fine enough that the ring count turns at most once between two of them. */
const STEPS = 400;

function arrowsOn(p: {
	design: CueDesign;
	grain: Grain;
	face: Face;
	fromMm: number;
	toMm: number;
}): readonly GrainArrow[] {
	const { design, grain, face, fromMm, toMm } = p;
	const curve = taperCurve(design.taper);
	const tilt = (grain.tiltDeg * Math.PI) / 180;
	const side = face === "front" ? 1 : -1;
	const phase = grain.phaseShare ?? 0;
	const rings = (stationMm: number) =>
		((side * curve.at(stationMm) * Math.cos(tilt)) / 2 +
			stationMm * Math.sin(tilt)) /
			grain.ringSpacingMm -
		phase;
	const arrows: GrainArrow[] = [];
	let before = fromMm;
	for (let i = 1; i <= STEPS; i++) {
		const after = fromMm + ((toMm - fromMm) * i) / STEPS;
		const low = Math.min(rings(before), rings(after));
		const high = Math.max(rings(before), rings(after));
		for (let ring = Math.ceil(low); ring < high; ring++) {
			const found = rootBetween({
				f: (stationMm) => rings(stationMm) - ring,
				from: before,
				to: after,
				tolerance: 1e-9,
			});
			if (!found.converged) continue;
			const stationMm = found.root;
			arrows.push({
				face,
				stationMm,
				pointsTo: pointing(curve.slopeAt(stationMm) / 2, tilt, side),
			});
		}
		before = after;
	}
	return arrows;
}

/**
 * The ring plane lies along the taper where tan α = −side·r′. Short of that the cut is a hyperbola whose
 * V points to the tip; past it the cut closes like an ellipse and the V turns over.
 */
function pointing(
	slope: number,
	tilt: number,
	side: number,
): GrainArrow["pointsTo"] {
	return slope + side * Math.tan(tilt) >= 0 ? "tip" : "butt";
}

function slopesOf(
	design: CueDesign,
	fromMm: number,
	toMm: number,
): readonly number[] {
	const curve = taperCurve(design.taper);
	return Array.from(
		{ length: STEPS + 1 },
		(_, i) => curve.slopeAt(fromMm + ((toMm - fromMm) * i) / STEPS) / 2,
	);
}

/**
 * Distance between arrows along the axis at a station, mm; Infinity where the rings lie along the
 * surface. Which way the V points is in `grainArrows`.
 */
export function arrowSpacingMm(p: {
	ringSpacingMm: number;
	taperDeg: number;
	tiltDeg: number;
	face: Face;
}): number {
	const taper = (p.taperDeg * Math.PI) / 180;
	const tilt = (p.tiltDeg * Math.PI) / 180;
	const side = p.face === "front" ? 1 : -1;
	const rate = Math.cos(tilt) * Math.tan(taper) + side * Math.sin(tilt);
	return p.ringSpacingMm / Math.abs(rate);
}

/** The ring spacing to look for in a billet for a wanted distance between arrows, mm. */
export function ringSpacingForMm(p: {
	arrowSpacingMm: number;
	taperDeg: number;
	tiltDeg: number;
	face: Face;
}): number {
	return p.arrowSpacingMm / arrowSpacingMm({ ...p, ringSpacingMm: 1 });
}

/**
 * The tilts, in degrees, at which the arrows of one face stand farther apart than `lengthMm`, so that
 * one at most falls on it: |sin(α ± θ)| ≤ t·cos θ/length. The other face then shows about twice as many.
 */
export function hidingTiltsDeg(p: {
	ringSpacingMm: number;
	taperDeg: number;
	lengthMm: number;
	face: Face;
}): { lowDeg: number; highDeg: number } {
	const taper = Math.tan((p.taperDeg * Math.PI) / 180);
	const reach = p.ringSpacingMm / p.lengthMm;
	const side = p.face === "front" ? -1 : 1;
	const size = Math.hypot(1, taper);
	const lean = Math.atan(taper);
	const half = Math.asin(Math.min(1, reach / size));
	const ends = [side * (lean - half), side * (lean + half)].map(
		(angle) => (angle * 180) / Math.PI,
	);
	return { lowDeg: Math.min(...ends), highDeg: Math.max(...ends) };
}

/**
 * Where a face's arrows stand for an eye above the cue after it is turned: sideways from the sight
 * line as a share of the radius, and whether they can be seen at all.
 */
export function arrowsSeenAt(turnDeg: number): {
	readonly front: { readonly sidewaysShare: number; readonly seen: boolean };
	readonly back: { readonly sidewaysShare: number; readonly seen: boolean };
} {
	const turn = (turnDeg * Math.PI) / 180;
	const side = Math.sin(turn);
	const up = Math.cos(turn);
	return {
		front: { sidewaysShare: side, seen: up > 0 },
		back: { sidewaysShare: -side, seen: up < 0 },
	};
}
