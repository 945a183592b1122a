import { describe, expect, test } from "vitest";
import { seededChance } from "@/lib/trial/chance";
import {
	pairedDifference,
	posterior,
	unpairedDifference,
} from "@/lib/trial/difference";
import { luckPaired } from "@/lib/trial/luck";
import {
	pairsForPower,
	shotsForPower,
	shotsForWidth,
	shotsNeeded,
} from "@/lib/trial/more-shots";

describe("shots for a width", () => {
	test("give that width when they are made: within 3 % of ±10 points", () => {
		for (const [p, q] of [
			[0.5, 0.6],
			[0.8, 0.7],
			[0.35, 0.35],
		] as const) {
			const shots = shotsForWidth(p * (1 - p) + q * (1 - q), 0.1);
			const { low, high } = unpairedDifference(
				posterior(p * shots, (1 - p) * shots),
				posterior(q * shots, (1 - q) * shots),
			);
			expect((high - low) / 2 / 0.1).toBeGreaterThan(0.97);
			expect((high - low) / 2 / 0.1).toBeLessThan(1.03);
		}
	});
	test("on pairs too", () => {
		const [both, onlyFirst, onlySecond, neither] = [0.5, 0.2, 0.1, 0.2];
		const pairs = shotsForWidth(0.3 - 0.01, 0.1);
		const { low, high } = pairedDifference({
			both: both * pairs,
			onlyFirst: onlyFirst * pairs,
			onlySecond: onlySecond * pairs,
			neither: neither * pairs,
		});
		expect((high - low) / 2 / 0.1).toBeGreaterThan(0.95);
		expect((high - low) / 2 / 0.1).toBeLessThan(1.03);
	});
	test("half the width takes four times the shots", () => {
		expect(shotsForWidth(0.48, 0.05) / shotsForWidth(0.48, 0.1)).toBeCloseTo(
			4,
			1,
		);
	});
});

describe("shots for a power", () => {
	test("see the difference about as often as promised, by seeded pairs", () => {
		const chance = seededChance(12);
		const plan = { differing: 0.3, difference: 0.15, power: 0.8, luck: 0.05 };
		const pairs = Math.ceil(pairsForPower(plan));
		const runs = 600;
		let seen = 0;
		for (let i = 0; i < runs; i++) {
			const differences = Array.from({ length: pairs }, () => {
				const draw = chance();
				return draw < 0.225 ? 1 : draw < 0.3 ? -1 : 0;
			});
			if (luckPaired(differences) < 0.05) seen++;
		}
		// The exact test is a little stricter than the normal one the plan is made by.
		expect(seen / runs).toBeGreaterThan(0.68);
		expect(seen / runs).toBeLessThan(0.87);
	});
	test("grow without bound as the difference shrinks", () => {
		const shots = [0.2, 0.1, 0.05, 0.025].map((difference) =>
			shotsForPower({
				first: 0.6 + difference,
				second: 0.6,
				power: 0.8,
				luck: 0.05,
			}),
		);
		for (const [i, count] of shots.slice(1).entries())
			expect(count / (shots[i] ?? 0)).toBeGreaterThan(3.5);
	});
});

describe("shots needed", () => {
	test("a difference hardly there is not chased", () => {
		const needed = shotsNeeded({ first: 0.61, second: 0.6, differing: null });
		expect(needed.forPower).toBeNull();
		expect(needed.forWidth.shotsEach).toBeGreaterThan(100);
	});
	test("pairs that mostly agree need fewer", () => {
		const shares = { first: 0.7, second: 0.6 };
		const pairs = shotsNeeded({ ...shares, differing: 0.2 });
		const separate = shotsNeeded({ ...shares, differing: null });
		expect(pairs.forWidth.shotsEach).toBeLessThan(separate.forWidth.shotsEach);
		expect(pairs.forPower?.shotsEach).toBeLessThan(
			separate.forPower?.shotsEach ?? 0,
		);
	});
});
