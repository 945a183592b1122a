import type { CitationId } from "./citations";

/**
 * Adult body lengths: 2012 U.S. Army survey (Gordon et al. 2014), computed from the public rows of
 * 4,082 men and 1,986 women. A military sample aged 17 to 58, not a civilian population; the
 * regressions leave out a hold-out sample of 44 people (22 of each sex).
 */
export type Sex = "female" | "male";

export const ADULT_SOURCE: CitationId = "ansur-2";

/** y = interceptMm + perStature·stature + perSpan·span, residual standard deviation residualSdMm. */
export interface Regression {
	readonly interceptMm: number;
	readonly perStature: number;
	readonly perSpan: number;
	readonly residualSdMm: number;
}

/** Names are the survey's own; landmarks beside them. */
export type AdultLength =
	/** acromion to underside of the elbow bent at a right angle */
	| "shoulderElbow"
	/** back of the elbow to the centre of a gripped rod */
	| "forearmGrip"
	/** wrist crease to tip of middle finger */
	| "handLength"
	/** floor to acromion */
	| "acromialHeight"
	/** acromion to acromion */
	| "biacromial";

const line = (
	interceptMm: number,
	perStature: number,
	perSpan: number,
	residualSdMm: number,
): Regression => ({ interceptMm, perStature, perSpan, residualSdMm });

export const ADULT_BY_STATURE: Readonly<
	Record<Sex, Readonly<Record<AdultLength | "span", Regression>>>
> = {
	male: {
		shoulderElbow: line(-17.32396, 0.21696, 0, 10.49301),
		forearmGrip: line(1.86316, 0.19767, 0, 11.90702),
		handLength: line(21.60391, 0.09776, 0, 7.3516),
		acromialHeight: line(-126.39456, 0.89234, 0, 16.17769),
		biacromial: line(155.08935, 0.14838, 0, 16.21504),
		span: line(27.17955, 1.0175, 0, 47.99071),
	},
	female: {
		shoulderElbow: line(-23.8617, 0.21995, 0, 9.84479),
		forearmGrip: line(-12.26549, 0.20266, 0, 12.44203),
		handLength: line(16.63057, 0.10097, 0, 7.67921),
		acromialHeight: line(-95.63111, 0.87855, 0, 13.65575),
		biacromial: line(103.8845, 0.16054, 0, 15.1489),
		span: line(-58.10853, 1.05528, 0, 47.50895),
	},
};

export const ADULT_BY_STATURE_AND_SPAN: Readonly<
	Record<Sex, Readonly<Record<AdultLength, Regression>>>
> = {
	male: {
		shoulderElbow: line(-20.89814, 0.08315, 0.1315, 8.3841),
		forearmGrip: line(-2.86724, 0.02058, 0.17404, 8.48715),
		handLength: line(19.28256, 0.01085, 0.08541, 6.1037),
		acromialHeight: line(-127.35654, 0.85632, 0.03539, 16.09025),
		biacromial: line(151.62521, 0.0187, 0.12745, 15.019),
	},
	female: {
		shoulderElbow: line(-16.55323, 0.08723, 0.12577, 7.82602),
		forearmGrip: line(-0.83035, -0.00501, 0.19679, 8.21157),
		handLength: line(22.24195, -0.00093, 0.09657, 6.15969),
		acromialHeight: line(-94.51572, 0.8583, 0.0192, 13.62874),
		biacromial: line(111.48726, 0.02247, 0.13084, 13.81842),
	},
};

/** Stature of the survey's men and women: mean, sd, and the range seen, mm. */
export const ADULT_STATURE: Readonly<
	Record<
		Sex,
		{
			meanMm: number;
			sdMm: number;
			minMm: number;
			maxMm: number;
			count: number;
		}
	>
> = {
	male: { meanMm: 1756.21, sdMm: 68.55, minMm: 1491, maxMm: 1993, count: 4082 },
	female: {
		meanMm: 1628.47,
		sdMm: 64.2,
		minMm: 1409,
		maxMm: 1829,
		count: 1986,
	},
};

/**
 * Hip (trochanterion) height on stature. The survey's regressions in hand do not hold it; slope and
 * residual follow from its printed mean m, SD s, mean share r and share SD q, stature's being μ and σ:
 * b = ((s² − q²μ²)/σ² + r²)/(2r), residual² = s² − b²σ².
 */
export const ADULT_HIP_HEIGHT: Readonly<
	Record<
		Sex,
		{ meanMm: number; sdMm: number; shareMean: number; shareSd: number }
	>
> = {
	male: { meanMm: 900.93, sdMm: 49.17, shareMean: 0.51285, shareSd: 0.0152 },
	female: {
		meanMm: 845.35,
		sdMm: 44.68,
		shareMean: 0.51898,
		shareSd: 0.01445,
	},
};

/** Eye height (stature − sitting height + sitting eye height) as a share of stature, mean and SD of individual shares. */
export const ADULT_EYE_SHARE: Readonly<
	Record<Sex, { ratio: number; sd: number }>
> = {
	male: { ratio: 0.9352, sd: 0.005 },
	female: { ratio: 0.9331, sd: 0.0048 },
};

/** Mean shares of stature of the shoulder to the elbow's joint, and to the underside of the bent elbow. */
export const UPPER_ARM_SHARES: Readonly<
	Record<Sex, { toJoint: number; toUnderside: number }>
> = {
	male: { toJoint: 0.19087, toUnderside: 0.20708 },
	female: { toJoint: 0.19107, toUnderside: 0.20526 },
};

/**
 * Segment lengths as fractions of stature after Drillis & Contini 1966, as reproduced by Winter 2009,
 * fig. 4.1; seen in several independent transcriptions of the figure. No spread is published with
 * them. Only the chin height is used by the model; the rest is context and check.
 */
export const WINTER_FRACTIONS = {
	eyeHeight: 0.936,
	chinHeight: 0.87,
	shoulderHeight: 0.818,
	elbowHeight: 0.63,
	hipHeight: 0.53,
	wristHeight: 0.485,
	fingertipHeight: 0.377,
	upperArm: 0.186,
	forearm: 0.146,
	hand: 0.108,
	halfShoulderWidth: 0.129,
} as const;
