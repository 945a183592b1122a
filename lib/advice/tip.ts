import type { Game } from "@/lib/reference/rules";
import { fromPresentCue, fromUsualRange, wished } from "./evidence";
import { type Evidence, type Figure, figureFrom } from "./figure";
import type { FittingInput } from "./input";
import {
	COMPLAINT_STEP,
	FELT,
	HABIT_SD,
	LEVEL_TIP_SHIFT_MM,
	STEP,
} from "./judgement";

/** Tip diameter from the game's usual tips, the level and the present cue, or as wished; mm. */
export function adviseTip({
	input,
	game,
}: {
	input: FittingInput;
	game: Game;
}): Figure {
	const usual = fromUsualRange("usual-tip", game.usual.tipMm);
	const shiftMm =
		input.level === undefined ? 0 : LEVEL_TIP_SHIFT_MM[input.level];
	const prior: Evidence =
		shiftMm === 0
			? usual
			: {
					...usual,
					code: "usual-tip-for-level",
					value: usual.value + shiftMm,
					sources: ["common-practice", "project-judgement"],
					facts: { ...usual.facts, shiftMm },
				};
	return figureFrom({
		evidence: [
			...wished(input, "tipDiameterMm"),
			prior,
			...fromPresentCue({
				cue: input.presentCue,
				value: input.presentCue.tipDiameterMm,
				liked: "tip",
				less: "tip-too-big",
				more: "tip-too-small",
				habitSd: HABIT_SD.tipDiameterMm,
				complaintStep: COMPLAINT_STEP.tipDiameterMm,
			}),
		],
		step: STEP.diameterMm,
		feltDifference: FELT.tipDiameterMm,
		limit: (value) =>
			Math.min(value, game.tipMaxDiameterMm?.value ?? Number.POSITIVE_INFINITY),
	});
}
