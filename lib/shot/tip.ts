import type { Estimate } from "@/lib/reference/estimate";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { squirtDeg } from "./deflection";
import { lesserOf } from "./lesser";
import { DIME_RADIUS, MISCUE_OFFSET } from "./published";
import { maxOffsetRatioForTip, spinRatio } from "./spin";

/** How far a tip's dome departs from the coin it is shaped to. Common practice, no source. */
const DOME_SPREAD = 0.07;

export interface TipTradeoff {
	readonly endMassG: Estimate;
	/** Deflection at half the ball radius of side, from the cue's axis (TP A.31). */
	readonly squirtDegAtHalf: Estimate;
	/** Where the dome ends, as a share of the ball radius. */
	readonly domeOffsetRatio: Estimate;
	/** The usable offset: the lesser of the miscue limit and the dome's end. */
	readonly contactOffsetMaxRatio: number;
	/** Rω/v at the usable offset. */
	readonly sideSpinReachRatio: number;
	readonly contactOffsetMax: Estimate;
	readonly sideSpinReach: Estimate;
	/** Which of the two ends the reach. */
	readonly limitedBy: "miscue" | "tip-edge";
}

/** What a tip's width trades: end mass and deflection against how far out the dome can touch. */
export function tipTradeoff(p: {
	readonly gameId: GameId;
	readonly tipDiameterMm: number;
	/** Default: the smaller coin's radius, the rounder of the two usual shapes. */
	readonly domeRadiusMm?: number;
	/** Of the cue with that tip: `endMassOfDesignG`. */
	readonly endMassG: Estimate;
}): TipTradeoff {
	const ball = GAMES[p.gameId].cueBall;
	const { endMassG } = p;
	const domeRadiusMm = p.domeRadiusMm ?? DIME_RADIUS.value;
	const domeValue = maxOffsetRatioForTip({
		tipDiameterMm: p.tipDiameterMm,
		domeRadiusMm,
	});
	const domeOffsetRatio: Estimate = {
		value: domeValue,
		sd: domeValue * DOME_SPREAD,
		standing: p.domeRadiusMm === undefined ? "common-practice" : "measured",
		sources: [
			p.domeRadiusMm === undefined ? DIME_RADIUS.source : "measured-here",
		],
	};
	const contactOffsetMaxRatio = Math.min(MISCUE_OFFSET.value, domeValue);
	const offsetBand = lesserOf(MISCUE_OFFSET, domeOffsetRatio);
	return {
		endMassG,
		squirtDegAtHalf: squirtEstimate({
			offsetRatio: 0.5,
			ballMassG: ball.massG,
			endMassG,
		}),
		domeOffsetRatio,
		contactOffsetMaxRatio,
		sideSpinReachRatio: spinRatio(contactOffsetMaxRatio),
		contactOffsetMax: {
			value: contactOffsetMaxRatio,
			sd: offsetBand.sd,
			standing: "derived",
			sources: [MISCUE_OFFSET.source, ...domeOffsetRatio.sources],
		},
		sideSpinReach: {
			value: spinRatio(contactOffsetMaxRatio),
			sd: spinRatio(offsetBand.sd),
			standing: "derived",
			sources: [MISCUE_OFFSET.source, ...domeOffsetRatio.sources],
		},
		limitedBy: domeValue < MISCUE_OFFSET.value ? "tip-edge" : "miscue",
	};
}

/** Deflection with the spread of end mass and ball mass carried through its slope. */
export function squirtEstimate(p: {
	readonly offsetRatio: number;
	readonly ballMassG: { readonly value: number; readonly sd: number };
	readonly endMassG: Estimate;
}): Estimate {
	const at = (ballMassG: number, endMass: number): number =>
		squirtDeg({ offsetRatio: p.offsetRatio, ballMassG, endMassG: endMass });
	const ball = p.ballMassG;
	const end = p.endMassG;
	const step = 1e-4;
	// Only the ratio of the masses enters, so one slope serves both.
	const slope =
		(at(ball.value, end.value * (1 + step)) -
			at(ball.value, end.value * (1 - step))) /
		(2 * step);
	return {
		value: at(ball.value, end.value),
		sd: Math.abs(slope) * Math.hypot(end.sd / end.value, ball.sd / ball.value),
		standing: "derived",
		sources: ["alciatore-a31", ...end.sources],
	};
}
