import { Z90 } from "@/lib/reference/estimate";
import type { Predicted, Prediction } from "./weighed-cue";

/** What one cue was predicted to come to when it was ordered, and came to. */
export interface BuiltResult {
	readonly jobNumber: number;
	readonly at: Date;
	readonly prediction: Prediction;
}

/** How one predicted figure held over all builds, in the figure's own unit. */
export interface PredictionRecord {
	readonly builds: number;
	/** Results inside the central 90 % band of their own prediction; nine in ten are expected. */
	readonly withinBand: number;
	/** Mean of result less prediction. */
	readonly meanDifference: number;
}

/** Result less prediction. */
export const differenceOf = ({ measured, expected }: Predicted): number =>
	measured - expected;

/** Half the width of the central 90 % band of a result about its prediction. */
export const bandHalf = ({ sd }: Predicted): number => Z90 * sd;

export const isWithinBand = (one: Predicted): boolean =>
	Math.abs(differenceOf(one)) <= bandHalf(one);

/** Throws RangeError without any build. */
export function predictionRecord(
	predicted: readonly Predicted[],
): PredictionRecord {
	const builds = predicted.length;
	if (builds === 0) throw new RangeError("predictionRecord: no build");
	return {
		builds,
		withinBand: predicted.filter(isWithinBand).length,
		meanDifference:
			predicted.reduce((sum, one) => sum + differenceOf(one), 0) / builds,
	};
}
