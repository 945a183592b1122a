import { describe, expect, test } from "vitest";
import { seededChance, shuffled } from "@/lib/trial/chance";
import { holmAdjusted, luckPaired, luckUnpaired } from "@/lib/trial/luck";

const spread = (counts: readonly number[]) =>
	counts.flatMap((count, score) => new Array<number>(count).fill(score));
const sum = (values: readonly number[]) =>
	values.reduce((total, value) => total + value, 0);

describe("against seeded shuffling", () => {
	const RUNS = 20_000;
	const within = (seen: number, expected: number) =>
		expect(Math.abs(seen - expected)).toBeLessThan(
			4 * Math.sqrt((expected * (1 - expected)) / RUNS),
		);

	test.each([
		[
			[9, 16],
			[14, 11],
		],
		[
			[4, 6, 10],
			[7, 8, 5],
		],
	])("shots dealt to two cues: %j and %j", (first, second) => {
		const chance = seededChance(100);
		const all = [...spread(first), ...spread(second)];
		const dealt = sum(first);
		const expected = (dealt / all.length) * sum(all);
		const seen = Math.abs(sum(spread(first)) - expected);
		let asFar = 0;
		for (let i = 0; i < RUNS; i++)
			if (
				Math.abs(sum(shuffled(all, chance).slice(0, dealt)) - expected) >=
				seen - 1e-9
			)
				asFar++;
		within(asFar / RUNS, luckUnpaired(first, second));
	});

	test("signs of pairs flipped", () => {
		const chance = seededChance(101);
		const differences = [1, 1, 2, -1, 0, 2, 1, -2, 0, 1, 1, -1];
		const seen = Math.abs(sum(differences));
		let asFar = 0;
		for (let i = 0; i < RUNS; i++)
			if (
				Math.abs(sum(differences.map((d) => (chance() < 0.5 ? d : -d)))) >= seen
			)
				asFar++;
		within(asFar / RUNS, luckPaired(differences));
	});
});

describe("what luck alone can explain", () => {
	test("everything, where nothing differs", () => {
		expect(luckUnpaired([5, 5], [5, 5])).toBeCloseTo(1, 12);
		expect(luckUnpaired([0, 0], [5, 5])).toBe(1);
		expect(luckPaired([])).toBe(1);
		expect(luckPaired([0, 0, 1, -1])).toBeCloseTo(1, 12);
	});
	test("less and less as the same difference is seen on more shots", () => {
		const chances = [1, 2, 4, 8].map((times) =>
			luckUnpaired([4 * times, 6 * times], [6 * times, 4 * times]),
		);
		expect([...chances].sort((a, b) => b - a)).toEqual(chances);
	});
	test("whichever cue comes first", () => {
		expect(luckUnpaired([3, 9], [8, 2])).toBeCloseTo(
			luckUnpaired([8, 2], [3, 9]),
			12,
		);
	});
	test("scores beyond 2 are refused", () => {
		expect(() => luckUnpaired([0, 1, 1, 1], [1])).toThrow(/scores/);
		expect(() => luckPaired([3])).toThrow(/differences/);
	});
	test("a hundred comparisons never look surer than the surest alone", () => {
		const chances = Array.from({ length: 100 }, (_, i) => (i + 1) / 200);
		const adjusted = holmAdjusted(chances);
		for (const [i, chance] of chances.entries())
			expect(adjusted[i]).toBeGreaterThanOrEqual(chance);
	});
});

test("equal cues are found apart at the 5 % level no oftener than that", () => {
	const chance = seededChance(7);
	let apart = 0;
	const trials = 2000;
	for (let i = 0; i < trials; i++) {
		const pots = () =>
			Array.from({ length: 20 }, () => chance() < 0.6).filter(Boolean).length;
		const [one, other] = [pots(), pots()];
		if (luckUnpaired([20 - one, one], [20 - other, other]) < 0.05) apart++;
	}
	expect(apart / trials).toBeLessThan(0.05 + 3 * Math.sqrt(0.0475 / trials));
});
