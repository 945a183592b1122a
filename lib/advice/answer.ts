import {
	type AddedWeightPlan,
	planAddedWeight,
} from "@/lib/build/added-weight";
import { checkRules, type RuleFinding } from "@/lib/build/rules";
import { type SheetStation, sheetStations } from "@/lib/build/stations";
import type { CueDesign, CueRequest } from "@/lib/cue/design";
import { type CueMass, weighCue } from "@/lib/cue/mass";
import { designFrom } from "@/lib/cue/template";
import { accept, type Outcome } from "@/lib/numerics/outcome";
import { type Body, bodyFrom } from "@/lib/player/body";
import { type GripCircle, gripCircleFrom } from "@/lib/player/hand";
import type { PlayerMeasures } from "@/lib/player/measures";
import type { GameId } from "@/lib/reference/rules";
import {
	type CueReach,
	reachFrom,
	type StanceAnswers,
} from "@/lib/stance/reach";

/** The two halves of an advice on their own, as the open computation offers them. */

export interface CueAnswer {
	readonly design: CueDesign;
	readonly mass: CueMass;
	readonly plan: AddedWeightPlan | null;
	readonly stations: readonly SheetStation[];
	readonly rules: readonly RuleFinding[];
}

/** Weight, balance, stations and rules of one cue, with added weight where a mass is wanted. */
export function answerCue({
	cue,
	gameId,
	wantedMassG,
}: {
	cue: CueRequest;
	gameId: GameId;
	wantedMassG?: number;
}): Outcome<CueAnswer> {
	const design = designFrom(cue);
	if (!design.ok) return design;
	const mass = weighCue(design.value);
	if (wantedMassG === undefined)
		return accept({
			design: design.value,
			mass,
			plan: null,
			stations: sheetStations(design.value, {}),
			rules: checkRules(design.value, mass.massG.value, gameId),
		});
	const plan = planAddedWeight({ design: design.value, wantedMassG });
	if (!plan.ok) return plan;
	const { finished } = plan.value;
	return accept({
		design: finished,
		mass: weighCue(finished),
		plan: plan.value,
		stations: sheetStations(finished, {}),
		rules: checkRules(finished, wantedMassG, gameId),
	});
}

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
