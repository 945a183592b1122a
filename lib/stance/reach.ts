import {
	accept,
	type Caution,
	type Outcome,
	refuse,
} from "@/lib/numerics/outcome";
import type { Body } from "@/lib/player/body";
import { BODY_LENGTHS } from "@/lib/player/populations";
import type { CitationId } from "@/lib/reference/citations";
import type { Band, Estimate } from "@/lib/reference/estimate";
import { GAMES } from "@/lib/reference/rules";
import { ANSWER_SD_MM, answerRefusals, type StanceAnswers } from "./answers";
import {
	BRIDGE_AXIS_HEIGHT_MM,
	BRIDGE_BEYOND_GRIP_SHARE,
	BRIDGE_ELBOW_DEG,
	BRIDGE_LENGTH_MM,
	BRIDGE_SLACK_MM,
	CHIN_ABOVE_CUE_MM,
	CUE_ELEVATION_DEG,
	CUSHION_HEIGHT_MM,
	FOREARM_LINK_SHARE,
	GRIP_FROM_BUTT_MM,
	GRIP_LIMITS_MM,
	SEAT_HEIGHT_MM,
	SEATED_SHOULDER_SHARE,
	SHOULDER_ABOVE_CHIN_SHARE,
	SHOULDER_YAW_DEG,
	SPAN_MODEL_SD_MM,
	UPPER_ARM_LINK_SHARE,
	USUAL_CUE_PULL,
	USUAL_POSTURE,
} from "./assumptions";
import { type SpanSolution, spanFrom } from "./span";

export type { StanceAnswers } from "./answers";

export interface CueReach {
	readonly bridgeToGripMm: Estimate;
	/** Tip to bridge hand at address. */
	readonly bridgeLengthMm: Estimate;
	/** Middle of the grip hand to butt end at the preferred length. */
	readonly gripFromButtMm: Estimate;
	/** Preferred length. */
	readonly lengthMm: Estimate;
	/** Lengths that keep bridge and overhang within what is usual, round the central span. */
	readonly lengthWindowMm: Band;
	readonly cautions: readonly Caution[];
}

/**
 * Preferred cue length and its window from a body and a stance. A measured span, bridge length or
 * grip point replaces its prediction. Errors: body covariance, style spread and the model's own sd
 * carried by central differences. Style figures: assumptions.ts, calibrated to common practice.
 */
export function reachFrom(p: {
	body: Body;
	answers: StanceAnswers;
}): Outcome<CueReach> {
	const { body, answers } = p;
	const refusals = answerRefusals(answers);
	if (refusals.length > 0) return refuse(...refusals);

	const lengths = BODY_LENGTHS.map((name) => body[name].value);
	const style = styleOf(answers, body.statureMm.value);
	const central = solve(lengths, style, answers);
	if (central === null)
		return refuse({
			code: "bridge-out-of-reach",
			field: "answers.gameId",
			value: answers.gameId,
			facts: { statureMm: body.statureMm.value },
		});

	const spanVariance =
		SPAN_MODEL_SD_MM ** 2 +
		bodyVariance(body, lengths, style, answers) +
		styleVariance(lengths, style, answers);
	const measuredSpan = answers.bridgeToGripMm;
	const bridgeToGripMm: Estimate =
		measuredSpan !== undefined
			? reading(measuredSpan, ANSWER_SD_MM.bridgeToGripMm)
			: {
					value: central.spanMm,
					sd: Math.sqrt(spanVariance),
					standing: "derived",
					sources: sourcesOf(body),
				};

	const stature = body.statureMm.value;
	const t = pull(stature);
	const bridge = BRIDGE_LENGTH_MM[answers.gameId];
	const bridgeLengthMm: Estimate =
		answers.bridgeLengthMm !== undefined
			? reading(answers.bridgeLengthMm, ANSWER_SD_MM.bridgeLengthMm)
			: customary(
					bridge.value *
						Math.min(1, stature / USUAL_CUE_PULL.referenceStatureMm) **
							USUAL_CUE_PULL.bridgePower,
					bridge.sd,
				);
	const grip = GRIP_FROM_BUTT_MM[answers.gameId];
	const gripFromButtMm: Estimate =
		answers.gripFromButtMm !== undefined
			? reading(answers.gripFromButtMm, ANSWER_SD_MM.gripFromButtMm)
			: customary(grip.value + USUAL_CUE_PULL.gripMmPerT * t, grip.sd);

	const parts = [bridgeLengthMm, bridgeToGripMm, gripFromButtMm];
	const lengthMm: Estimate = {
		value: parts.reduce((sum, part) => sum + part.value, 0),
		sd: Math.hypot(...parts.map((part) => part.sd)),
		standing: parts.every((part) => part.standing === "measured")
			? "measured"
			: "derived",
		sources: [...new Set(parts.flatMap((part) => part.sources))],
	};
	const held = bridgeToGripMm.value + bridgeLengthMm.value;
	return accept({
		bridgeToGripMm,
		bridgeLengthMm,
		gripFromButtMm,
		lengthMm,
		lengthWindowMm: {
			low:
				held -
				BRIDGE_SLACK_MM.shorter +
				Math.min(GRIP_LIMITS_MM.least, gripFromButtMm.value),
			high:
				held +
				BRIDGE_SLACK_MM.longer +
				Math.max(GRIP_LIMITS_MM.most, gripFromButtMm.value),
		},
		cautions: cautionsOf(body, answers, central),
	});
}

