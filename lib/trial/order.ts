import { type Chance, shuffled } from "./chance";

/** Letters that stand for cues where the player is not to know which is which. */
export const LETTERS = ["A", "B", "C", "D", "E", "F"] as const;
export type Letter = (typeof LETTERS)[number];
export const CUES_IN_TRIAL = { min: 2, max: LETTERS.length } as const;

/** The order of a trial: rounds in which each cue has one turn of so many shots. */
export interface TurnOrder {
	readonly rounds: readonly (readonly Letter[])[];
	readonly shotsPerTurn: number;
}

/** Where a shot stands in the order. */
export interface Slot {
	readonly letter: Letter;
	readonly round: number;
	/** Turn within the round, from 0. */
	readonly turn: number;
	/** Shot within the turn, from 0. */
	readonly shotInTurn: number;
	/** The set-up it shares with one shot of each other cue. */
	readonly pair: number;
}

/**
 * A balanced order, drawn by chance. Two cues: rounds AB and BA in couples, so that each couple is
 * ABBA or BAAB and a steady drift falls on both alike. More: the rows of a Williams square, in which
 * every cue stands equally often in every place and follows every other equally often (Williams,
 * Aust. J. Sci. Res. A 2 (1949) 149, from memory). Letters are drawn too.
 */
export function balancedOrder(p: {
	cueCount: number;
	roundCount: number;
	shotsPerTurn: number;
	chance: Chance;
}): TurnOrder {
	const { cueCount, roundCount, shotsPerTurn, chance } = p;
	const { min, max } = CUES_IN_TRIAL;
	for (const [name, value, low, high] of [
		["cueCount", cueCount, min, max],
		["roundCount", roundCount, 1, 1000],
		["shotsPerTurn", shotsPerTurn, 1, 100],
	] as const)
		if (!Number.isInteger(value) || value < low || value > high)
			throw new RangeError(
				`balancedOrder: ${name} must be ${low} to ${high}, got ${value}`,
			);
	const names = shuffled(LETTERS.slice(0, cueCount), chance);
	const square = williamsSquare(cueCount).map((row) =>
		row.map((place) => names[place] as Letter),
	);
	const rounds: (readonly Letter[])[] = [];
	while (rounds.length < roundCount) rounds.push(...shuffled(square, chance));
	return { rounds: rounds.slice(0, roundCount), shotsPerTurn };
}

/** Rows of cue numbers; twice as many rows as cues where their count is odd. */
export function williamsSquare(count: number): number[][] {
	// 0, 1, n−1, 2, n−2, …: neighbours differ by every amount once.
	const first = Array.from({ length: count }, (_, i) =>
		i % 2 === 1 ? (i + 1) / 2 : (count - i / 2) % count,
	);
	const rows = Array.from({ length: count }, (_, shift) =>
		first.map((place) => (place + shift) % count),
	);
	return count % 2 === 0
		? rows
		: [...rows, ...rows.map((row) => row.toReversed())];
}

/** Rounds after which the order is balanced in every respect. */
export const roundsToBalance = (cueCount: number): number =>
	cueCount % 2 === 0 ? cueCount : 2 * cueCount;

export const shotsPlanned = ({ rounds, shotsPerTurn }: TurnOrder): number =>
	rounds.reduce((sum, round) => sum + round.length * shotsPerTurn, 0);

/** The place of the shot with a number from 0; null past the end of the order. */
export function slotAt(order: TurnOrder, shotNumber: number): Slot | null {
	let left = shotNumber;
	for (const [round, letters] of order.rounds.entries()) {
		const size = letters.length * order.shotsPerTurn;
		if (left >= size) {
			left -= size;
			continue;
		}
		const turn = Math.floor(left / order.shotsPerTurn);
		const shotInTurn = left % order.shotsPerTurn;
		return {
			letter: letters[turn] as Letter,
			round,
			turn,
			shotInTurn,
			pair: round * order.shotsPerTurn + shotInTurn,
		};
	}
	return null;
}
