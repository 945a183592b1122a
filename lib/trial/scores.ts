import { Z90 } from "@/lib/reference/estimate";
import { PRIOR_COUNT } from "./assumptions";
import {
	posterior,
	type Share,
	shareFrom,
	unpairedDifference,
} from "./difference";
import { luckPaired, luckUnpaired } from "./luck";
import {
	type Counts,
	countsOf,
	matched,
	POSITION_HALVES,
	type Shot,
	scoreSum,
	shotsWith,
	totalOf,
} from "./shots";

/** Position reached with one cue: mean of 1, ½ and 0. */
export interface PositionScore extends Share {
	readonly sd: number;
	readonly shots: number;
	readonly counts: {
		readonly good: number;
		readonly near: number;
		readonly lost: number;
	};
}

/** How straight the shots with one cue ran. */
export interface LineScore {
	readonly onLine: Share;
	readonly left: number;
	readonly on: number;
	readonly right: number;
	readonly shots: number;
	/** How often shots off the line would lean this much to one side by chance (exact). */
	readonly leanLuckChance: number;
}

const positionHalves = ({ position }: Shot): number | null =>
	position === undefined ? null : POSITION_HALVES[position];
const onLine = ({ line }: Shot): number | null =>
	line === undefined ? null : Number(line === "on");

/**
 * Mean position score and its 90 % interval: mean and variance of a Dirichlet posterior with prior
 * counts of ½, the interval by the normal approximation. Null without a scored shot.
 */
export function positionScore(shots: readonly Shot[]): PositionScore | null {
	const counts = countsOf(shots, positionHalves, 2);
	const [lost = 0, near = 0, good = 0] = counts;
	if (totalOf(counts) === 0) return null;
	const { value, sd } = meanOfHalves(counts);
	return {
		value,
		sd,
		low: value - Z90 * sd,
		high: value + Z90 * sd,
		shots: totalOf(counts),
		counts: { good, near, lost },
	};
}

function meanOfHalves(counts: Counts): { value: number; sd: number } {
	const weights = [0, 1, 2].map((i) => (counts[i] ?? 0) + PRIOR_COUNT);
	const total = totalOf(weights);
	const value = scoreSum(weights) / total / 2;
	const square =
		weights.reduce((sum, weight, i) => sum + weight * (i / 2) ** 2, 0) / total;
	return { value, sd: Math.sqrt((square - value ** 2) / (total + 1)) };
}

/** Null without a shot whose line was noted. */
export function lineScore(shots: readonly Shot[]): LineScore | null {
	const count = (line: Shot["line"]) =>
		shots.filter((shot) => shot.line === line).length;
	const [left, on, right] = [count("left"), count("on"), count("right")];
	if (left + on + right === 0) return null;
	return {
		onLine: shareFrom(on, left + right),
		left,
		on,
		right,
		shots: left + on + right,
		leanLuckChance: luckPaired([
			...new Array<number>(left).fill(1),
			...new Array<number>(right).fill(-1),
		]),
	};
}

/** Two cues by a score other than pots; first less second. */
export interface ScoreComparison extends Share {
	/** How often equal cues would differ this much or more (exact permutation test). */
	readonly luckChance: number;
}

/** Position of two cues; null where one has no scored shot. */
export function comparePosition(
	shots: readonly Shot[],
	[first, second]: readonly [string, string],
	isPaired: boolean,
): ScoreComparison | null {
	const [one, other] = [first, second].map((cue) =>
		positionScore(shotsWith(shots, cue)),
	);
	if (one == null || other == null) return null;
	const value = one.value - other.value;
	const half = Z90 * Math.hypot(one.sd, other.sd);
	return {
		value,
		low: value - half,
		high: value + half,
		luckChance: luckOf(shots, [first, second], isPaired, positionHalves, 2),
	};
}

/** How often equal cues would differ this much in a score: by pairs where they are paired. */
export function luckOf(
	shots: readonly Shot[],
	[first, second]: readonly [string, string],
	isPaired: boolean,
	score: (shot: Shot) => number | null,
	highest: number,
): number {
	if (isPaired)
		return luckPaired(
			matched(shots, first, second).flatMap(([one, other]) => {
				const [a, b] = [score(one), score(other)];
				return a === null || b === null ? [] : [a - b];
			}),
		);
	return luckUnpaired(
		countsOf(shotsWith(shots, first), score, highest),
		countsOf(shotsWith(shots, second), score, highest),
	);
}

/** Line of two cues, as shares on the line; null where one has no noted shot. */
export function compareLine(
	shots: readonly Shot[],
	[first, second]: readonly [string, string],
	isPaired: boolean,
): ScoreComparison | null {
	const [one, other] = [first, second].map((cue) =>
		lineScore(shotsWith(shots, cue)),
	);
	if (one == null || other == null) return null;
	const difference = unpairedDifference(
		posterior(one.on, one.left + one.right),
		posterior(other.on, other.left + other.right),
	);
	return {
		value: difference.value,
		low: difference.low,
		high: difference.high,
		luckChance: luckOf(shots, [first, second], isPaired, onLine, 1),
	};
}
