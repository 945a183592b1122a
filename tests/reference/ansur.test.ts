/**
 * ANSUR II (Gordon et al. 2014): means, standard deviations and whole-sample regressions as printed in
 * the survey's summary and computed from all 4,082 men and 1,986 women. The project's equations leave a
 * hold-out sample aside, so they differ a little. Residuals seen: means within 0.2 mm, spreads within
 * 0.6 %, regressions within 1 mm over the survey's range of stature.
 */
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import {
	adults,
	BODY_LENGTHS,
	type BodyLength,
	indexOfLength,
} from "@/lib/player/populations";
import {
	ADULT_BY_STATURE,
	ADULT_BY_STATURE_AND_SPAN,
} from "@/lib/reference/body-adult";

/** Mean and SD of the whole sample, mm. */
const SUMMARY = {
	male: {
		statureMm: [1756.2, 68.6],
		armSpanMm: [1814.2, 84.6],
		shoulderHeightMm: [1440.7, 63.3],
		shoulderBreadthMm: [415.7, 19.2],
		shoulderToElbowMm: [363.7, 18.2],
		elbowToGripMm: [349.0, 18.0],
		handLengthMm: [193.28, 9.95],
		hipHeightMm: [900.9, 49.2],
	},
	female: {
		statureMm: [1628.5, 64.2],
		armSpanMm: [1660.3, 83.0],
		shoulderHeightMm: [1335.1, 58.1],
		shoulderBreadthMm: [365.3, 18.3],
		shoulderToElbowMm: [334.3, 17.3],
		elbowToGripMm: [317.7, 18.0],
		handLengthMm: [181.08, 10.06],
		hipHeightMm: [845.4, 44.7],
	},
} as const;

describe.each(["male", "female"] as const)("%s", (sex) => {
	const joint = adults(sex);
	test.each(Object.entries(SUMMARY[sex]))(
		"%s: mean and spread of the population",
		(name, [mean, sd]) => {
			const i = indexOfLength(name as BodyLength);
			expect(Math.abs((joint.mean[i] as number) - mean)).toBeLessThan(0.3);
			const own = Math.sqrt(joint.covariance[i]?.[i] as number);
			expect(Math.abs(own / sd - 1)).toBeLessThan(0.008);
		},
	);

	test("covariance is symmetric and of full rank", () => {
		for (const [i, row] of joint.covariance.entries())
			for (const [j, c] of row.entries())
				expect(c).toBeCloseTo(joint.covariance[j]?.[i] as number, 6);
		expect(BODY_LENGTHS).toHaveLength(joint.mean.length);
	});
});

/** Whole-sample regressions: a + b·stature + c·span, residual SD. */
const WHOLE = [
	["male", "shoulderElbow", -17.192, 0.21689, 0, 10.5],
	["male", "shoulderElbow", -21.065, 0.08319, 0.13156, 8.38],
	["female", "shoulderElbow", -24.587, 0.22038, 0, 9.87],
	["female", "shoulderElbow", -16.56, 0.08677, 0.12622, 7.84],
	["male", "forearmGrip", 2.599, 0.19725, 0, 11.91],
	["male", "forearmGrip", -2.512, 0.02081, 0.17363, 8.49],
	["female", "forearmGrip", -13.41, 0.20333, 0, 12.43],
	["female", "forearmGrip", -0.939, -0.00426, 0.1961, 8.21],
	["male", "handLength", 21.743, 0.09767, 0, 7.36],
	["male", "handLength", 19.224, 0.01073, 0.08555, 6.1],
	["female", "handLength", 16.234, 0.10123, 0, 7.68],
	["female", "handLength", 22.338, -0.00038, 0.09599, 6.17],
	["male", "acromialHeight", -126.885, 0.89261, 0, 16.16],
	["female", "acromialHeight", -96.855, 0.87932, 0, 13.66],
	["male", "biacromial", 154.637, 0.14864, 0, 16.23],
	["male", "biacromial", 150.868, 0.01852, 0.12804, 15.02],
	["female", "biacromial", 102.816, 0.16121, 0, 15.09],
	["female", "biacromial", 111.042, 0.02427, 0.12936, 13.78],
] as const;

test.each(WHOLE)(
	"%s %s: %d + %d·stature + %d·span",
	(sex, name, a, b, c, sd) => {
		const own =
			c === 0
				? ADULT_BY_STATURE[sex][name]
				: ADULT_BY_STATURE_AND_SPAN[sex][name];
		const [low, high] = sex === "male" ? [1491, 1993] : [1409, 1829];
		for (const stature of [low, (low + high) / 2, high])
			for (const span of [stature * 0.98, stature * 1.06]) {
				const mine =
					own.interceptMm + own.perStature * stature + own.perSpan * span;
				expect(Math.abs(mine - (a + b * stature + c * span))).toBeLessThan(1);
			}
		expect(own.residualSdMm).toBeCloseTo(sd, 0);
	},
);

test("stature alone through the joint distribution is the one-predictor regression", () => {
	// Taking span out of the two-predictor lines must give back the one-predictor ones.
	for (const sex of ["male", "female"] as const) {
		const body = must(bodyFrom({ statureMm: 1700, ageYears: 30, sex }));
		const { shoulderElbow, forearmGrip, biacromial } = ADULT_BY_STATURE[sex];
		for (const [name, line] of [
			["shoulderToElbowMm", shoulderElbow],
			["elbowToGripMm", forearmGrip],
			["shoulderBreadthMm", biacromial],
		] as const) {
			const value = line.interceptMm + line.perStature * 1700;
			expect(Math.abs(body[name].value - value)).toBeLessThan(0.4);
			// The reading of stature adds its own small doubt.
			expect(
				Math.abs(
					body[name].sd - Math.hypot(line.residualSdMm, 6 * line.perStature),
				),
			).toBeLessThan(0.1);
		}
	}
});

test.each([
	["male", 1756.21, 0.9352, 0.51285],
	["female", 1628.47, 0.9331, 0.51898],
] as const)(
	"%s of mean stature: eye and hip are the mean shares",
	(sex, statureMm, eye, hip) => {
		const body = must(bodyFrom({ statureMm, ageYears: 30, sex }));
		expect(body.eyeHeightMm.value / statureMm).toBeCloseTo(eye, 9);
		expect(body.hipHeightMm.value / statureMm).toBeCloseTo(hip, 3);
	},
);
