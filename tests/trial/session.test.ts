import { describe, expect, test } from "vitest";
import { seededChance, shuffled } from "@/lib/trial/chance";
import {
	differenceWithoutDrift,
	sessionEffects,
	trendDeviate,
} from "@/lib/trial/session";
import type { Shot } from "@/lib/trial/shots";

/** Alternating cues; `share` gives the chance of a pot by shot number and cue. */
function play(
	count: number,
	share: (i: number, cue: "one" | "two") => number,
	seed = 1,
	cueOf: (i: number) => "one" | "two" = (i) =>
		(i + Math.floor(i / 2)) % 2 === 0 ? "one" : "two",
): Shot[] {
	const chance = seededChance(seed);
	return Array.from({ length: count }, (_, i) => ({
		cueId: cueOf(i),
		isPotted: chance() < share(i, cueOf(i)),
		round: Math.floor(i / 2),
	}));
}

describe("drift", () => {
	test("its deviate is that of seeded shuffling within each cue", () => {
		const shots = play(40, () => 0.6, 5);
		const chance = seededChance(6);
		const deviates = Array.from({ length: 4000 }, () => {
			const pots = { one: [] as boolean[], two: [] as boolean[] };
			for (const { cueId, isPotted } of shots)
				pots[cueId as "one" | "two"].push(isPotted);
			const dealt = {
				one: shuffled(pots.one, chance),
				two: shuffled(pots.two, chance),
			};
			return trendDeviate(
				shots.map((shot) => ({
					...shot,
					isPotted: dealt[shot.cueId as "one" | "two"].pop() === true,
				})),
			);
		});
		const mean = deviates.reduce((sum, z) => sum + z, 0) / deviates.length;
		const square =
			deviates.reduce((sum, z) => sum + z * z, 0) / deviates.length;
		expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(4000));
		expect(Math.abs(square - 1)).toBeLessThan(0.1);
	});
	test("is found where it is, with its sign", () => {
		const { drift, warmUp } = sessionEffects(
			play(120, (i) => 0.25 + 0.6 * (i / 119)),
		);
		expect(drift?.luckChance).toBeLessThan(0.001);
		expect(drift?.atEnd).toBeGreaterThan((drift?.atStart ?? 1) + 0.3);
		expect(warmUp?.difference.high).toBeLessThan(0.05);
	});
	test("is nought where every shot was potted", () => {
		expect(trendDeviate(play(30, () => 1))).toBe(0);
	});
	test("false alarms are as rare as they say: 5 % of 800 seeded sessions", () => {
		const alarms = Array.from({ length: 800 }, (_, seed) =>
			Math.abs(trendDeviate(play(40, () => 0.6, seed))),
		).filter((deviate) => deviate > 1.96).length;
		expect(Math.abs(alarms / 800 - 0.05)).toBeLessThan(0.025);
	});
});

describe("order within a round", () => {
	test("the first turn is told from the last", () => {
		const { order } = sessionEffects(
			play(160, (i) => (i % 2 === 0 ? 0.35 : 0.75)),
		);
		expect(order?.difference.high).toBeLessThan(0);
		expect(order?.luckChance).toBeLessThan(0.01);
	});
	test("nothing is said without rounds, or on few shots", () => {
		const shots = play(40, () => 0.5).map(({ round: _, ...shot }) => shot);
		expect(sessionEffects(shots).order).toBeNull();
		expect(sessionEffects(play(12, () => 0.5))).toEqual({
			warmUp: null,
			drift: null,
			order: null,
		});
	});
});

describe("the difference with drift taken out", () => {
	test("is not taken in by a cue that was always shot late in a rising session", () => {
		const late = (i: number) => (i < 100 ? "one" : "two") as "one" | "two";
		// Some overlap, or drift and cue could not be told apart at all.
		const cueOf = (i: number) => (i % 5 === 0 ? late(199 - i) : late(i));
		const shots = play(200, (i) => 0.2 + 0.6 * (i / 199), 8, cueOf);
		const pots = (cue: string) => {
			const own = shots.filter(({ cueId }) => cueId === cue);
			return own.filter(({ isPotted }) => isPotted).length / own.length;
		};
		const raw = pots("two") - pots("one");
		const adjusted = differenceWithoutDrift(shots, "two", "one");
		expect(raw).toBeGreaterThan(0.15);
		expect(Math.abs(adjusted.value)).toBeLessThan(raw / 2);
		expect(adjusted.low).toBeLessThan(0);
		expect(adjusted.high).toBeGreaterThan(0);
	});
	test("turns round with the cues, and is near the plain one in a balanced order", () => {
		const shots = play(200, (_, cue) => (cue === "one" ? 0.75 : 0.5), 21);
		const one = differenceWithoutDrift(shots, "one", "two");
		const other = differenceWithoutDrift(shots, "two", "one");
		expect(one.value).toBeCloseTo(-other.value, 10);
		expect(one.low).toBeCloseTo(-other.high, 10);
		const share = (cue: string) => {
			const own = shots.filter(({ cueId }) => cueId === cue);
			return own.filter(({ isPotted }) => isPotted).length / own.length;
		};
		expect(one.value).toBeCloseTo(share("one") - share("two"), 1);
	});
	test("stays finite where one cue never missed", () => {
		const { value, low, high } = differenceWithoutDrift(
			play(40, (_, cue) => (cue === "one" ? 1 : 0.5), 2),
			"one",
			"two",
		);
		for (const number of [value, low, high])
			expect(Number.isFinite(number)).toBe(true);
		expect(value).toBeGreaterThan(0.2);
	});
});
