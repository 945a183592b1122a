import { accept, type Outcome } from "@/lib/numerics/outcome";
import { type Body, bodyFrom } from "@/lib/player/body";
import { type GripCircle, gripCircleFrom } from "@/lib/player/hand";
import type { PlayerMeasures } from "@/lib/player/measures";
import {
	type CueReach,
	reachFrom,
	type StanceAnswers,
} from "@/lib/stance/reach";

export interface FitAnswer {
	readonly body: Body;
	readonly grip: GripCircle;
	readonly reach: CueReach;
}

/** Segments, ring and length window of one player. */
export function answerFit({
	player,
	stance,
}: {
	player: PlayerMeasures;
	stance: StanceAnswers;
}): Outcome<FitAnswer> {
	const body = bodyFrom(player);
	if (!body.ok) return body;
	const grip = gripCircleFrom({
		readingsMm: player.gripCircleReadingsMm ?? [],
		handLengthMm: body.value.handLengthMm,
	});
	if (!grip.ok) return grip;
	const reach = reachFrom({ body: body.value, answers: stance });
	if (!reach.ok) return reach;
	return accept({ body: body.value, grip: grip.value, reach: reach.value });
}
