import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import type { PlayerMeasures } from "@/lib/player/measures";
import { overhangMm, reachFrom, type StanceAnswers } from "@/lib/stance/reach";

const reach = (
	measures: PlayerMeasures,
	answers: Partial<StanceAnswers> = {},
) =>
	must(
		reachFrom({
			body: must(bodyFrom(measures)),
			answers: { gameId: "snooker", ...answers },
		}),
	);

describe("measured beats assumed", () => {
	test("span, bridge and grip point as read; their sum is the length", () => {
		const r = reach(
			{ statureMm: 1750 },
			{ bridgeToGripMm: 1085, bridgeLengthMm: 240, gripFromButtMm: 130 },
		);
		expect(r.bridgeToGripMm).toMatchObject({
			value: 1085,
			standing: "measured",
		});
		expect(r.lengthMm.value).toBeCloseTo(1085 + 240 + 130, 9);
		expect(r.lengthMm.standing).toBe("measured");
		expect(r.lengthMm.sd).toBeLessThan(30);
	});

	test("each reading narrows the length", () => {
		const none = reach({ statureMm: 1750 });
		const span = reach({ statureMm: 1750, armSpanMm: 1790 });
		const table = reach({ statureMm: 1750 }, { bridgeToGripMm: 1100 });
		expect(span.lengthMm.sd).toBeLessThan(none.lengthMm.sd);
		expect(table.lengthMm.sd).toBeLessThan(span.lengthMm.sd);
	});
});

test("the preferred length leaves the preferred grip point behind the hand", () => {
	const r = reach({ statureMm: 1820 });
	expect(
		overhangMm({ reach: r, lengthMm: r.lengthMm.value }).value,
	).toBeCloseTo(r.gripFromButtMm.value, 9);
	expect(r.lengthWindowMm.low).toBeLessThan(r.lengthMm.value);
	expect(r.lengthWindowMm.high).toBeGreaterThan(r.lengthMm.value);
});

test("style moves the span the way a coach expects", () => {
	const of = (answers: Partial<StanceAnswers>) =>
		reach({ statureMm: 1780 }, answers).bridgeToGripMm.value;
	expect(of({ bridgeArm: "straight" })).toBeGreaterThan(
		of({ bridgeArm: "bent" }) + 40,
	);
	expect(of({ stance: "side-on" })).toBeGreaterThan(
		of({ stance: "square" }) + 30,
	);
});

test("length grows with stature, adult and child alike", () => {
	fc.assert(
		fc.property(
			fc.double({ min: 900, max: 2190, noNaN: true }),
			fc.double({ min: 0.5, max: 100, noNaN: true }),
			(statureMm, moreMm) => {
				const a = reach({ statureMm }).lengthMm.value;
				const b = reach({ statureMm: statureMm + moreMm }).lengthMm.value;
				expect(b).toBeGreaterThan(a);
			},
		),
		{ numRuns: 300, seed: 5 },
	);
});

test("readings outside their bounds are refused with the bound", () => {
	const body = must(bodyFrom({ statureMm: 1750 }));
	expect(
		reachFrom({ body, answers: { gameId: "snooker", bridgeToGripMm: 43 } }),
	).toMatchObject({
		ok: false,
		refusals: [{ field: "bridgeToGripMm", value: 43, min: 300, max: 1700 }],
	});
});
