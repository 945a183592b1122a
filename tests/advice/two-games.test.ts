import { describe, expect, test } from "vitest";
import { seededUniform } from "@/lib/advice/normal";
import { type TwoGames, twoGames } from "@/lib/advice/two-games";
import { must } from "@/lib/numerics/outcome";
import type { GameId } from "@/lib/reference/rules";
import { withStature } from "../support/inputs";

const both = (
	first: GameId,
	second: GameId,
	more: { shareOfFirst?: number; candidateCount?: number } = {},
): TwoGames =>
	must(
		twoGames({
			input: withStature(1780, { stance: { gameId: first } }),
			second: { gameId: second },
			shareOfFirst: more.shareOfFirst,
			options: {
				uniform: seededUniform(3),
				candidateCount: more.candidateCount ?? 12_000,
				drawCount: 150,
			},
		}),
	);

describe("one player, two games", () => {
	test("the same game twice is one cue, and no loss to speak of", () => {
		const found = both("snooker", "snooker");
		expect(found.verdict).toBe("one-cue");
		expect(found.conflicts).toEqual([]);
		for (const { loss } of found.games)
			expect(Math.abs(loss)).toBeLessThan(0.02);
	}, 30_000);

	test("large and small balls: the compromise lies between, and costs something in both", () => {
		const { games, compromise, oneCueMinor, twoCuesMinor } = both(
			"snooker",
			"english-eight-ball",
		);
		if (!compromise) throw new Error("no compromise");
		const tips = games.map(({ own }) => own.request.tipDiameterMm);
		expect(compromise.request.tipDiameterMm).toBeGreaterThanOrEqual(
			Math.min(...tips),
		);
		expect(compromise.request.tipDiameterMm).toBeLessThanOrEqual(
			Math.max(...tips),
		);
		for (const { loss, losing, own } of games) {
			expect(loss).toBeGreaterThan(0);
			expect(losing.length).toBeGreaterThan(0);
			const falls = losing.map((one) => one.own - one.compromise);
			expect([...falls].sort((a, b) => b - a)).toEqual(falls);
			expect(own.overall).toBeGreaterThan(0.8);
		}
		expect(oneCueMinor).toBeLessThan(twoCuesMinor);
	}, 30_000);

	test("the more a game is played, the less it loses", () => {
		const loss = (shareOfFirst: number) =>
			both("snooker", "english-eight-ball", { shareOfFirst }).games[0].loss;
		expect(loss(0.95)).toBeLessThan(loss(0.05));
	}, 60_000);

	test("tips that share no acceptable width are two cues, and the tip is named", () => {
		const found = both("snooker", "american-pool");
		expect(found.compromise).toBeNull();
		expect(found.verdict).toBe("two-cues");
		expect(found.conflicts).toContain("tip");
		expect(found.oneCueMinor).toBeNull();
	}, 30_000);

	test("a share of play outside 0–1 is refused", () => {
		const found = twoGames({
			input: withStature(1780),
			second: { gameId: "carom" },
			shareOfFirst: 1,
			options: { uniform: seededUniform(1) },
		});
		if (found.ok) throw new Error("expected a refusal");
		expect(found.refusals[0]?.field).toBe("shareOfFirst");
	});
});