/** Grip hand to butt end on a cue of that length, mm; negative where the cue ends before the hand. */
export function overhangMm(p: { reach: CueReach; lengthMm: number }): Estimate {
	const { bridgeLengthMm, bridgeToGripMm } = p.reach;
	return {
		value: p.lengthMm - bridgeLengthMm.value - bridgeToGripMm.value,
		sd: Math.hypot(bridgeLengthMm.sd, bridgeToGripMm.sd),
		standing: "derived",
		sources: [
			...new Set([...bridgeLengthMm.sources, ...bridgeToGripMm.sources]),
		],
	};
}

/** Middle of the height the rules of the game allow, cloth above the floor, mm. */
export function clothHeightMm(gameId: StanceAnswers["gameId"]): number {
	const { minMm, maxMm, of } = GAMES[gameId].tableHeight;
	const middle = (minMm + maxMm) / 2;
	return of === "bed" ? middle : middle - CUSHION_HEIGHT_MM;
}

const STYLE = [
	"yawDeg",
	"bridgeElbowDeg",
	"chinAboveCueMm",
	"bridgeShoulderShare",
	"gripShoulderShare",
	"elevationDeg",
	"bridgeAxisHeightMm",
	"seatHeightMm",
] as const;
type Style = Record<(typeof STYLE)[number], { value: number; sd: number }>;

const pull = (statureMm: number): number =>
	Math.tanh(
		(statureMm - USUAL_CUE_PULL.referenceStatureMm) / USUAL_CUE_PULL.scaleMm,
	);

function styleOf(answers: StanceAnswers, statureMm: number): Style {
	const posture = answers.posture ?? USUAL_POSTURE[answers.gameId];
	const elbow = BRIDGE_ELBOW_DEG[answers.bridgeArm ?? "unsaid"];
	return {
		yawDeg: answers.seated
			? SHOULDER_YAW_DEG.seated
			: SHOULDER_YAW_DEG[answers.stance ?? "unsaid"],
		bridgeElbowDeg: answers.bridgeArm
			? elbow
			: {
					value: elbow.value + USUAL_CUE_PULL.elbowDegPerT * pull(statureMm),
					sd: elbow.sd,
				},
		chinAboveCueMm: CHIN_ABOVE_CUE_MM[posture],
		bridgeShoulderShare: SHOULDER_ABOVE_CHIN_SHARE.bridge,
		gripShoulderShare: SHOULDER_ABOVE_CHIN_SHARE.grip,
		elevationDeg: CUE_ELEVATION_DEG,
		bridgeAxisHeightMm: BRIDGE_AXIS_HEIGHT_MM,
		seatHeightMm: answers.seated ? SEAT_HEIGHT_MM : { value: 0, sd: 0 },
	};
}

interface Reached extends SpanSolution {
	/** How far below the wanted height the shoulders stay because the player is no taller, mm; 0 if not. */
	readonly shoulderShortfallMm: number;
}

