import {
	ADULT_BY_STATURE,
	ADULT_BY_STATURE_AND_SPAN,
	ADULT_EYE_SHARE,
	ADULT_HIP_HEIGHT,
	ADULT_STATURE,
	type Regression,
	type Sex,
	WINTER_FRACTIONS,
} from "@/lib/reference/body-adult";
import { CHILD_ASSUMED, CHILD_BY_STATURE } from "@/lib/reference/body-child";
import { chained, type Gaussian, type LinearLink } from "./gaussian";
import { lmsAt } from "./stature-for-age";

/** Lengths of a body in the order of every covariance in this project. */
export const BODY_LENGTHS = [
	"statureMm",
	"armSpanMm",
	"shoulderToElbowMm",
	"elbowToGripMm",
	"shoulderBreadthMm",
	"shoulderHeightMm",
	"eyeHeightMm",
	"chinHeightMm",
	"hipHeightMm",
	"handLengthMm",
] as const;
export type BodyLength = (typeof BODY_LENGTHS)[number];

export const indexOfLength = (name: BodyLength): number =>
	BODY_LENGTHS.indexOf(name);

const STATURE = 0;
const SPAN = 1;

/** Spread of chin height between people of one stature, mm: Winter prints none. Assumed. */
const CHIN_SD_MM = 12;
/** Stature of a child of unknown age, mm. Assumed, wide. */
const CHILD_ANY_AGE = { meanMm: 1300, sdMm: 180 };

const fromRegression = (r: Regression): LinearLink => ({
	intercept: r.interceptMm,
	slopes:
		r.perSpan === 0
			? [[STATURE, r.perStature]]
			: [
					[STATURE, r.perStature],
					[SPAN, r.perSpan],
				],
	residualSd: r.residualSdMm,
});

const share = (
	s: { ratio: number; sd: number },
	typicalStatureMm: number,
): LinearLink => ({
	intercept: 0,
	slopes: [[STATURE, s.ratio]],
	residualSd: s.sd * typicalStatureMm,
});

const start = (mean: number, sd: number): LinearLink => ({
	intercept: mean,
	slopes: [],
	residualSd: sd,
});

function hipOnStature(sex: Sex): LinearLink {
	const { meanMm: mu, sdMm: sigma } = ADULT_STATURE[sex];
	const { meanMm, sdMm, shareMean: r, shareSd } = ADULT_HIP_HEIGHT[sex];
	const slope =
		((sdMm ** 2 - (shareSd * mu) ** 2) / sigma ** 2 + r ** 2) / (2 * r);
	return {
		intercept: meanMm - slope * mu,
		slopes: [[STATURE, slope]],
		residualSd: Math.sqrt(sdMm ** 2 - (slope * sigma) ** 2),
	};
}

/** Joint distribution of adult lengths; lengths are independent given stature and span. */
export function adults(sex: Sex): Gaussian {
	const both = ADULT_BY_STATURE_AND_SPAN[sex];
	const { meanMm, sdMm } = ADULT_STATURE[sex];
	return chained([
		start(meanMm, sdMm),
		fromRegression(ADULT_BY_STATURE[sex].span),
		fromRegression(both.shoulderElbow),
		fromRegression(both.forearmGrip),
		fromRegression(both.biacromial),
		fromRegression(both.acromialHeight),
		share(ADULT_EYE_SHARE[sex], meanMm),
		{
			intercept: 0,
			slopes: [[STATURE, WINTER_FRACTIONS.chinHeight]],
			residualSd: CHIN_SD_MM,
		},
		hipOnStature(sex),
		fromRegression(both.handLength),
	]);
}

/**
 * Joint distribution of children's lengths at an age (or any age). The survey's lines have stature
 * alone; a measured span enters through the adults' slope on span at fixed stature, taken out of the
 * residual so that stature alone still gives the survey's line and spread. That step is assumed.
 */
export function children(sex: Sex, ageYears: number | null): Gaussian {
	const own = CHILD_BY_STATURE[sex];
	const adult = ADULT_BY_STATURE_AND_SPAN[sex];
	const lms = ageYears === null ? null : lmsAt(sex, 12 * ageYears);
	const meanMm = lms?.medianMm ?? CHILD_ANY_AGE.meanMm;
	const sdMm = lms ? lms.s * lms.medianMm : CHILD_ANY_AGE.sdMm;
	const { gripShare, spanShare, headMm, eyeShare, shoulderHeight, hipShare } =
		CHILD_ASSUMED;
	const spanSdMm = spanShare.sd * meanMm;

	const withSpan = (r: Regression, perSpan: number): LinearLink => ({
		intercept: r.interceptMm,
		slopes: [
			[STATURE, r.perStature - perSpan * spanShare.ratio],
			[SPAN, perSpan],
		],
		residualSd: Math.sqrt(r.residualSdMm ** 2 - (perSpan * spanSdMm) ** 2),
	});
	const elbowHandMm =
		own.elbowHand.interceptMm + own.elbowHand.perStature * meanMm;
	const grip: Regression = {
		interceptMm: gripShare.ratio * own.elbowHand.interceptMm,
		perStature: gripShare.ratio * own.elbowHand.perStature,
		perSpan: 0,
		residualSdMm: Math.hypot(
			gripShare.ratio * own.elbowHand.residualSdMm,
			gripShare.sd * elbowHandMm,
		),
	};
	const eye: LinearLink = {
		intercept: -eyeShare.ratio * headMm.interceptMm,
		slopes: [[STATURE, 1 - eyeShare.ratio * headMm.perStature]],
		residualSd: headMm.sdMm,
	};
	return chained([
		start(meanMm, sdMm),
		share(spanShare, meanMm),
		withSpan(own.shoulderElbow, adult.shoulderElbow.perSpan),
		withSpan(grip, adult.forearmGrip.perSpan),
		withSpan(own.biacromial, adult.biacromial.perSpan),
		{
			intercept: shoulderHeight.interceptMm,
			slopes: [[STATURE, shoulderHeight.perStature]],
			residualSd: shoulderHeight.sdMm,
		},
		eye,
		{
			intercept: -headMm.interceptMm,
			slopes: [[STATURE, 1 - headMm.perStature]],
			residualSd: headMm.sdMm,
		},
		share(hipShare, meanMm),
		withSpan(own.handLength, adult.handLength.perSpan),
	]);
}
