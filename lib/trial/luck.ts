import { logChoose } from "./beta";
import { type Counts, scoreSum, totalOf } from "./shots";

/** Sums that differ by less are the same: scores are whole numbers. */
const SLACK = 1e-9;

/** Compensated summation is not needed: at most some 10⁵ terms of one sign. */
const chanceOf = (logChance: number): number => Math.exp(logChance);

/**
 * The chance that equally good cues would give a difference at least this large, either way, when
 * the shots are dealt to the two cues at random (exact permutation test). With scores 0 and 1 this
 * is Fisher's exact test. Scores 0, 1, 2 at most; 1 where there is nothing to deal.
 */
export function luckUnpaired(first: Counts, second: Counts): number {
	const score = (counts: Counts, i: number) => counts[i] ?? 0;
	if (first.length > 3 || second.length > 3)
		throw new RangeError("luckUnpaired: scores are 0, 1 or 2");
	const pooled = [0, 1, 2].map((i) => score(first, i) + score(second, i)) as [
		number,
		number,
		number,
	];
	const dealt = totalOf(first);
	const all = totalOf(pooled);
	if (dealt === 0 || dealt === all) return 1;
	const expected = (dealt / all) * scoreSum(pooled);
	const seen = Math.abs(scoreSum(first) - expected);
	const logAll = logChoose(all, dealt);
	let chance = 0;
	for (let twos = 0; twos <= Math.min(dealt, pooled[2]); twos++)
		for (let ones = 0; ones <= Math.min(dealt - twos, pooled[1]); ones++) {
			const noughts = dealt - twos - ones;
			if (noughts > pooled[0]) continue;
			if (Math.abs(2 * twos + ones - expected) < seen - SLACK) continue;
			chance += chanceOf(
				logChoose(pooled[2], twos) +
					logChoose(pooled[1], ones) +
					logChoose(pooled[0], noughts) -
					logAll,
			);
		}
	return Math.min(1, chance);
}

/**
 * The same for pairs with one set-up: which cue of a pair got which score is decided by a coin (exact
 * sign-flipping test). With scores 0 and 1 this is the exact form of McNemar's test. `differences`
 * are first less second, whole numbers from −2 to 2; 1 where no pair differs.
 */
export function luckPaired(differences: readonly number[]): number {
	const sizes = [1, 2].map(
		(size) => differences.filter((d) => Math.abs(d) === size).length,
	) as [number, number];
	if (differences.some((d) => ![-2, -1, 0, 1, 2].includes(d)))
		throw new RangeError(`luckPaired: differences are −2 to 2`);
	const seen = Math.abs(differences.reduce((sum, d) => sum + d, 0));
	const logAll = (sizes[0] + sizes[1]) * Math.LN2;
	let chance = 0;
	for (let ones = 0; ones <= sizes[0]; ones++)
		for (let twos = 0; twos <= sizes[1]; twos++) {
			const sum = 2 * ones - sizes[0] + 2 * (2 * twos - sizes[1]);
			if (Math.abs(sum) < seen - SLACK) continue;
			chance += chanceOf(
				logChoose(sizes[0], ones) + logChoose(sizes[1], twos) - logAll,
			);
		}
	return Math.min(1, chance);
}

/**
 * Several comparisons at once: each chance raised so that the whole set is rarely misled. Holm,
 * Scand. J. Statist. 6 (1979) 65. In the order given.
 */
export function holmAdjusted(chances: readonly number[]): number[] {
	const order = chances
		.map((chance, index) => ({ chance, index }))
		.sort((one, other) => one.chance - other.chance);
	const adjusted = new Array<number>(chances.length).fill(1);
	let highest = 0;
	for (const [rank, { chance, index }] of order.entries()) {
		highest = Math.max(highest, Math.min(1, (chances.length - rank) * chance));
		adjusted[index] = highest;
	}
	return adjusted;
}
