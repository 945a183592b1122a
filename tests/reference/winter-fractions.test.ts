/**
 * Segment fractions of stature, Drillis & Contini 1966 as reproduced in Winter 2009, fig. 4.1 (read in
 * independent transcriptions). The model predicts by survey regressions; Winter is the outside check,
 * with the disagreements the literature itself shows (shoulder width, hip landmark).
 */
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import {
	UPPER_ARM_SHARES,
	WINTER_FRACTIONS as W,
} from "@/lib/reference/body-adult";
import { LEG_SHARES, UPPER_ARM_LINK_SHARE } from "@/lib/stance/assumptions";

test("the figure closes on itself: shoulder − upper arm = elbow, elbow − forearm = wrist, wrist − hand = fingertip", () => {
	expect(W.shoulderHeight - W.upperArm).toBeCloseTo(W.elbowHeight, 2);
	expect(W.elbowHeight - W.forearm).toBeCloseTo(W.wristHeight, 2);
	expect(W.wristHeight - W.hand).toBeCloseTo(W.fingertipHeight, 3);
});

describe.each([
	["male", 1756],
	["female", 1628],
] as const)("%s of mean stature", (sex, h) => {
	const body = must(bodyFrom({ statureMm: h, ageYears: 30, sex }));
	test.each([
		["eyeHeightMm", W.eyeHeight, 0.004],
		["chinHeightMm", W.chinHeight, 1e-9],
		["shoulderHeightMm", W.shoulderHeight, 0.004],
	] as const)("%s within %d", (name, fraction, tolerance) => {
		expect(Math.abs(body[name].value / h - fraction)).toBeLessThan(
			tolerance + 1e-9,
		);
	});

	test("hand within 4 %, upper arm between joints within 4 %", () => {
		expect(Math.abs(body.handLengthMm.value / (W.hand * h) - 1)).toBeLessThan(
			0.04,
		);
		const upperArm = UPPER_ARM_LINK_SHARE * body.shoulderToElbowMm.value;
		expect(Math.abs(upperArm / (W.upperArm * h) - 1)).toBeLessThan(0.04);
	});

	test("known disagreements: shoulders 9 to 15 % narrower, hip landmark 18 to 30 mm lower", () => {
		const excess =
			(2 * W.halfShoulderWidth * h) / body.shoulderBreadthMm.value - 1;
		expect(excess).toBeGreaterThan(0.08);
		expect(excess).toBeLessThan(0.16);
		const lower = W.hipHeight * h - body.hipHeightMm.value;
		expect(lower).toBeGreaterThan(17);
		expect(lower).toBeLessThan(31);
	});
});

test("the upper arm's link leaves out the elbow's thickness: 0.925 is the two sexes' mean of .1909/.2071 and .1911/.2053", () => {
	const { male, female } = UPPER_ARM_SHARES;
	const mean =
		(male.toJoint / male.toUnderside + female.toJoint / female.toUnderside) / 2;
	expect(UPPER_ARM_LINK_SHARE).toBeCloseTo(mean, 2);
});

test("thigh, shank and ankle make up the hip height: .245 + .246 + .039 = .530", () => {
	expect(0.245 + 0.246 + 0.039).toBeCloseTo(W.hipHeight, 9);
	expect(LEG_SHARES.thigh).toBeCloseTo(0.245 / W.hipHeight, 3);
	expect(LEG_SHARES.shank).toBeCloseTo(0.246 / W.hipHeight, 3);
	expect(LEG_SHARES.ankle).toBeCloseTo(0.039 / W.hipHeight, 3);
});
