import { beforeAll, describe, expect, test } from "vitest";
import { seededUniform } from "@/lib/advice/normal";
import { type TwoGames, twoGames } from "@/lib/advice/two-games";
import { twoGamesView } from "@/lib/present/two-games-view";
import { METRIC, TRADE } from "@/tests/support/readers";
import { withStature } from "../support/inputs";

let found: TwoGames;
beforeAll(() => {
	const outcome = twoGames({
		input: withStature(1780),
		second: { gameId: "american-pool" },
		options: {
			uniform: seededUniform(1),
			candidateCount: 3000,
			drawCount: 60,
		},
	});
	if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusals));
	found = outcome.value;
}, 60_000);

const plain = (text: string) => text.replaceAll("\u00a0", " ");

describe("two games", () => {
	test("the verdict, each game’s loss, the cues and what they cost are told", () => {
		const view = twoGamesView(found, METRIC);
		expect(view.verdict).toBe(METRIC.say(`twoGames.verdict.${found.verdict}`));
		expect(view.games).toHaveLength(2);
		for (const { text } of view.games)
			expect(text).toMatch(/^A cue of its own is worth \d+% .*\.$/);
		expect(view.cues).toHaveLength(found.compromise === null ? 2 : 3);
		expect(plain(view.prices)).toContain(
			`Two cues: ${Math.round(found.twoCuesMinor / 100)} GBP.`,
		);
		expect(view.prices).toContain("invented price list");
	});
	test("without a compromise each game says so, and none is listed or priced", () => {
		const view = twoGamesView(
			{
				...found,
				compromise: null,
				oneCueMinor: null,
				verdict: "two-cues",
				conflicts: ["tip", "balance"],
				games: [
					{
						...found.games[0],
						compromiseWorth: 0,
						losing: [],
						closeness: null,
					},
					{
						...found.games[1],
						compromiseWorth: 0,
						losing: [],
						closeness: null,
					},
				],
			},
			TRADE,
		);
		expect(view.conflicts).toBe(
			"No value is acceptable in both games of: tip and balance.",
		);
		for (const { text } of view.games)
			expect(text).toContain("no cue for both is acceptable");
		expect(view.cues).toHaveLength(2);
		expect(view.prices).not.toContain("One for both");
	});
	test("a cue that loses on no count says that", () => {
		const [one, other] = found.games;
		const view = twoGamesView(
			{ ...found, games: [{ ...one, losing: [] }, other] },
			METRIC,
		);
		if (found.compromise !== null && one.compromiseWorth > 0)
			expect(view.games[0]?.text).toContain("loses on no count");
		else expect(view.games[0]?.text).toContain("no cue for both");
	});
});
