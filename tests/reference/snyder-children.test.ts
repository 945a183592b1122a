/**
 * Snyder et al. 1977, children 6 to 18: regressions on stature computed from the public data without a
 * hold-out sample, with that sample's root mean square error and outliers.
 */
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import { ADULT_BY_STATURE } from "@/lib/reference/body-adult";
import { CHILD_BY_STATURE } from "@/lib/reference/body-child";

describe("regressions", () => {
	// Printed to three decimals of the intercept and five of the slope; residual SD to two.
	test.each([
		["male", "shoulderElbow", -17.958, 0.2208, 8.98],
		["male", "elbowHand", -30.477, 0.29006, 11.67],
		["male", "handLength", 4.907, 0.10588, 6.58],
		["male", "biacromial", 2.818, 0.21622, 13.66],
		["female", "shoulderElbow", -20.702, 0.2212, 9.47],
		["female", "elbowHand", -12.018, 0.2727, 12.99],
		["female", "handLength", 12.465, 0.09931, 6.59],
		["female", "biacromial", 28.878, 0.19948, 14.39],
	] as const)("%s %s", (sex, name, a, b, sd) => {
		const own = CHILD_BY_STATURE[sex][name];
		expect(own.interceptMm).toBeCloseTo(a, 2);
		expect(own.perStature).toBeCloseTo(b, 5);
		expect(own.residualSdMm).toBeCloseTo(sd, 2);
	});

	test("give back the survey's means at twelve: boys 1484 mm, girls 1493 mm", () => {
		const at = (
			sex: "male" | "female",
			name: "elbowHand" | "handLength",
			h: number,
		) =>
			CHILD_BY_STATURE[sex][name].interceptMm +
			CHILD_BY_STATURE[sex][name].perStature * h;
		// Means 399.9 and 162.4 (boys), 399.5 and 162.8 (girls): within half a residual SD.
		expect(Math.abs(at("male", "elbowHand", 1484) - 399.9)).toBeLessThan(6);
		expect(Math.abs(at("male", "handLength", 1484) - 162.4)).toBeLessThan(3.3);
		expect(Math.abs(at("female", "elbowHand", 1493) - 399.5)).toBeLessThan(6.5);
		expect(Math.abs(at("female", "handLength", 1493) - 162.8)).toBeLessThan(
			3.3,
		);
	});
});

describe("a child's body", () => {
	test.each(["male", "female"] as const)(
		"%s: stature alone is the survey's line and spread",
		(sex) => {
			for (const statureMm of [1200, 1350, 1500]) {
				const body = must(bodyFrom({ statureMm, ageYears: 10, sex }));
				for (const [name, line] of [
					["shoulderToElbowMm", CHILD_BY_STATURE[sex].shoulderElbow],
					["handLengthMm", CHILD_BY_STATURE[sex].handLength],
					["shoulderBreadthMm", CHILD_BY_STATURE[sex].biacromial],
				] as const) {
					expect(body[name].value).toBeCloseTo(
						line.interceptMm + line.perStature * statureMm,
						6,
					);
					expect(body[name].sd).toBeCloseTo(
						Math.hypot(line.residualSdMm, 6 * line.perStature),
						1,
					);
					expect(body[name].sources).toEqual(["snyder-1977"]);
				}
			}
		},
	);

	test("median boy 12 to 14: grip centre about 31 mm further from the elbow", () => {
		const at = (statureMm: number, ageYears: number) =>
			must(bodyFrom({ statureMm, ageYears, sex: "male" })).elbowToGripMm.value;
		expect(at(1638.4, 14) - at(1490.5, 12)).toBeCloseTo(31.1, 1);
	});

	test("adults' lines on children under 1.45 m miss as published: biacromial by 63 / 26 mm", () => {
		const miss = (sex: "male" | "female", h: number) => {
			const adult = ADULT_BY_STATURE[sex].biacromial;
			const child = CHILD_BY_STATURE[sex].biacromial;
			return (
				adult.interceptMm +
				adult.perStature * h -
				child.interceptMm -
				child.perStature * h
			);
		};
		expect(Math.abs(miss("male", 1300) - 63)).toBeLessThan(5);
		expect(Math.abs(miss("female", 1300) - 26)).toBeLessThan(5);
	});

	test("a long span lengthens the arm and narrows it, by the adults' slope", () => {
		const alone = must(
			bodyFrom({ statureMm: 1400, ageYears: 11, sex: "male" }),
		);
		const long = must(
			bodyFrom({ statureMm: 1400, armSpanMm: 1450, ageYears: 11, sex: "male" }),
		);
		expect(long.elbowToGripMm.value).toBeGreaterThan(
			alone.elbowToGripMm.value + 5,
		);
		expect(long.elbowToGripMm.sd).toBeLessThan(alone.elbowToGripMm.sd);
		expect(long.armSpanMm.standing).toBe("measured");
	});
});
