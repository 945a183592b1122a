import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import { BODY_LENGTHS } from "@/lib/player/populations";

describe("what was measured stands", () => {
	test("readings come back unchanged, marked measured, with a small sd", () => {
		const body = must(
			bodyFrom({
				statureMm: 1803,
				armSpanMm: 1850,
				sex: "male",
				handLengthMm: 201,
				shoulderToElbowMm: 372,
				elbowToGripMm: 361,
				shoulderBreadthMm: 410,
			}),
		);
		expect(body.statureMm.value).toBe(1803);
		expect(body.elbowToGripMm).toMatchObject({
			value: 361,
			standing: "measured",
		});
		expect(body.shoulderBreadthMm.value).toBe(410);
		expect(body.handLengthMm.sd).toBeLessThan(4);
		expect(body.cautions).toEqual([]);
	});

	test("span beside stature narrows forearm to grip from about 12 to about 8.5 mm", () => {
		const alone = must(bodyFrom({ statureMm: 1756, sex: "male" }));
		const both = must(
			bodyFrom({ statureMm: 1756, armSpanMm: 1814, sex: "male" }),
		);
		expect(alone.elbowToGripMm.sd).toBeGreaterThan(11.5);
		expect(alone.elbowToGripMm.sd).toBeLessThan(12.5);
		expect(both.elbowToGripMm.sd).toBeGreaterThan(8.3);
		expect(both.elbowToGripMm.sd).toBeLessThan(9);
	});
});

describe("what was not", () => {
	test("nothing known: mean adult, wide, said to be so", () => {
		const body = must(bodyFrom({}));
		expect(body.statureMm.value).toBeCloseTo((1756.21 + 1628.47) / 2, 6);
		expect(body.statureMm.sd).toBeGreaterThan(85);
		expect(body.statureMm.standing).toBe("published");
		expect(body.cautions).toContainEqual({ code: "stature-estimated" });
	});

	test("a child of ten: stature of that age", () => {
		const body = must(bodyFrom({ ageYears: 10 }));
		expect(body.isChildModel).toBe(true);
		expect(body.statureMm.value).toBeGreaterThan(1379);
		expect(body.statureMm.value).toBeLessThan(1387);
		expect(body.statureMm.sources).toEqual(["cdc-2000"]);
	});

	test("sex left out: between the two, and wider than either", () => {
		const of = (sex?: "female" | "male") =>
			must(bodyFrom({ statureMm: 1690, sex })).shoulderBreadthMm;
		const [f, m, open] = [of("female"), of("male"), of()];
		expect(open.value).toBeGreaterThan(f.value);
		expect(open.value).toBeLessThan(m.value);
		expect(open.sd).toBeGreaterThan(Math.max(f.sd, m.sd));
	});

	test("span alone gives a stature", () => {
		const body = must(bodyFrom({ armSpanMm: 1814, sex: "male" }));
		expect(body.statureMm.value).toBeCloseTo(1756, -0.5);
		expect(body.statureMm.standing).toBe("derived");
		expect(body.statureMm.sd).toBeLessThan(45);
	});
});

describe("the two models meet", () => {
	test("no jump over the fade in stature (no age) or in age", () => {
		let before: number | null = null;
		for (let statureMm = 1380; statureMm <= 1520; statureMm += 2) {
			const now = must(bodyFrom({ statureMm })).elbowToGripMm.value;
			if (before !== null) expect(now - before).toBeGreaterThan(-0.2);
			if (before !== null) expect(now - before).toBeLessThan(1.2);
			before = now;
		}
	});

	test("shoulder breadth of a child is not the adults' line", () => {
		// Source's own comparison: the adult line over-predicts boys under 1.45 m by 63 mm.
		const child = must(bodyFrom({ statureMm: 1300, ageYears: 9, sex: "male" }));
		const adultLine = 155.08935 + 0.14838 * 1300;
		expect(adultLine - child.shoulderBreadthMm.value).toBeGreaterThan(50);
		expect(adultLine - child.shoulderBreadthMm.value).toBeLessThan(76);
	});
});

describe("refusals and notices", () => {
	test.each([
		[{ statureMm: 175 }, "statureMm", 900, 2300],
		[{ statureMm: Number.NaN }, "statureMm", 900, 2300],
		[{ ageYears: 3 }, "ageYears", 4, 110],
		[{ handLengthMm: 300 }, "handLengthMm", 90, 250],
		[{ gripCircleReadingsMm: [29, 80] }, "gripCircleReadingsMm.1", 15, 70],
	])("%j", (measures, field, min, max) => {
		const outcome = bodyFrom(measures);
		expect(outcome.ok).toBe(false);
		if (!outcome.ok)
			expect(outcome.refusals[0]).toMatchObject({
				code: "out-of-range",
				field,
				min,
				max,
			});
	});

	test("a span that cannot belong to that stature is pointed out, not corrected", () => {
		const body = must(bodyFrom({ statureMm: 1600, armSpanMm: 1950 }));
		expect(body.armSpanMm.value).toBe(1950);
		expect(body.cautions.map((c) => c.code)).toContain("reading-unexpected");
	});

	test("stature beyond the survey", () => {
		const body = must(bodyFrom({ statureMm: 2050, ageYears: 30 }));
		expect(body.cautions).toContainEqual({
			code: "outside-source-range",
			facts: { field: "statureMm", value: 2050, min: 1409, max: 1993 },
		});
	});
});

test("every answer within bounds gives finite lengths with positive spread", () => {
	const maybe = (min: number, max: number) =>
		fc.option(fc.double({ min, max, noNaN: true }), { nil: undefined });
	fc.assert(
		fc.property(
			fc.record({
				statureMm: maybe(900, 2300),
				armSpanMm: maybe(850, 2500),
				ageYears: maybe(4, 110),
				sex: fc.constantFrom("female" as const, "male" as const, undefined),
				handLengthMm: maybe(90, 250),
				elbowToGripMm: maybe(150, 500),
			}),
			(measures) => {
				const body = must(bodyFrom(measures));
				for (const name of BODY_LENGTHS) {
					expect(Number.isFinite(body[name].value)).toBe(true);
					expect(body[name].sd).toBeGreaterThan(0);
				}
			},
		),
		{ numRuns: 300, seed: 11 },
	);
});
