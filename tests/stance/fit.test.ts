import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import { figureFrom } from "@/lib/stance/figure";
import { type StyleValues, solveLinkage } from "@/lib/stance/linkage";
import { reachFrom } from "@/lib/stance/reach";
import { spanSlopes } from "@/lib/stance/spread";
import { standAt } from "@/lib/stance/stand";

const stand = (statureMm: number, answers: object = {}) =>
	must(
		standAt({
			body: must(bodyFrom({ statureMm })),
			answers: { gameId: "snooker", ...answers },
		}),
	);

describe("style fitted to a measured span", () => {
	test("any span within three spreads is met to a micrometre, the style moving no more than it must", () => {
		fc.assert(
			fc.property(
				fc.double({ min: 1450, max: 1950, noNaN: true }),
				fc.double({ min: -3, max: 3, noNaN: true }),
				(statureMm, spreads) => {
					const body = must(bodyFrom({ statureMm }));
					const plain = must(
						reachFrom({ body, answers: { gameId: "snooker" } }),
					);
					const { value, sd } = plain.predictedSpanMm;
					const bridgeToGripMm = value + spreads * sd;
					const s = stand(statureMm, { bridgeToGripMm });
					expect(s.fit?.converged).toBe(true);
					expect(s.linkage.spanMm).toBeCloseTo(bridgeToGripMm, 5);
					// sd holds body and model too, so the style alone has to move further.
					expect(s.fit?.distanceSd).toBeLessThan(2 * Math.abs(spreads) + 0.01);
				},
			),
			{ numRuns: 60, seed: 31 },
		);
	});

	test("stationary: at the fit each figure's move is along its own slope times variance", () => {
		const s = stand(1750, { bridgeToGripMm: 1180 });
		const { byStyle } = spanSlopes({
			lengths: s.lengths,
			style: s.values,
			at: s.at,
			linkage: s.linkage,
			styleOnly: true,
		});
		const ratios = (Object.keys(s.style) as (keyof StyleValues)[])
			.filter((n) => s.style[n].sd > 0 && Math.abs(byStyle[n]) > 0.05)
			.map(
				(n) =>
					(s.values[n] - s.style[n].value) / (byStyle[n] * s.style[n].sd ** 2),
			);
		expect(ratios.length).toBeGreaterThan(6);
		for (const r of ratios) expect(r / (ratios[0] as number)).toBeCloseTo(1, 3);
	});

	test("a longer span turns the shoulders and opens the arm; a shorter one the reverse", () => {
		const [short, usual, long] = [1000, undefined, 1200].map(
			(bridgeToGripMm) => stand(1750, { bridgeToGripMm }).values,
		) as [StyleValues, StyleValues, StyleValues];
		expect(long.yawDeg).toBeLessThan(usual.yawDeg);
		expect(short.yawDeg).toBeGreaterThan(usual.yawDeg);
		expect(long.bridgeElbowDeg).toBeGreaterThan(usual.bridgeElbowDeg);
		expect(short.bridgeElbowDeg).toBeLessThan(usual.bridgeElbowDeg);
	});

	test("a span no style reaches comes back unconverged with the number reached", () => {
		const s = stand(1500, { bridgeToGripMm: 1700 });
		expect(s.fit?.converged).toBe(false);
		expect(s.fit?.heldAtBound.length).toBeGreaterThan(0);
		expect(s.linkage.spanMm).toBeLessThan(1650);
		const reach = must(
			reachFrom({
				body: must(bodyFrom({ statureMm: 1500 })),
				answers: { gameId: "snooker", bridgeToGripMm: 1700 },
			}),
		);
		const codes = reach.cautions.map((c) => c.code);
		expect(codes).toContain("span-not-reached");
		expect(codes).toContain("span-unexpected");
		expect(reach.bridgeToGripMm.value).toBe(1700);
		expect(reach.pose.converged).toBe(false);
	});

	test("bridge, grip point and the cue in hand together measure the span", () => {
		const s = stand(1750, {
			cueInHandMm: 1473,
			bridgeLengthMm: 260,
			gripFromButtMm: 90,
		});
		expect(s.measuredSpan?.valueMm).toBe(1473 - 260 - 90);
		expect(s.linkage.spanMm).toBeCloseTo(1123, 5);
	});
});

describe("slopes of the span by implicit differentiation", () => {
	test.each([
		["free", {}],
		["limited trunk", { trunkMaxDeg: 40 }],
		["seated", { seated: true }],
	])("%s: equal to solving again with the figure moved", (_name, answers) => {
		const s = stand(1720, answers);
		const { byLength, byStyle } = spanSlopes({
			lengths: s.lengths,
			style: s.values,
			at: s.at,
			linkage: s.predicted,
		});
		const again = (lengths: readonly number[], style: StyleValues) =>
			solveLinkage(figureFrom(lengths), style, s.at).spanMm;
		for (const name of Object.keys(byStyle) as (keyof StyleValues)[]) {
			const h = name === "legDropRatio" ? 1e-4 : 1e-3;
			const moved = (by: number) =>
				again(s.lengths, { ...s.values, [name]: s.values[name] + by });
			expect(byStyle[name]).toBeCloseTo((moved(h) - moved(-h)) / (2 * h), 2);
		}
		for (const [i, slope] of byLength.entries()) {
			const moved = (by: number) =>
				again(s.lengths.with(i, (s.lengths[i] as number) + by), s.values);
			expect(slope).toBeCloseTo((moved(0.05) - moved(-0.05)) / 0.1, 3);
		}
	});
});
