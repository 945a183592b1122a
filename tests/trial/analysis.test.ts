import { describe, expect, test } from "vitest";
import { analyseTrial } from "@/lib/trial/analysis";
import type { Shot } from "@/lib/trial/shots";

/** Shots of two cues by pairs, in an ABBA order: how many pairs went which way. */
function pairs(counts: {
	both: number;
	onlyA: number;
	onlyB: number;
	neither: number;
}): Shot[] {
	const outcomes = [
		...Array(counts.both).fill([true, true]),
		...Array(counts.onlyA).fill([true, false]),
		...Array(counts.onlyB).fill([false, true]),
		...Array(counts.neither).fill([false, false]),
	] as [boolean, boolean][];
	return outcomes.flatMap(([a, b], pair): Shot[] => {
		const both: Shot[] = [
			{ cueId: "a", isPotted: a, pair, round: pair },
			{ cueId: "b", isPotted: b, pair, round: pair },
		];
		return pair % 2 === 0 ? both : both.reverse();
	});
}
const analyse = (
	shots: readonly Shot[],
	isPaired = true,
	plannedShots?: number,
) => analyseTrial({ cueIds: ["a", "b"], shots, isPaired, plannedShots });

describe("a trial of two cues", () => {
	test("counts, and compares by pairs where the set-ups were the same", () => {
		const shots = pairs({ both: 14, onlyA: 9, onlyB: 3, neither: 4 });
		const { cues, comparisons, cautions } = analyse(shots);
		expect(cues).toMatchObject([
			{ cueId: "a", shots: 30, pots: 23 },
			{ cueId: "b", shots: 30, pots: 17 },
		]);
		expect(comparisons).toMatchObject([
			{
				basis: "pairs",
				comparedShots: 30,
				pairCounts: { both: 14, onlyFirst: 9, onlySecond: 3, neither: 4 },
			},
		]);
		expect(comparisons[0]?.luckChance).toBeCloseTo(0.146, 3);
		expect(cautions).toEqual([]);
	});
	test("the same shots as separate ones give another luck and a wider interval", () => {
		const shots = pairs({ both: 24, onlyA: 6, onlyB: 0, neither: 6 });
		const [byPairs] = analyse(shots).comparisons;
		const [separate] = analyse(shots, false).comparisons;
		expect(separate?.basis).toBe("separate-shots");
		expect(byPairs?.luckChance).toBeLessThan(separate?.luckChance ?? 0);
		expect(byPairs?.moreForWidth).toBeLessThan(separate?.moreForWidth ?? 0);
	});
});

describe("the verdict", () => {
	test.each([
		["apart", { both: 20, onlyA: 20, onlyB: 2, neither: 8 }],
		["leaning", { both: 16, onlyA: 9, onlyB: 3, neither: 2 }],
		["open", { both: 12, onlyA: 5, onlyB: 4, neither: 9 }],
		["same", { both: 200, onlyA: 11, onlyB: 10, neither: 100 }],
	] as const)("%s", (verdict, counts) => {
		expect(analyse(pairs(counts)).comparisons[0]?.verdict).toBe(verdict);
	});
	test("does not depend on which cue is named first", () => {
		const shots = pairs({ both: 20, onlyA: 20, onlyB: 2, neither: 8 });
		const [one] = analyse(shots).comparisons;
		const [other] = analyseTrial({
			cueIds: ["b", "a"],
			shots,
			isPaired: true,
		}).comparisons;
		expect(other?.verdict).toBe(one?.verdict);
		expect(other?.difference.value).toBeCloseTo(
			-(one?.difference.value ?? 0),
			12,
		);
	});
});

describe("what is told beside it", () => {
	const codes = (analysis: ReturnType<typeof analyseTrial>) =>
		analysis.cautions.map(({ code }) => code);

	test("few shots, a trial ended early, lopsided shots", () => {
		const shots = pairs({ both: 3, onlyA: 1, onlyB: 0, neither: 1 });
		expect(codes(analyse(shots, true, 40))).toEqual([
			"trial-few-shots",
			"trial-ended-early",
		]);
		const more = Array.from(
			{ length: 30 },
			(): Shot => ({ cueId: "a", isPotted: true }),
		);
		expect(codes(analyse([...shots, ...more]))).toContain("trial-uneven-shots");
	});
	test("three cues: three comparisons, each allowed for the others", () => {
		const shots = ["a", "b", "c"].flatMap((cueId, k) =>
			Array.from(
				{ length: 30 },
				(_, i): Shot => ({
					cueId,
					isPotted: i % 10 < 4 + 2 * k,
				}),
			),
		);
		const analysis = analyseTrial({
			cueIds: ["a", "b", "c"],
			shots,
			isPaired: false,
		});
		expect(analysis.comparisons).toHaveLength(3);
		for (const { luckChance, luckChanceOfAll } of analysis.comparisons)
			expect(luckChanceOfAll).toBeGreaterThanOrEqual(luckChance);
		expect(codes(analysis)).toContain("trial-many-comparisons");
	});
	test("pairs asked for but none recorded", () => {
		const shots = ["a", "b"].flatMap((cueId) =>
			Array.from({ length: 12 }, (): Shot => ({ cueId, isPotted: true })),
		);
		const analysis = analyse(shots);
		expect(analysis.comparisons[0]?.basis).toBe("separate-shots");
		expect(codes(analysis)).toContain("trial-no-pairs");
	});
});

test("a trial not begun compares nothing and does not fail", () => {
	const { cues, comparisons, session } = analyse([]);
	expect(cues.map(({ shots }) => shots)).toEqual([0, 0]);
	expect(comparisons).toEqual([]);
	expect(session).toEqual({ warmUp: null, drift: null, order: null });
});

test("every number is finite for all pots, no pots and one shot", () => {
	for (const shots of [
		pairs({ both: 12, onlyA: 0, onlyB: 0, neither: 0 }),
		pairs({ both: 0, onlyA: 0, onlyB: 0, neither: 12 }),
		pairs({ both: 0, onlyA: 12, onlyB: 0, neither: 0 }),
		pairs({ both: 0, onlyA: 1, onlyB: 0, neither: 0 }),
	])
		expect(JSON.stringify(analyse(shots))).not.toMatch(
			/"(value|low|high|sd|luckChance)":null/,
		);
});
