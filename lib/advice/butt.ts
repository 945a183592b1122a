import type { TaperShapeId } from "@/lib/cue/design";
import { growthCurve } from "@/lib/cue/taper";
import type { Caution } from "@/lib/numerics/outcome";
import { diameterForClosureMm, type GripCircle } from "@/lib/player/hand";
import type { Band } from "@/lib/reference/estimate";
import { fromPresentCue, fromUsualRange, wished } from "./evidence";
import { type Evidence, type Figure, figureFrom } from "./figure";
import type { ClosureWish, FittingInput } from "./input";
import {
	BUTT_LIMITS_MM,
	CLOSURE_TARGET_MM,
	CLOSURE_TOLERANCE_MM,
	COMPLAINT_STEP,
	FELT,
	HABIT_SD,
	STEP,
} from "./judgement";

export interface ButtAdvice {
	readonly figure: Figure;
	/** Butt diameters whose closure at the grip stays as wanted, within what the bench turns. */
	readonly rangeMm: Band;
	/** The same before the bench's limits. */
	readonly wantedRangeMm: Band;
	readonly closure: ClosureWish;
	/** Station of the middle of the grip hand, from the tip. */
	readonly gripStationMm: number;
	readonly cautions: readonly Caution[];
}

const clamp = (value: number, { min, max }: { min: number; max: number }) =>
	Math.min(max, Math.max(min, value));

/**
 * Butt diameter from the measured ring: the wanted closure gives the diameter at the grip hand, the
 * taper gives the butt end. The range is where the closure stays within its tolerance; mm.
 */
export function adviseButt({
	input,
	grip,
	lengthMm,
	gripFromButtMm,
	tipDiameterMm,
	taperShape,
}: {
	input: FittingInput;
	grip: GripCircle;
	lengthMm: number;
	gripFromButtMm: number;
	tipDiameterMm: number;
	taperShape: TaperShapeId;
}): ButtAdvice {
	const closure = input.wishes.closure ?? "touching";
	const gripStationMm = lengthMm - gripFromButtMm;
	// Along a taper shape the diameter at the hand is linear in the butt's, so a ring outside what the
	// bench turns still has its butt: the limits are applied to the figure, and said.
	const grown = growthCurve(taperShape).at(gripStationMm / lengthMm);
	const buttForClosure = (closureMm: number) =>
		tipDiameterMm +
		(diameterForClosureMm({ circleMm: grip.circleMm.value, closureMm }) -
			tipDiameterMm) /
			grown;
	const isRead = grip.readingCount > 0;
	const ring: Evidence = {
		code: isRead ? "ring-measured" : "ring-estimated",
		value: buttForClosure(CLOSURE_TARGET_MM[closure]),
		sd: grip.circleMm.sd / grown,
		basis: grip.circleMm.standing,
		sources: grip.circleMm.sources,
		facts: {
			circleMm: grip.circleMm.value,
			readingCount: grip.readingCount,
			closure,
			gripFromButtMm,
		},
	};
	const { presentCue } = input;
	const figure = figureFrom({
		evidence: [
			...wished(input, "buttDiameterMm"),
			ring,
			...(isRead
				? []
				: [
						fromUsualRange("usual-butt", [
							BUTT_LIMITS_MM.min,
							BUTT_LIMITS_MM.max,
						]),
					]),
			...fromPresentCue({
				cue: presentCue,
				value: presentCue.buttDiameterMm,
				liked: "butt",
				less: "too-thick",
				more: "too-slim",
				habitSd: HABIT_SD.buttDiameterMm,
				complaintStep: COMPLAINT_STEP.buttDiameterMm,
			}),
		],
		step: STEP.diameterMm,
		feltDifference: FELT.buttDiameterMm,
		limit: (value) => clamp(value, BUTT_LIMITS_MM),
	});
	const halfWidthMm = CLOSURE_TOLERANCE_MM / Math.PI / grown;
	const wantedRangeMm = {
		low: figure.exact - halfWidthMm,
		high: figure.exact + halfWidthMm,
	};
	const rangeMm = {
		low: clamp(wantedRangeMm.low, BUTT_LIMITS_MM),
		high: clamp(wantedRangeMm.high, BUTT_LIMITS_MM),
	};
	const cautions: Caution[] = [...grip.cautions];
	if (
		wantedRangeMm.low < BUTT_LIMITS_MM.min ||
		wantedRangeMm.high > BUTT_LIMITS_MM.max
	)
		cautions.push({
			code: "butt-range-cut-by-bench",
			facts: {
				lowMm: wantedRangeMm.low,
				highMm: wantedRangeMm.high,
				benchMinMm: BUTT_LIMITS_MM.min,
				benchMaxMm: BUTT_LIMITS_MM.max,
			},
		});
	return {
		figure,
		rangeMm,
		wantedRangeMm,
		closure,
		gripStationMm,
		cautions,
	};
}
