import { accept, type Outcome, refuse } from "@/lib/numerics/outcome";
import { rootBetween } from "@/lib/numerics/roots";
import type { Body } from "@/lib/player/body";
import { BODY_LENGTHS } from "@/lib/player/populations";
import { ANSWER_SD_MM, answerRefusals, type StanceAnswers } from "./answers";
import {
	BRIDGE_ELBOW_OPEN_DEG,
	BRIDGE_REACH_EASY_RATIO,
	CHIN_ABOVE_CUE_MM,
} from "./assumptions";
import { type Figure, figureFrom } from "./figure";
import { fitStyleToSpan, type StyleFit } from "./fit";
import {
	type Linkage,
	type Situation,
	type StyleValues,
	solveLinkage,
} from "./linkage";
import { stepNeededMm, uprightChinMm } from "./step";
import {
	limitedElbow,
	type Style,
	situationOf,
	styleOf,
	valuesOf,
} from "./style";

/** A player at the table: predicted from body and answers, then fitted to what was measured there. */
export interface Stand {
	readonly lengths: readonly number[];
	readonly figure: Figure;
	readonly style: Style;
	readonly at: Situation;
	/** Null when no step, or no possible one, is called for by the figure. */
	readonly stepNeeded: number | null;
	/** From body and answers alone. */
	readonly predicted: Linkage;
	readonly measuredSpan: {
		readonly valueMm: number;
		readonly sdMm: number;
	} | null;
	/** Null when no span was measured. */
	readonly fit: StyleFit | null;
	/** Fitted where measured, else predicted, with its style. */
	readonly linkage: Linkage;
	readonly values: StyleValues;
}

export function standAt(p: {
	body: Body;
	answers: StanceAnswers;
}): Outcome<Stand> {
	const { body, answers } = p;
	const refusals = answerRefusals(answers);
	if (answers.seated && answers.standingFrame)
		refusals.push({
			code: "contradiction",
			field: "standingFrame",
			value: "true",
			facts: { against: "seated" },
		});
	if (refusals.length > 0) return refuse(...refusals);

	const lengths = BODY_LENGTHS.map((name) => body[name].value);
	const figure = figureFrom(lengths);
	const usual = limitedElbow(
		styleOf(answers, body.statureMm.value),
		answers.bridgeElbowMaxDeg,
	);
	const level = situationOf(answers);
	const stepNeeded = stepNeededMm(figure, valuesOf(usual), level);
	const at = { ...level, stepMm: stepNeeded ?? 0 };
	const style = reachingTheCloth(
		asUprightAsHeightAllows(usual, figure, at),
		figure,
		at,
		answers.bridgeElbowMaxDeg ?? BRIDGE_ELBOW_OPEN_DEG,
	);
	const asked = valuesOf(style);
	const predicted = solveLinkage(figure, asked, at);
	if (predicted.bridgeReachRatio > 1)
		return refuse({
			code: "bridge-out-of-reach",
			field: "bridgeReachRatio",
			value: predicted.bridgeReachRatio,
			max: 1,
			facts: {
				statureMm: body.statureMm.value,
				clothHeightMm: at.clothHeightMm,
			},
		});
	const measuredSpan = spanReading(answers);
	const fit =
		measuredSpan &&
		fitStyleToSpan({ lengths, style, at, spanMm: measuredSpan.valueMm });
	const values = fit?.style ?? asked;
	return accept({
		lengths,
		figure,
		style,
		at,
		stepNeeded,
		predicted,
		measuredSpan,
		fit,
		linkage: fit ? solveLinkage(figure, values, at) : predicted,
		values,
	});
}

/** An upright posture asked of a small player: the chin comes as high as it can, never below a low one's. */
function asUprightAsHeightAllows(
	style: Style,
	figure: Figure,
	at: Situation,
): Style {
	const highest = uprightChinMm(figure, valuesOf(style), at);
	const { value, sd } = style.chinAboveCueMm;
	const low = CHIN_ABOVE_CUE_MM.low;
	return value <= Math.max(highest, low.value)
		? style
		: {
				...style,
				chinAboveCueMm: {
					value: Math.max(highest, low.value),
					sd: Math.min(sd, low.sd),
				},
			};
}

/** Shoulders kept high over the cloth: the bridge elbow opens as far as it takes and is allowed. */
function reachingTheCloth(
	style: Style,
	figure: Figure,
	at: Situation,
	mostDeg: number,
): Style {
	const easy = (elbowDeg: number) =>
		BRIDGE_REACH_EASY_RATIO -
		solveLinkage(figure, { ...valuesOf(style), bridgeElbowDeg: elbowDeg }, at)
			.bridgeReachRatio;
	const { value, sd } = style.bridgeElbowDeg;
	if (easy(value) >= 0 || value >= mostDeg) return style;
	const opened = rootBetween({
		f: easy,
		from: value,
		to: mostDeg,
		tolerance: 1e-6,
	});
	return {
		...style,
		bridgeElbowDeg: { value: opened.converged ? opened.root : mostDeg, sd },
	};
}

/** The span as read at the table, or what is left of the cue in hand between bridge and grip. */
function spanReading(answers: StanceAnswers): Stand["measuredSpan"] {
	const { bridgeToGripMm, cueInHandMm, bridgeLengthMm, gripFromButtMm } =
		answers;
	if (bridgeToGripMm !== undefined)
		return { valueMm: bridgeToGripMm, sdMm: ANSWER_SD_MM.bridgeToGripMm };
	if (
		cueInHandMm === undefined ||
		bridgeLengthMm === undefined ||
		gripFromButtMm === undefined
	)
		return null;
	return {
		valueMm: cueInHandMm - bridgeLengthMm - gripFromButtMm,
		sdMm: Math.hypot(ANSWER_SD_MM.bridgeLengthMm, ANSWER_SD_MM.gripFromButtMm),
	};
}
