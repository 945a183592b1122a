import type { Caution } from "@/lib/numerics/outcome";
import type { Body } from "@/lib/player/body";
import type { Estimate } from "@/lib/reference/estimate";
import { GAMES, type Game } from "@/lib/reference/rules";
import type { CueReach } from "@/lib/stance/reach";
import { fromEstimate, fromPresentCue, wished } from "./evidence";
import { type Evidence, type Figure, figureFrom } from "./figure";
import type { FittingInput } from "./input";
import {
	COMPLAINT_STEP,
	FELT,
	HABIT_SD,
	STEP,
	USUAL_LENGTH_SD_MM,
	USUAL_LENGTHS,
} from "./judgement";

const middle = ([low, high]: readonly [number, number]) => (low + high) / 2;

/** What players of that stature usually have, shifted where the game's usual cue is another. */
export function usualLength(statureMm: Estimate, game: Game): Evidence {
	const { at, slope } = usualLine(statureMm.value);
	const shiftMm =
		middle(game.usual.lengthMm) - middle(GAMES.snooker.usual.lengthMm);
	return {
		code: "usual-length",
		value: at + shiftMm,
		sd: Math.hypot(USUAL_LENGTH_SD_MM, slope * statureMm.sd),
		basis: "common-practice",
		sources: ["common-practice", "project-judgement"],
		facts: { statureMm: statureMm.value },
	};
}

/** The table's straight lines, its end pieces drawn on; value and slope. */
function usualLine(statureMm: number): { at: number; slope: number } {
	const last = USUAL_LENGTHS.length - 1;
	const next = USUAL_LENGTHS.findIndex(
		(row, i) => i > 0 && (statureMm <= row.statureMm || i === last),
	);
	const [from, to] = [USUAL_LENGTHS[next - 1], USUAL_LENGTHS[next]];
	if (from === undefined || to === undefined)
		throw new RangeError(`usualLine: statureMm ${statureMm}`);
	const slope = (to.lengthMm - from.lengthMm) / (to.statureMm - from.statureMm);
	return { at: from.lengthMm + slope * (statureMm - from.statureMm), slope };
}

/** Length from the stance model and the present cue, or as wished; mm. */
export function adviseLength({
	input,
	body,
	reach,
	game,
}: {
	input: FittingInput;
	body: Body;
	reach: CueReach;
	game: Game;
}): { figure: Figure; cautions: Caution[] } {
	const { presentCue } = input;
	const ruleMinMm = game.cueMinLengthMm?.value ?? 0;
	const figure = figureFrom({
		evidence: [
			...wished(input, "lengthMm"),
			fromEstimate("reach", reach.lengthMm, {
				bridgeToGripMm: reach.bridgeToGripMm.value,
				bridgeLengthMm: reach.bridgeLengthMm.value,
				gripFromButtMm: reach.gripFromButtMm.value,
			}),
			usualLength(body.statureMm, game),
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
