/** ISO 11226:2000 holding times as printed in a summary of the standard; every row within 1 s. */
import { describe, expect, test } from "vitest";
import { HEAD_LIMITS, TRUNK_LIMITS } from "@/lib/reference/posture";
import { holdOf, postureNotice } from "@/lib/stance/posture";

const clock = (m: number, s: number) => 60 * m + s;

describe("trunk", () => {
	test.each([
		[20, clock(4, 0)],
		[30, clock(3, 15)],
		[40, clock(2, 30)],
		[50, clock(1, 45)],
		[60, clock(1, 0)],
	])("%i°", (angle, seconds) => {
		expect(holdOf(TRUNK_LIMITS, angle).longestS).toBeCloseTo(seconds, 9);
	});
});

describe("head", () => {
	test.each([
		[25, clock(8, 0)],
		[35, clock(6, 50)],
		[45, clock(5, 40)],
		[55, clock(4, 30)],
		[65, clock(3, 20)],
		[75, clock(2, 10)],
		[85, clock(1, 0)],
	])("%i°", (angle, seconds) => {
		expect(holdOf(HEAD_LIMITS, angle).longestS).toBeCloseTo(seconds, 9);
	});
});

test("the rows in the project's table lie on the line", () => {
	for (const limits of [TRUNK_LIMITS, HEAD_LIMITS])
		for (const [angle, minutes] of limits.rows)
			expect(holdOf(limits, angle).longestS).toBeCloseTo(60 * minutes, 6);
});

test("outside the rows: no time printed below, none accepted above or bent back", () => {
	expect(holdOf(TRUNK_LIMITS, 15)).toMatchObject({
		zone: "no-limit-printed",
		longestS: null,
	});
	expect(holdOf(TRUNK_LIMITS, 60.01)).toMatchObject({
		zone: "past-limit",
		longestS: null,
	});
	expect(holdOf(HEAD_LIMITS, -2)).toMatchObject({
		zone: "past-limit",
		bentBack: true,
	});
});

describe("notice", () => {
	const angles = {
		cueElevation: 3,
		shoulderYaw: 50,
		bridgeElbow: 150,
		gripElbow: 90,
		gripUpperArmRise: 20,
		forearmTilt: 0,
	};
	test("a low stance: trunk past 60° and neck bent back", () => {
		const notice = postureNotice({
			anglesDeg: {
				...angles,
				trunkInclination: 74,
				headInclination: 28,
				neck: -46,
				sideBend: -24,
			},
			junior: false,
		});
		expect(notice.trunk.zone).toBe("past-limit");
		expect(notice.neckZone).toBe("past-limit");
		expect(notice.shortestHoldS).toBeNull();
		expect(notice.cautions.map((c) => c.code)).toEqual([
			"posture-past-static-limits",
			"posture-asymmetric",
			"stand-up-between-shots",
		]);
	});

	test("an upright one: the shorter of the two times; juniors are told the limits are not theirs", () => {
		const notice = postureNotice({
			anglesDeg: {
				...angles,
				trunkInclination: 40,
				headInclination: 55,
				neck: 15,
				sideBend: 0,
			},
			junior: true,
		});
		expect(notice.shortestHoldS).toBeCloseTo(150, 9);
		expect(notice.cautions.map((c) => c.code)).toEqual([
			"posture-time-limited",
			"posture-limits-exclude-juniors",
			"stand-up-between-shots",
		]);
	});

	test("no code calls a posture free of harm", () => {
		for (const trunkInclination of [0, 30, 80]) {
			const text = JSON.stringify(
				postureNotice({
					anglesDeg: {
						...angles,
						trunkInclination,
						headInclination: 10,
						neck: 5,
						sideBend: 0,
					},
					junior: false,
				}),
			);
			expect(text).not.toMatch(/safe|harmless|fine|acceptable/i);
		}
	});
});
