import { describe, expect, test } from "vitest";
import {
	compareLine,
	comparePosition,
	lineScore,
	positionScore,
} from "@/lib/trial/scores";
import type { Shot, ShotLine, ShotPosition } from "@/lib/trial/shots";

const shots = (
	cueId: string,
	counts: Partial<Record<ShotLine | ShotPosition, number>>,
): Shot[] =>
	Object.entries(counts).flatMap(([score, count]) =>
		Array.from({ length: count }, (_, i): Shot => {
			const shot = { cueId, isPotted: true, pair: i };
			return ["left", "on", "right"].includes(score)
				? { ...shot, line: score as ShotLine }
				: { ...shot, position: score as ShotPosition };
		}),
	);

describe("position", () => {
	test("mean of 1, ½ and 0, pulled a little to the middle", () => {
		const score = positionScore(shots("a", { good: 20, near: 10, lost: 10 }));
		expect(score?.counts).toEqual({ good: 20, near: 10, lost: 10 });
		// (20.5·1 + 10.5·½ + 10.5·0)/41.5 by hand.
		expect(score?.value).toBeCloseTo(25.75 / 41.5, 12);
		expect(score?.low).toBeLessThan(25.75 / 41.5);
	});
	test("its spread is that of repeated shots, by the textbook formula", () => {
		const score = positionScore(
			shots("a", { good: 200, near: 100, lost: 100 }),
		);
		const mean = 0.625;
		const variance = (200 + 100 / 4) / 400 - mean ** 2;
		expect(score?.sd).toBeCloseTo(Math.sqrt(variance / 400), 3);
	});
	test("nothing without a scored shot", () => {
		expect(positionScore([{ cueId: "a", isPotted: true }])).toBeNull();
		expect(
			comparePosition(shots("a", { good: 3 }), ["a", "b"], false),
		).toBeNull();
	});
	test("two cues are told apart where they are, and not where they are not", () => {
		const apart = comparePosition(
			[
				...shots("a", { good: 30, near: 6, lost: 4 }),
				...shots("b", { good: 10, near: 10, lost: 20 }),
			],
			["a", "b"],
			false,
		);
		expect(apart?.low).toBeGreaterThan(0);
		expect(apart?.luckChance).toBeLessThan(0.001);
		const alike = comparePosition(
			[
				...shots("a", { good: 10, near: 6, lost: 4 }),
				...shots("b", { good: 9, near: 7, lost: 4 }),
			],
			["a", "b"],
			false,
		);
		expect(alike?.luckChance).toBeGreaterThan(0.5);
	});
	test("on pairs only the pairs count", () => {
		const paired = comparePosition(
			[...shots("a", { good: 8 }), ...shots("b", { lost: 8 })],
			["a", "b"],
			true,
		);
		// All eight pairs won: 2/2⁸.
		expect(paired?.luckChance).toBeCloseTo(2 / 256, 12);
	});
});

describe("line", () => {
	test("share on the line, and whether the rest leans to one side", () => {
		const score = lineScore(shots("a", { left: 9, on: 30, right: 1 }));
		expect(score).toMatchObject({ left: 9, on: 30, right: 1, shots: 40 });
		expect(score?.onLine.value).toBeCloseTo(30.5 / 41, 12);
		// Nine of ten on one side: 2 (1 + 10)/2¹⁰.
		expect(score?.leanLuckChance).toBeCloseTo(22 / 1024, 12);
	});
	test("nothing without a noted line; two cues compared as shares", () => {
		expect(lineScore([{ cueId: "a", isPotted: true }])).toBeNull();
		const compared = compareLine(
			[
				...shots("a", { on: 28, left: 2 }),
				...shots("b", { on: 15, right: 15 }),
			],
			["a", "b"],
			false,
		);
		expect(compared?.low).toBeGreaterThan(0.2);
		expect(compared?.luckChance).toBeLessThan(0.001);
	});
});
