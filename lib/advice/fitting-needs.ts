import type { CueRequest } from "@/lib/cue/design";
import { growthCurve } from "@/lib/cue/taper";
import { accept, type Caution, type Outcome } from "@/lib/numerics/outcome";
import { type Body, bodyFrom } from "@/lib/player/body";
import { type GripCircle, gripCircleFrom } from "@/lib/player/hand";
import type { Estimate } from "@/lib/reference/estimate";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { GRIP_LIMITS_MM } from "@/lib/stance/assumptions";
import { type CueReach, reachFrom } from "@/lib/stance/reach";
import { adviseButt, type ButtAdvice } from "./butt";
import type { Figure } from "./figure";
import type { FittingInput } from "./input";
import { CLOSURE_TARGET_MM } from "./judgement";
import { adviseLength } from "./length";
import { adviseMass, type MassNeed } from "./mass";
import { adviseTip } from "./tip";

/** Where the grip hand comes to stand on a cue of some length. */
export interface HandPlace {
	/** Tip to the middle of the grip hand in the preferred stance. */
	readonly stationMm: Estimate;
	/** The hand stays this far from the butt end; past that the bridge gives. */
	readonly leastMm: number;
	readonly mostMm: number;
}

/** What body, stance, game, present cue and wishes ask of a cue, before any wood is asked. */
export interface FittingNeeds {
	readonly input: FittingInput;
	readonly gameId: GameId;
	readonly body: Body;
	readonly grip: GripCircle;
	readonly reach: CueReach;
	readonly length: Figure;
	readonly massNeed: MassNeed;
	readonly butt: ButtAdvice;
	readonly tip: Figure;
	readonly hand: HandPlace;
	/**
	 * The ring the butt is fitted to: the measured one, blended with what the present cue and usual butts
	 * say of it; never with a wish.
	 */
	readonly ringMm: Estimate;
	readonly cautions: readonly Caution[];
}

/** Middle of the grip hand to the butt end on a cue of that length, mm. */
export const handFromButtMm = (hand: HandPlace, lengthMm: number): number =>
	Math.min(
		hand.mostMm,
		Math.max(hand.leastMm, lengthMm - hand.stationMm.value),
	);

/** A cue that was picked: its shape moves what is asked of its butt and weight. */
export type PickedShape = Pick<
	CueRequest,
	"lengthMm" | "tipDiameterMm" | "taperShape"
>;

/** What player and stance decide whatever is wished for. */
export type Standing = Pick<FittingNeeds, "body" | "grip" | "reach">;

function standingOf(input: FittingInput): Outcome<Standing> {
	const body = bodyFrom(input.player);
	if (!body.ok) return body;
	const grip = gripCircleFrom({
		readingsMm: input.player.gripCircleReadingsMm ?? [],
		handLengthMm: body.value.handLengthMm,
	});
	if (!grip.ok) return grip;
	const reach = reachFrom({ body: body.value, answers: input.stance });
	if (!reach.ok) return reach;
	return accept({ body: body.value, grip: grip.value, reach: reach.value });
}

/**
 * The four figures and where the hand stands; butt and weight as needed on the cue picked, where one is.
 * Refuses what body, grip or stance refuse.
 */
export function needsFor(
	input: FittingInput,
	picked?: PickedShape,
): Outcome<FittingNeeds> {
	const standing = standingOf(input);
	return standing.ok
		? accept(needsOf(standing.value, input, picked))
		: standing;
}

/** The needs of a player and stance worked out before, with whatever wishes. */
export function needsOf(
	{ body, grip, reach }: Standing,
	input: FittingInput,
	picked?: PickedShape,
): FittingNeeds {
	const { gameId } = input.stance;
	const game = GAMES[gameId];
	const length = adviseLength({ input, body, reach, game });
	const tip = adviseTip({ input, game });
	const {
		lengthMm = length.figure.value,
		tipDiameterMm = tip.value,
		taperShape = input.wishes.taperShape ?? "even",
	} = picked ?? {};
	const forButt = {
		grip,
		lengthMm,
		gripFromButtMm: reach.gripFromButtMm.value,
		tipDiameterMm,
		taperShape,
	};
	const butt = adviseButt({ ...forButt, input });
	const { buttDiameterMm: _, ...otherWishes } = input.wishes;
	const unwished = adviseButt({
		...forButt,
		input: { ...input, wishes: otherWishes },
	}).figure;
	const grown = growthCurve(taperShape).at(butt.gripStationMm / lengthMm);
	const massNeed = adviseMass({
		input,
		body,
		game,
		lengthMm,
	});
	const { bridgeLengthMm, bridgeToGripMm, gripFromButtMm } = reach;
	return {
		input,
		gameId,
		body,
		grip,
		reach,
		length: length.figure,
		massNeed,
		butt,
		tip,
		hand: {
			stationMm: {
				value: bridgeLengthMm.value + bridgeToGripMm.value,
				sd: Math.hypot(bridgeLengthMm.sd, bridgeToGripMm.sd),
				standing: bridgeToGripMm.standing,
				sources: [
					...new Set([...bridgeLengthMm.sources, ...bridgeToGripMm.sources]),
				],
			},
			leastMm: Math.min(GRIP_LIMITS_MM.least, gripFromButtMm.value),
			mostMm: Math.max(GRIP_LIMITS_MM.most, gripFromButtMm.value),
		},
		ringMm: {
			...grip.circleMm,
			value:
				tipDiameterMm +
				(unwished.exact - tipDiameterMm) * grown -
				CLOSURE_TARGET_MM[butt.closure] / Math.PI,
			sd: unwished.sd * grown,
		},
		cautions: [
			...body.cautions,
			...reach.cautions,
			...length.cautions,
			...butt.cautions,
		],
	};
}
