import { GAMES } from "@/lib/reference/rules";
import type { StanceAnswers } from "./answers";
import {
	type Assumed,
	BRIDGE_AXIS_HEIGHT_MM,
	BRIDGE_ELBOW_DEG,
	BRIDGE_SHOULDER_RISE_DEG,
	BRIDGE_TO_CUSHION_MM,
	CHIN_ABOVE_CUE_MM,
	CUE_OVER_CUSHION_MM,
	CUSHION_HEIGHT_MM,
	FOREARM_TILT_DEG,
	GLASSES_CHIN_MM,
	GRIP_SHOULDER_RISE_DEG,
	HEAD_INCLINATION_DEG,
	LEG_DROP_RATIO,
	NECK_EXTENSION_MAX_DEG,
	NECK_LEAN_DEG,
	SEAT_HEIGHT_MM,
	SHOULDER_YAW_DEG,
	TRUNK_HEADING_DEG,
	TRUNK_MAX_DEG,
	USUAL_CUE_PULL,
	USUAL_POSTURE,
} from "./assumptions";
import type { Situation, StyleValues } from "./linkage";
import { degrees } from "./vector";

export type Style = Readonly<Record<keyof StyleValues, Assumed>>;

/** How far the usual cue pulls a player of that stature, −1 (small) to 1 (tall). */
export const usualCuePull = (statureMm: number): number =>
	Math.tanh(
		(statureMm - USUAL_CUE_PULL.referenceStatureMm) / USUAL_CUE_PULL.scaleMm,
	);

/** Typical style and its spread for what was answered. */
export function styleOf(answers: StanceAnswers, statureMm: number): Style {
	const posture = answers.posture ?? USUAL_POSTURE[answers.gameId];
	const chin = CHIN_ABOVE_CUE_MM[posture];
	const elbow = BRIDGE_ELBOW_DEG[answers.bridgeArm ?? "unsaid"];
	return {
		yawDeg: answers.seated
			? SHOULDER_YAW_DEG.seated
			: SHOULDER_YAW_DEG[answers.stance ?? "unsaid"],
		bridgeElbowDeg: answers.bridgeArm
			? elbow
			: {
					value:
						elbow.value + USUAL_CUE_PULL.elbowDegPerT * usualCuePull(statureMm),
					sd: elbow.sd,
				},
		chinAboveCueMm: {
			value: chin.value + (answers.glasses ? GLASSES_CHIN_MM : 0),
			sd: chin.sd,
		},
		headInclinationDeg:
			HEAD_INCLINATION_DEG[answers.glasses ? "glasses" : "plain"],
		gripShoulderRiseDeg: GRIP_SHOULDER_RISE_DEG,
		bridgeShoulderRiseDeg: BRIDGE_SHOULDER_RISE_DEG,
		trunkHeadingDeg: TRUNK_HEADING_DEG,
		neckLeanDeg: NECK_LEAN_DEG,
		forearmTiltDeg: FOREARM_TILT_DEG,
		legDropRatio: LEG_DROP_RATIO,
		elevationDeg: elevation(),
		bridgeAxisHeightMm: BRIDGE_AXIS_HEIGHT_MM,
		seatHeightMm: answers.seated ? SEAT_HEIGHT_MM : { value: 0, sd: 0 },
	};
}

/** Slope that carries the cue over the cushion behind the bridge hand, deg. */
function elevation(): Assumed {
	const riseMm =
		CUSHION_HEIGHT_MM + CUE_OVER_CUSHION_MM - BRIDGE_AXIS_HEIGHT_MM.value;
	const { value, sd } = BRIDGE_TO_CUSHION_MM;
	return {
		value: degrees(Math.atan2(riseMm, value)),
		sd: degrees((riseMm * sd) / (value ** 2 + riseMm ** 2)),
	};
}

/** Middle of the height the rules of the game allow, cloth above the floor, mm. */
export function clothHeightMm(gameId: StanceAnswers["gameId"]): number {
	const { minMm, maxMm, of } = GAMES[gameId].tableHeight;
	const middle = (minMm + maxMm) / 2;
	return of === "bed" ? middle : middle - CUSHION_HEIGHT_MM;
}

/** Surroundings and limits for what was answered, without a step. */
export function situationOf(answers: StanceAnswers): Situation {
	const support = answers.seated
		? "seated"
		: answers.standingFrame
			? "frame"
			: "standing";
	return {
		clothHeightMm: answers.clothHeightMm ?? clothHeightMm(answers.gameId),
		support,
		stepMm: 0,
		trunkMaxDeg: Math.min(
			TRUNK_MAX_DEG[support],
			answers.trunkMaxDeg ?? Number.POSITIVE_INFINITY,
		),
		neckExtensionMaxDeg: Math.min(
			NECK_EXTENSION_MAX_DEG,
			answers.neckExtensionMaxDeg ?? Number.POSITIVE_INFINITY,
		),
	};
}

export const valuesOf = (style: Style): StyleValues =>
	Object.fromEntries(
		Object.entries(style).map(([name, { value }]) => [name, value]),
	) as unknown as StyleValues;

/** Bridge arm's limit, if the player named one: the elbow opens no further. */
export function limitedElbow(
	style: Style,
	bridgeElbowMaxDeg: number | undefined,
): Style {
	const { value, sd } = style.bridgeElbowDeg;
	return bridgeElbowMaxDeg === undefined || value <= bridgeElbowMaxDeg
		? style
		: { ...style, bridgeElbowDeg: { value: bridgeElbowMaxDeg, sd: sd / 2 } };
}
