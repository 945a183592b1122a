import type { Caution } from "@/lib/numerics/outcome";
import type { Game } from "@/lib/reference/rules";
import type { CueReach } from "@/lib/stance/reach";
import { fromEstimate, fromPresentCue, wished } from "./evidence";
import { type Figure, figureFrom } from "./figure";
import type { FittingInput } from "./input";
import { COMPLAINT_STEP, FELT, HABIT_SD, STEP } from "./judgement";

/** Length from the stance model and the present cue, or as wished; mm. */
export function adviseLength({
	input,
	reach,
	game,
}: {
	input: FittingInput;
	reach: CueReach;
	game: Game;
}): { figure: Figure; cautions: Caution[] } {
	const { presentCue, wishes } = input;
	const ruleMinMm = game.cueMinLengthMm?.value ?? 0;
	const figure = figureFrom({
		evidence: [
			...wished(wishes.lengthMm),
			fromEstimate("reach", reach.lengthMm, {
				bridgeToGripMm: reach.bridgeToGripMm.value,
				bridgeLengthMm: reach.bridgeLengthMm.value,
				gripFromButtMm: reach.gripFromButtMm.value,
			}),
			...fromPresentCue({
				cue: presentCue,
				value: presentCue.lengthMm,
				liked: "length",
				less: "too-long",
				more: "too-short",
				habitSd: HABIT_SD.lengthMm,
				complaintStep: COMPLAINT_STEP.lengthMm,
			}),
		],
		step: STEP.lengthMm,
		feltDifference: FELT.lengthMm,
		limit: (value) =>
			Math.max(value, Math.ceil(ruleMinMm / STEP.lengthMm) * STEP.lengthMm),
	});
	const cautions: Caution[] = [];
	if (figure.basis !== "wish" && figure.exact < ruleMinMm)
		cautions.push({
			code: "length-raised-to-rule",
			facts: { wantedMm: figure.exact, ruleMinMm, gameId: game.id },
		});
	const { low, high } = reach.lengthWindowMm;
	if (figure.value < low || figure.value > high)
		cautions.push({
			code: "length-outside-window",
			facts: { lengthMm: figure.value, lowMm: low, highMm: high },
		});
	return { figure, cautions };
}
