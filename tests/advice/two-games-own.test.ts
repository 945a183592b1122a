import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { inventedCatalogue } from "@/lib/advice/catalogue";
import type { FittingInput } from "@/lib/advice/input";
import { seededUniform } from "@/lib/advice/normal";
import { sharedOffer } from "@/lib/advice/shared-offer";
import { twoGames } from "@/lib/advice/two-games";
import { CHOICES } from "@/lib/forms/choices";

const GAMES = CHOICES.game;

/** A player of two games. A wished tip is what lets most pairs of games share a cue at all. */
const anyPlayer = fc.record({
	games: fc.shuffledSubarray([...GAMES], { minLength: 2, maxLength: 2 }),
	statureMm: fc.integer({ min: 1400, max: 2000 }),
	ringMm: fc.option(fc.integer({ min: 26, max: 32 }), { nil: undefined }),
	level: fc.constantFrom(...CHOICES.level),
	budget: fc.constantFrom(...CHOICES.budget),
	tipDiameterMm: fc.constantFrom(9.5, 10, 11, 12),
	buttWood: fc.option(fc.constantFrom("gaboon-ebony", "indian-rosewood"), {
		nil: undefined,
	}),
	shareOfFirst: fc.constantFrom(0.2, 0.5, 0.8),
	candidateCount: fc.constantFrom(2000, 6000),
});

describe("the own cue of each game", () => {
	test("is at least as good there as the one cue for both, whoever plays", () => {
		let compared = 0;
		fc.assert(
			fc.property(anyPlayer, (player) => {
				const { games, statureMm, ringMm, tipDiameterMm, buttWood } = player;
				const [first, second] = games as [
					(typeof GAMES)[number],
					(typeof GAMES)[number],
				];
				const input: FittingInput = {
					player: {
						statureMm,
						...(ringMm === undefined ? {} : { gripCircleReadingsMm: [ringMm] }),
					},
					stance: { gameId: first },
					level: player.level,
					budget: player.budget,
					presentCue: {},
					wishes: {
						tipDiameterMm,
						...(buttWood === undefined ? {} : { buttWood }),
					} as FittingInput["wishes"],
				};
				const found = twoGames({
					input,
					second: { gameId: second },
					shareOfFirst: player.shareOfFirst,
					options: {
						uniform: seededUniform(1),
						candidateCount: player.candidateCount,
						drawCount: 2,
					},
				});
				if (!found.ok || found.value.compromise === null) return;
				compared++;
				for (const { loss, own, compromiseWorth } of found.value.games) {
					expect(own.overall).toBeGreaterThanOrEqual(compromiseWorth);
					expect(loss).toBeGreaterThanOrEqual(0);
				}
			}),
			{ seed: 20, numRuns: 24 },
		);
		expect(compared).toBeGreaterThan(8);
	}, 120_000);
});

describe("what both games' catalogues offer", () => {
	const shaftAndLayout = (
		one: (typeof GAMES)[number],
		other: (typeof GAMES)[number],
	) => sharedOffer(inventedCatalogue(one), inventedCatalogue(other));
	test("a cue for both is made of what they have in common, and of either where that is nothing", () => {
		expect(shaftAndLayout("snooker", "american-pool").shared).toEqual({
			shaftWoods: ["white-ash", "sugar-maple"],
			layouts: ["three-quarter"],
		});
		expect(shaftAndLayout("snooker", "english-eight-ball").shared).toEqual({
			shaftWoods: ["white-ash"],
			layouts: ["three-quarter", "one-piece"],
		});
	});
	test("an own cue may be all that the one for both may be, its own usual first", () => {
		for (const one of GAMES)
			for (const other of GAMES) {
				const { shared, own } = shaftAndLayout(one, other);
				for (const [i, gameId] of [one, other].entries())
					for (const kind of ["shaftWoods", "layouts"] as const) {
						const offered: readonly string[] = own[i]?.[kind] ?? [];
						for (const id of shared[kind]) expect(offered).toContain(id);
						expect(offered[0]).toBe(inventedCatalogue(gameId)[kind][0]);
					}
			}
	});
});
