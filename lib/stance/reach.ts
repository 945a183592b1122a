import { accept, type Caution, type Outcome } from "@/lib/numerics/outcome";
import type { Body } from "@/lib/player/body";
import type { CitationId } from "@/lib/reference/citations";
import type { Band, Estimate } from "@/lib/reference/estimate";
import { ANSWER_SD_MM, type StanceAnswers } from "./answers";
import {
	BRIDGE_LENGTH_MM,
	BRIDGE_SLACK_MM,
	GRIP_FROM_BUTT_MM,
	GRIP_LIMITS_MM,
	SPAN_MODEL_SD_MM,
	USUAL_CUE_PULL,
} from "./assumptions";
import type { StyleValues } from "./linkage";
import { type Pose, poseOf } from "./pose";
import { spanSlopes } from "./spread";
import { type Stand, standAt } from "./stand";
import { usualCuePull } from "./style";

export type { StanceAnswers } from "./answers";
export { clothHeightMm } from "./style";

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
	/** What the body and the answers alone predict of the span, also where it was measured. */
	readonly predictedSpanMm: Estimate;
	readonly pose: Pose;
	readonly cautions: readonly Caution[];
}

/**
 * Preferred cue length and its window from a body and a stance. A measured span, bridge length or
 * grip point replaces its prediction, and the style is fitted to it. Errors: body covariance, style
 * spread and the model's own sd carried by first derivatives. Style figures: assumptions.ts,
 * calibrated to common practice.
 */
export function reachFrom(p: {
	body: Body;
	answers: StanceAnswers;
}): Outcome<CueReach> {
	const { body, answers } = p;
	const stood = standAt(p);
	if (!stood.ok) return stood;
	const stand = stood.value;

	const predictedSpanMm: Estimate = {
		value: stand.predicted.spanMm,
		sd: Math.sqrt(spanVariance(body, stand)),
		standing: "derived",
		sources: sourcesOf(body),
	};
	const { measuredSpan } = stand;
	const bridgeToGripMm = measuredSpan
		? reading(measuredSpan.valueMm, measuredSpan.sdMm)
		: predictedSpanMm;

	const stature = body.statureMm.value;
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
			: customary(
					grip.value + USUAL_CUE_PULL.gripMmPerT * usualCuePull(stature),
					grip.sd,
				);

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
		predictedSpanMm,
		pose: poseOf(stand, answers.handed ?? "right"),
		cautions: cautionsOf(body, stand, predictedSpanMm),
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

/** gᵀΣg over body lengths, Σ(g·sd)² over style figures, and the model's own. */
function spanVariance(body: Body, stand: Stand): number {
	const { byLength, byStyle } = spanSlopes({
		lengths: stand.lengths,
		style: Object.fromEntries(
			Object.entries(stand.style).map(([n, { value }]) => [n, value]),
		) as unknown as StyleValues,
		at: stand.at,
		linkage: stand.predicted,
	});
	const fromBody = body.covarianceMm2.reduce(
		(sum, row, i) =>
			sum +
			(byLength[i] as number) *
				row.reduce((s, c, j) => s + c * (byLength[j] as number), 0),
		0,
	);
	const fromStyle = Object.entries(stand.style).reduce(
		(sum, [name, { sd }]) =>
			sum + (byStyle[name as keyof StyleValues] * sd) ** 2,
		0,
	);
	return fromBody + fromStyle + SPAN_MODEL_SD_MM ** 2;
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

/** A measured span this many standard deviations from the predicted one is pointed out. Assumed. */
const SURPRISE_SD = 2.5;

function cautionsOf(body: Body, stand: Stand, predicted: Estimate): Caution[] {
	const { measuredSpan, linkage, stepNeeded, at } = stand;
	const cautions: Caution[] = [];
	if (measuredSpan === null) cautions.push({ code: "stance-assumed" });
	else if (
		Math.abs(measuredSpan.valueMm - predicted.value) >
		SURPRISE_SD * predicted.sd
	)
		cautions.push({
			code: "span-unexpected",
			facts: {
				bridgeToGripMm: measuredSpan.valueMm,
				expectedMm: predicted.value,
				sdMm: predicted.sd,
			},
		});
	if (stand.fit && !stand.fit.converged)
		cautions.push({
			code: "span-not-reached",
			facts: {
				bridgeToGripMm: measuredSpan?.valueMm ?? 0,
				reachedMm: linkage.spanMm,
			},
		});
	if (stepNeeded !== null && stepNeeded > 0)
		cautions.push({
			code: "step-needed",
			facts: {
				stepMm: stepNeeded,
				clothHeightMm: at.clothHeightMm,
				shoulderHeightMm: body.shoulderHeightMm.value,
			},
		});
	if (linkage.trunk === "limit")
		cautions.push({
			code: "chin-above-cue",
			facts: {
				chinAboveCueMm: linkage.chinAboveCueMm,
				wantedMm: stand.values.chinAboveCueMm,
				trunkMaxDeg: at.trunkMaxDeg,
			},
		});
	if (linkage.trunk === "highest")
		cautions.push({
			code: "chin-below-cue",
			facts: {
				chinAboveCueMm: linkage.chinAboveCueMm,
				wantedMm: stand.values.chinAboveCueMm,
			},
		});
	if (linkage.armLiftRatio > 1)
		cautions.push({
			code:
				linkage.points.gripElbow.z > linkage.points.gripShoulder.z
					? "forearm-not-upright"
					: "grip-hand-out-of-reach",
			facts: { armLiftRatio: linkage.armLiftRatio },
		});
	return cautions;
}
