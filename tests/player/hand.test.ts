import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import {
	closureMm,
	diameterEstimateForClosure,
	diameterForClosureMm,
	gripCircleFrom,
} from "@/lib/player/hand";
import type { Estimate } from "@/lib/reference/estimate";

const hand: Estimate = {
	value: 193.3,
	sd: 7.4,
	standing: "derived",
	sources: ["ansur-2"],
};
const from = (...readingsMm: number[]) =>
	must(gripCircleFrom({ readingsMm, handLengthMm: hand }));

describe("grip circle", () => {
	test("mean of the readings; more readings, less doubt; never below the gauge's own", () => {
		const [one, three, many] = [
			from(30),
			from(29.5, 30, 30.5),
			from(...new Array(200).fill(30)),
		];
		expect(three.circleMm.value).toBeCloseTo(30, 12);
		expect(three.circleMm.sd).toBeLessThan(one.circleMm.sd);
		expect(many.circleMm.sd).toBeGreaterThan(1 / Math.sqrt(12));
		expect(one.cautions).toContainEqual({ code: "single-reading" });
		expect(three.cautions).toEqual([]);
		expect(three.spreadMm).toBeCloseTo(1, 12);
	});

	test("readings that disagree widen the doubt and are pointed out", () => {
		const apart = from(27, 33);
		expect(apart.cautions[0]).toMatchObject({
			code: "readings-disagree",
			facts: { spreadMm: 6 },
		});
		expect(apart.circleMm.sd).toBeGreaterThan(
			from(29.9, 30.1).circleMm.sd * 1.5,
		);
	});

	test("no reading: wide, from hand length, marked assumed", () => {
		const guess = from();
		expect(guess.circleMm.value).toBeCloseTo(0.142 * 193.3, 9);
		expect(guess.circleMm.standing).toBe("assumed");
		expect(guess.circleMm.sd).toBeGreaterThan(3);
		expect(guess.cautions).toContainEqual({ code: "grip-circle-assumed" });
	});

	test("a ring larger than the hand's largest grip is pointed out", () => {
		expect(from(62, 62).cautions.map((c) => c.code)).toContain(
			"ring-above-largest-grip",
		);
	});

	test("a reading outside what the gauge holds is refused by place", () => {
		const outcome = gripCircleFrom({
			readingsMm: [30, 12],
			handLengthMm: hand,
		});
		expect(outcome).toMatchObject({
			ok: false,
			refusals: [
				{ field: "gripCircleReadingsMm.1", value: 12, min: 15, max: 70 },
			],
		});
	});
});

test("diameter and closure undo each other; the circle's doubt passes through", () => {
	const diameterMm = diameterForClosureMm({ circleMm: 29, closureMm: -4 });
	expect(closureMm({ circleMm: 29, diameterMm })).toBeCloseTo(-4, 12);
	const circle = from(29, 29);
	expect(diameterEstimateForClosure({ circle, closureMm: 0 })).toEqual(
		circle.circleMm,
	);
});
