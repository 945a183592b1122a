import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { must } from "@/lib/numerics/outcome";
import type { Estimate } from "@/lib/reference/estimate";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { shotProfile } from "@/lib/shot/profile";

const known = (value: number, sd: number): Estimate => ({
	value,
	sd,
	standing: "measured",
	sources: ["measured-here"],
});
const input = {
	gameId: "snooker" as GameId,
	cueMassG: known(510, 5),
	endMassG: known(5, 0.8),
	armMassG: known(600, 90),
	tipDiameterMm: 9.5,
};

describe("what a cue does to its game's ball", () => {
	const profile = must(shotProfile(input));

	it("at the centre both speed models agree; further out they part", () => {
		const gaps = profile.offsets.map((point) => point.modelGapFraction ?? 1);
		expect(gaps[0]).toBeCloseTo(0, 12);
		for (let i = 1; i < gaps.length; i++)
			expect(gaps[i]).toBeGreaterThan(gaps[i - 1] as number);
	});

	it("the band of the ball's speed holds both published answers", () => {
		const ball = GAMES.snooker.cueBall.massG.value;
		for (const point of profile.offsets) {
			const inertia = 1 + ball / 510 + 2.5 * point.offsetRatio ** 2;
			const constantRestitution = (2 * 1.73) / inertia;
			const { value, sd } = point.ballSpeedMPerS;
			expect(Math.abs(constantRestitution - value)).toBeLessThanOrEqual(
				sd + 1e-12,
			);
		}
	});

	it("spin and deflection start at nothing and grow with the offset", () => {
		const { offsets } = profile;
		expect(offsets[0]?.spinRatio).toBe(0);
		expect(offsets[0]?.squirtDeg.value).toBe(0);
		expect(offsets[0]?.pivotLengthMm).toBeNull();
		for (let i = 1; i < offsets.length; i++) {
			expect(offsets[i]?.spinRatio).toBeGreaterThan(
				offsets[i - 1]?.spinRatio ?? 9,
			);
			expect(offsets[i]?.squirtDeg.value).toBeGreaterThan(
				offsets[i - 1]?.squirtDeg.value ?? 9,
			);
			expect(offsets[i]?.pivotLengthMm?.sd).toBeGreaterThan(0);
		}
	});

	it("marks offsets past the miscue limit or the dome as unusable", () => {
		expect(profile.usableOffsetRatio).toBe(0.5);
		for (const point of profile.offsets)
			expect(point.isUsable).toBe(point.offsetRatio <= 0.5);
		const narrow = must(shotProfile({ ...input, tipDiameterMm: 8 }));
		expect(narrow.usableOffsetRatio).toBeCloseTo(4 / 8.9535, 4);
	});

	it("every game has its own ball: lighter ones leave faster and are deflected more", () => {
		const at = (gameId: GameId) => must(shotProfile({ ...input, gameId }));
		const order: GameId[] = [
			"english-eight-ball",
			"snooker",
			"american-pool",
			"carom",
		];
		for (let i = 1; i < order.length; i++) {
			const [light, heavy] = [
				at(order[i - 1] as GameId),
				at(order[i] as GameId),
			];
			expect(light.centreSpeedRatio.value).toBeGreaterThan(
				heavy.centreSpeedRatio.value,
			);
			expect(light.offsets[8]?.squirtDeg.value).toBeGreaterThan(
				heavy.offsets[8]?.squirtDeg.value ?? 99,
			);
			expect(light.bestMassG.value).toBeLessThan(heavy.bestMassG.value);
		}
	});

	it("at equal cue speed heavier is always faster; at equal effort one weight is best", () => {
		const { weights, bestMassG } = profile;
		for (let i = 1; i < weights.length; i++)
			expect(weights[i]?.equalSpeedRatio.value).toBeGreaterThan(
				weights[i - 1]?.equalSpeedRatio.value ?? 9,
			);
		const best = weights.reduce((a, b) =>
			a.equalEffortFraction.value > b.equalEffortFraction.value ? a : b,
		);
		expect(Math.abs(best.cueMassG - bestMassG.value)).toBeLessThanOrEqual(10);
	});

	it("bands widen with what is not known", () => {
		const vague = must(
			shotProfile({
				...input,
				endMassG: known(5, 2),
				armMassG: known(600, 200),
			}),
		);
		expect(vague.offsets[10]?.squirtDeg.sd).toBeGreaterThan(
			profile.offsets[10]?.squirtDeg.sd ?? 9,
		);
		expect(vague.bestMassG.sd).toBeGreaterThan(profile.bestMassG.sd);
	});

	it("no figure is ever other than finite", () => {
		const inputs = fc.record({
			gameId: fc.constantFrom(...(Object.keys(GAMES) as GameId[])),
			cueMassG: fc
				.double({ min: 200, max: 1000, noNaN: true })
				.map((g) => known(g, 5)),
			endMassG: fc
				.double({ min: 1, max: 40, noNaN: true })
				.map((g) => known(g, g / 5)),
			armMassG: fc
				.double({ min: 50, max: 3000, noNaN: true })
				.map((g) => known(g, g / 5)),
			tipDiameterMm: fc.double({ min: 7, max: 14, noNaN: true }),
			domeRadiusMm: fc.double({ min: 4, max: 25, noNaN: true }),
			cueSpeedMPerS: fc.double({ min: 0.1, max: 15, noNaN: true }),
		});
		const walk = (value: unknown): void => {
			if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
			else if (Array.isArray(value)) value.forEach(walk);
			else if (value !== null && typeof value === "object")
				Object.values(value).forEach(walk);
		};
		fc.assert(
			fc.property(inputs, (p) => {
				walk(must(shotProfile(p)));
			}),
			{ numRuns: 50 },
		);
	});

	it("refuses what lies outside, naming field, value and bounds, all at once", () => {
		const refused = shotProfile({
			...input,
			cueMassG: known(50, 1),
			tipDiameterMm: 20,
			cueSpeedMPerS: Number.NaN,
		});
		expect(refused.ok).toBe(false);
		if (refused.ok) return;
		expect(refused.refusals).toEqual([
			{
				code: "out-of-range",
				field: "cueMassG",
				value: 50,
				min: 200,
				max: 1000,
			},
			{
				code: "out-of-range",
				field: "tipDiameterMm",
				value: 20,
				min: 7,
				max: 14,
			},
			{
				code: "out-of-range",
				field: "cueSpeedMPerS",
				value: Number.NaN,
				min: 0.1,
				max: 15,
			},
		]);
	});
});
