import type { Body } from "@/lib/player/body";
import type { Game } from "@/lib/reference/rules";

import {
	bestMassAtEqualEffortG,
	equalEffortSpeedFraction,
	feltArmMassG,
} from "@/lib/shot/effort";
import { fromPresentCue, fromUsualRange, wished } from "./evidence";
import { type Figure, figureFrom } from "./figure";
import type { FittingInput } from "./input";
import {
	BODY_MASS_INDEX,
	COMPLAINT_STEP,
	EQUAL_EFFORT_SD_G,
	FELT,
	HABIT_SD,
	STEP,
} from "./judgement";

const MM_PER_M = 1000;

/** Body mass that stands in for the question nobody likes to answer: an assumed body-mass index, kg. */
export function assumedBodyMassKg(body: Body): number {
	const index = body.isChildModel
		? BODY_MASS_INDEX.child
		: BODY_MASS_INDEX.adult;
	return index * (body.statureMm.value / MM_PER_M) ** 2;
}

export interface MassNeed {
	readonly figure: Figure;
	readonly equalEffortBestG: number;
	readonly armMassG: number;
	/** Ball speed at the advised mass as a fraction of the best at equal effort. */
	readonly speedFraction: number;
}

/**
 * Weight wanted before the wood is asked: usual weights of the game scaled to the cue's length, the
 * equal-effort optimum, the present cue, or the wish; g.
 */
export function adviseMass({
	input,
	body,
	game,
	lengthMm,
}: {
	input: FittingInput;
	body: Body;
	game: Game;
	lengthMm: number;
}): MassNeed {
	const ballMassG = game.cueBall.massG.value;
	const armMassG = feltArmMassG({
		bodyMassKg: assumedBodyMassKg(body),
		sex: input.player.sex,
	}).value;
	const equalEffortBestG = bestMassAtEqualEffortG({ ballMassG, armMassG });
	const [usualLow, usualHigh] = game.usual.massG;
	const usualLengthMm = (game.usual.lengthMm[0] + game.usual.lengthMm[1]) / 2;
	// Usual weights are those of usual lengths; a shorter cue of the same build is lighter in proportion.
	const scale = Math.min(1, lengthMm / usualLengthMm);
	const figure = figureFrom({
		evidence: [
			...wished(input, "massG"),
			fromUsualRange("usual-mass", [usualLow * scale, usualHigh * scale]),
			{
				code: "equal-effort",
				value: equalEffortBestG,
				sd: EQUAL_EFFORT_SD_G,
				basis: "derived",
				sources: ["shepard-1997", "de-leva-1996", "project-judgement"],
				facts: { ballMassG, armMassG },
			},
			...fromPresentCue({
				cue: input.presentCue,
				value: input.presentCue.massG,
				liked: "weight",
				less: "too-heavy",
				more: "too-light",
				habitSd: HABIT_SD.massG,
				complaintStep: COMPLAINT_STEP.massG,
			}),
		],
		step: STEP.massG,
		feltDifference: FELT.massG,
		limit: (value) =>
			Math.min(value, game.cueMaxMassG?.value ?? Number.POSITIVE_INFINITY),
	});
	return {
		figure,
		equalEffortBestG,
		armMassG,
		speedFraction: equalEffortSpeedFraction({
			cueMassG: figure.value,
			ballMassG,
			armMassG,
		}),
	};
}
