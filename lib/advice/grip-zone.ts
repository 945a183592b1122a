import type { TaperShapeId } from "@/lib/cue/design";
import { growthCurve } from "@/lib/cue/taper";
import { closureMm, type GripCircle } from "@/lib/player/hand";
import type { Estimate } from "@/lib/reference/estimate";
import { GRIP_SLIDE_MM } from "./judgement";

/** How the light ring lies round the cue at one place of the grip zone. */
export interface GripPlace {
	readonly place: "back" | "usual" | "forward";
	readonly stationMm: number;
	readonly fromButtMm: number;
	readonly diameterMm: number;
	/** Arc between the pads: + gap, − overlap. Its sd is the ring's, π times over. */
	readonly closureMm: Estimate;
}

const SLIDES = [
	["back", GRIP_SLIDE_MM],
	["usual", 0],
	["forward", -GRIP_SLIDE_MM],
] as const;

/**
 * Closure as the hand slides along the butt: usual place and GRIP_SLIDE_MM to either side, the back
 * one no further than the butt end. Along a taper shape d(s) = tip + (butt − tip)·grown(s).
 */
export function gripZone(p: {
	grip: GripCircle;
	lengthMm: number;
	gripFromButtMm: number;
	tipDiameterMm: number;
	buttDiameterMm: number;
	taperShape: TaperShapeId;
}): readonly GripPlace[] {
	const { circleMm } = p.grip;
	const grown = growthCurve(p.taperShape);
	return SLIDES.map(([place, towardButtMm]) => {
		const fromButtMm = Math.max(0, p.gripFromButtMm - towardButtMm);
		const stationMm = p.lengthMm - fromButtMm;
		const diameterMm =
			p.tipDiameterMm +
			(p.buttDiameterMm - p.tipDiameterMm) * grown.at(stationMm / p.lengthMm);
		return {
			place,
			stationMm,
			fromButtMm,
			diameterMm,
			closureMm: {
				value: closureMm({ circleMm: circleMm.value, diameterMm }),
				sd: Math.PI * circleMm.sd,
				standing: circleMm.standing === "measured" ? "derived" : "assumed",
				sources: circleMm.sources,
			},
		};
	});
}
