import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { growthPlan } from "@/lib/stance/growth-plan";

const plan = (p: Partial<Parameters<typeof growthPlan>[0]> = {}) =>
	must(
		growthPlan({
			measures: { statureMm: 1490, ageYears: 12, sex: "male" },
			answers: { gameId: "snooker" },
			today: "2026-08-31",
			...p,
		}),
	);

describe("a boy of twelve", () => {
	test("length only grows, the range with the horizon, today's lack is none", () => {
		const { steps, cueLengthMm } = plan();
		expect(steps[0]?.lengthMm.value).toBeCloseTo(cueLengthMm, 6);
		expect(steps[0]?.fitting).toBe("as-it-is");
		for (let i = 1; i < steps.length; i++) {
			const [a, b] = [steps[i - 1], steps[i]];
			expect(b?.lengthMm.value).toBeGreaterThan(a?.lengthMm.value as number);
			expect(b?.lackMm.high).toBeGreaterThan(a?.lackMm.high as number);
		}
		expect(steps.at(-1)?.fitting).toBe("end-piece");
	});

	test("measure again in six months, by date", () => {
		expect(plan()).toMatchObject({
			remeasureMonths: 6,
			remeasureOn: "2027-02-28",
		});
	});

	test("a span measured today moves every later length by the same", () => {
		const plain = plan();
		const { lengthMm } = plain.steps[0] as (typeof plain.steps)[0];
		const measured = plan({
			answers: { gameId: "snooker", bridgeToGripMm: 1000 },
		});
		const gap = (measured.steps[0]?.lengthMm.value as number) - lengthMm.value;
		expect(Math.abs(gap)).toBeGreaterThan(1);
		for (const [i, step] of measured.steps.entries())
			expect(
				step.lengthMm.value - (plain.steps[i]?.lengthMm.value as number),
			).toBeCloseTo(gap, 6);
	});

	test("the ring grows with the hand", () => {
		const { steps } = plan({
			circleMm: {
				value: 24,
				sd: 0.5,
				standing: "measured",
				sources: ["measured-here"],
			},
		});
		expect(steps[0]?.circleMm?.value).toBeCloseTo(24, 9);
		// Hands grow about as stature: 209 mm taller by the held percentile, a seventh.
		const ratio = (steps.at(-1)?.circleMm?.value as number) / 24;
		expect(ratio).toBeGreaterThan(1.08);
		expect(ratio).toBeLessThan(1.18);
	});

	test("a cue already far too short asks for an extension, then another cue", () => {
		const cueLengthMm = plan().cueLengthMm;
		expect(plan({ cueLengthMm: cueLengthMm - 200 }).steps[0]?.fitting).toBe(
			"extension",
		);
		expect(plan({ cueLengthMm: cueLengthMm - 320 }).steps[0]?.fitting).toBe(
			"new-cue",
		);
		expect(plan({ cueLengthMm: cueLengthMm - 200 }).addPieceMonths).toBeNull();
	});
});

test("a grown girl's cue stays as it is", () => {
	const { steps, addPieceMonths } = plan({
		measures: { statureMm: 1630, ageYears: 16.5, sex: "female" },
	});
	expect(steps.every((s) => s.fitting === "as-it-is")).toBe(true);
	expect(addPieceMonths?.likely ?? null).toBeNull();
});

test("refused past the growth table, with the bound", () => {
	expect(
		growthPlan({
			measures: { statureMm: 1700, ageYears: 25 },
			answers: { gameId: "snooker" },
			today: "2026-08-31",
		}),
	).toMatchObject({ ok: false, refusals: [{ field: "ageYears", max: 20 }] });
});