function solve(
	lengths: readonly number[],
	style: Style,
	answers: StanceAnswers,
): Reached | null {
	const length = (name: (typeof BODY_LENGTHS)[number]) =>
		lengths[BODY_LENGTHS.indexOf(name)] as number;
	const stature = length("statureMm");
	const cloth = clothHeightMm(answers.gameId);
	const upright =
		(answers.seated
			? style.seatHeightMm.value + SEATED_SHOULDER_SHARE.value * stature
			: length("shoulderHeightMm")) - cloth;
	// The chin lies over the cue about half-way along the span: height of the axis there.
	const halfSpan = 0.3 * stature;
	const chin =
		style.bridgeAxisHeightMm.value +
		halfSpan * Math.tan((style.elevationDeg.value * Math.PI) / 180) +
		style.chinAboveCueMm.value;
	const wantedGrip = chin + style.gripShoulderShare.value * stature;
	const wantedBridge = chin + style.bridgeShoulderShare.value * stature;
	const shortfall = Math.max(0, wantedGrip - upright);
	const forearm = length("elbowToGripMm") * FOREARM_LINK_SHARE;
	const solution = spanFrom({
		upperArmMm: length("shoulderToElbowMm") * UPPER_ARM_LINK_SHARE,
		forearmMm: forearm,
		bridgeForearmMm:
			forearm + BRIDGE_BEYOND_GRIP_SHARE * length("handLengthMm"),
		shoulderBreadthMm: length("shoulderBreadthMm"),
		bridgeShoulderHeightMm: Math.min(wantedBridge, upright),
		gripShoulderHeightMm: wantedGrip - shortfall,
		yawDeg: style.yawDeg.value,
		bridgeElbowDeg: style.bridgeElbowDeg.value,
		elevationDeg: style.elevationDeg.value,
		bridgeAxisHeightMm: style.bridgeAxisHeightMm.value,
	});
	return solution && { ...solution, shoulderShortfallMm: shortfall };
}

/** gᵀΣg with the span's slope on each body length by central differences of 1 mm. */
function bodyVariance(
	body: Body,
	lengths: readonly number[],
	style: Style,
	answers: StanceAnswers,
): number {
	const slopes = lengths.map((value, i) => {
		const up = solve(lengths.with(i, value + 1), style, answers);
		const down = solve(lengths.with(i, value - 1), style, answers);
		return up && down ? (up.spanMm - down.spanMm) / 2 : 0;
	});
	return body.covarianceMm2.reduce(
		(sum, row, i) =>
			sum +
			(slopes[i] as number) *
				row.reduce((s, c, j) => s + c * (slopes[j] as number), 0),
		0,
	);
}

/** Half the change from one sd below to one above, squared, over the style figures. */
function styleVariance(
	lengths: readonly number[],
	style: Style,
	answers: StanceAnswers,
): number {
	return STYLE.reduce((sum, name) => {
		const { value, sd } = style[name];
		if (sd === 0) return sum;
		const shifted = (by: number) =>
			solve(lengths, { ...style, [name]: { value: value + by, sd } }, answers);
		const up = shifted(sd);
		const down = shifted(-sd);
		return up && down ? sum + ((up.spanMm - down.spanMm) / 2) ** 2 : sum;
	}, 0);
}

const reading = (value: number, sd: number): Estimate => ({
	value,
	sd,
	standing: "measured",
	sources: ["measured-here"],
});

const customary = (value: number, sd: number): Estimate => ({
	value,
	sd,
	standing: "common-practice",
	sources: ["common-practice"],
});

const sourcesOf = (body: Body): CitationId[] => [
	...new Set<CitationId>([
		...body.shoulderToElbowMm.sources,
		...body.elbowToGripMm.sources,
		...body.shoulderBreadthMm.sources,
		"project-judgement",
	]),
];

function cautionsOf(
	body: Body,
	answers: StanceAnswers,
	central: Reached,
): Caution[] {
	const cautions: Caution[] = [];
	if (answers.bridgeToGripMm === undefined)
		cautions.push({ code: "stance-assumed" });
	else if (
		Math.abs(answers.bridgeToGripMm - central.spanMm) >
		0.25 * central.spanMm
	)
		cautions.push({
			code: "span-unexpected",
			facts: {
				bridgeToGripMm: answers.bridgeToGripMm,
				expectedMm: central.spanMm,
			},
		});
	if (central.shoulderShortfallMm > 0)
		cautions.push({
			code: "table-high-for-player",
			facts: {
				shortfallMm: central.shoulderShortfallMm,
				clothHeightMm: clothHeightMm(answers.gameId),
				shoulderHeightMm: body.shoulderHeightMm.value,
			},
		});
	if (central.forearmTiltDeg > 0)
		cautions.push({
			code: "forearm-not-upright",
			facts: { forearmTiltDeg: central.forearmTiltDeg },
		});
	return cautions;
}
