import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { seededChance } from "@/lib/trial/chance";
import {
	balancedOrder,
	type Letter,
	roundsToBalance,
	shotsPlanned,
	slotAt,
	williamsSquare,
} from "@/lib/trial/order";

const count = <T>(items: readonly T[], item: T) =>
	items.filter((one) => one === item).length;

describe("a Williams square", () => {
	test.each([2, 3, 4, 5, 6])(
		"of %i is balanced for place and for what came before",
		(n) => {
			const rows = williamsSquare(n);
			const repeats = rows.length / n;
			for (let cue = 0; cue < n; cue++) {
				for (let place = 0; place < n; place++)
					expect(rows.filter((row) => row[place] === cue)).toHaveLength(
						repeats,
					);
				for (let next = 0; next < n; next++) {
					if (next === cue) continue;
					const follows = rows.reduce(
						(sum, row) =>
							sum +
							row.filter((one, i) => one === cue && row[i + 1] === next).length,
						0,
					);
					expect(follows).toBe(repeats);
				}
			}
		},
	);
});

describe("the order of a trial", () => {
	test("of two cues is made of ABBA and BAAB", () => {
		const { rounds } = balancedOrder({
			cueCount: 2,
			roundCount: 40,
			shotsPerTurn: 1,
			chance: seededChance(11),
		});
		const couples = Array.from({ length: 20 }, (_, i) =>
			[...(rounds[2 * i] ?? []), ...(rounds[2 * i + 1] ?? [])].join(""),
		);
		expect(new Set(couples)).toEqual(new Set(["ABBA", "BAAB"]));
	});

	test("a steady drift falls on both cues alike", () => {
		const order = balancedOrder({
			cueCount: 2,
			roundCount: 8,
			shotsPerTurn: 5,
			chance: seededChance(3),
		});
		const times: Record<string, number> = { A: 0, B: 0 };
		for (let i = 0; i < shotsPlanned(order); i++) {
			const letter = slotAt(order, i)?.letter ?? "";
			times[letter] = (times[letter] ?? 0) + i;
		}
		expect(times.A).toBe(times.B);
	});

	test("gives every cue the same shots, and every set-up one shot with each", () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 2, max: 6 }),
				fc.integer({ min: 1, max: 12 }),
				fc.integer({ min: 1, max: 6 }),
				fc.nat(),
				(cueCount, roundCount, shotsPerTurn, seed) => {
					const order = balancedOrder({
						cueCount,
						roundCount,
						shotsPerTurn,
						chance: seededChance(seed),
					});
					const slots = Array.from({ length: shotsPlanned(order) }, (_, i) =>
						slotAt(order, i),
					);
					expect(slots).toHaveLength(cueCount * roundCount * shotsPerTurn);
					const letters = slots.map((slot) => slot?.letter);
					const pairs = new Map<number, (Letter | undefined)[]>();
					for (const slot of slots) {
						if (slot === null) throw new Error("a planned shot has no slot");
						pairs.set(slot.pair, [
							...(pairs.get(slot.pair) ?? []),
							slot.letter,
						]);
					}
					for (const letter of new Set(letters))
						expect(count(letters, letter)).toBe(roundCount * shotsPerTurn);
					for (const cues of pairs.values())
						expect(new Set(cues).size).toBe(cueCount);
					expect(slotAt(order, slots.length)).toBeNull();
				},
			),
			{ numRuns: 60, seed: 1 },
		);
	});

	test("is balanced for place after the rounds it names", () => {
		for (const cueCount of [2, 3, 4, 5, 6]) {
			const { rounds } = balancedOrder({
				cueCount,
				roundCount: roundsToBalance(cueCount),
				shotsPerTurn: 1,
				chance: seededChance(9),
			});
			const firsts = rounds.map(([first]) => first);
			for (const letter of new Set(firsts))
				expect(count(firsts, letter)).toBe(rounds.length / cueCount);
		}
	});

	test.each([
		[1, 4, 5],
		[7, 4, 5],
		[2, 0, 5],
		[2, 4, 0],
		[2, 1.5, 5],
	])(
		"of %f cues, %f rounds of %f shots is refused",
		(cueCount, roundCount, shotsPerTurn) => {
			expect(() =>
				balancedOrder({
					cueCount,
					roundCount,
					shotsPerTurn,
					chance: seededChance(1),
				}),
			).toThrow(/balancedOrder/);
		},
	);
});
