import type { Regression, Sex } from "./body-adult";
import type { CitationId } from "./citations";

/**
 * Children's body lengths, ages 6 to 18: Snyder et al. 1977, regressions computed from the public
 * data leaving out a hold-out sample of 40 children. Stature is the only predictor.
 */
export const CHILD_SOURCE: CitationId = "snyder-1977";

/** Names are the survey's own; elbowHand is back of the bent elbow to tip of middle finger. */
export type ChildLength =
	| "shoulderElbow"
	| "elbowHand"
	| "handLength"
	| "biacromial";

const line = (
	interceptMm: number,
	perStature: number,
	residualSdMm: number,
): Regression => ({ interceptMm, perStature, perSpan: 0, residualSdMm });

export const CHILD_BY_STATURE: Readonly<
	Record<Sex, Readonly<Record<ChildLength, Regression>>>
> = {
	male: {
		shoulderElbow: line(-17.95764, 0.2208, 8.98406),
		elbowHand: line(-30.47712, 0.29006, 11.66597),
		handLength: line(4.90749, 0.10588, 6.58078),
		biacromial: line(2.8177, 0.21622, 13.65829),
	},
	female: {
		shoulderElbow: line(-20.7016, 0.2212, 9.46651),
		elbowHand: line(-12.01839, 0.2727, 12.98702),
		handLength: line(12.46509, 0.09931, 6.59397),
		biacromial: line(28.8778, 0.19948, 14.39176),
	},
};

/** The survey's span of ages, years. */
export const CHILD_AGES = { minYears: 6, maxYears: 18 } as const;

/**
 * What the survey does not hold, this project's judgement.
 * gripShare: grip centre over fingertip distance from the elbow; adults' ratio of means is 0.727 men,
 *   0.722 women; 0.725 is carried to children, sd assumed.
 * spanShare: arm span over stature; passes 1 somewhere in late childhood (from memory).
 * headMm: chin to crown = 108 + 0.07·stature: 185 mm at 1.10 m, 230 mm at 1.75 m (from memory).
 * eyeShare: crown to eye over chin to crown.
 * shoulderHeight: mean of the two adult lines; gives 0.79 of stature at 1.17 m, near what is
 *   remembered of British children of six.
 * hipShare: trochanter height over stature.
 */
export const CHILD_ASSUMED = {
	gripShare: { ratio: 0.725, sd: 0.012 },
	spanShare: { ratio: 1.0, sd: 0.026 },
	headMm: { interceptMm: 108, perStature: 0.07, sdMm: 8 },
	eyeShare: { ratio: 0.5, sd: 0.03 },
	shoulderHeight: { interceptMm: -111, perStature: 0.885, sdMm: 20 },
	hipShare: { ratio: 0.505, sd: 0.02 },
} as const;
