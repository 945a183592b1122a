import type { Caution } from "@/lib/numerics/outcome";
import { LUCK_BOUNDS, WARM_UP_SHOTS, WORTH_HAVING } from "./assumptions";
import { betaMean } from "./beta";
import {
	type PairCounts,
	pairedDifference,
	posterior,
	type Share,
	type ShareDifference,
	shareFrom,
	unpairedDifference,
} from "./difference";
import { holmAdjusted } from "./luck";
import { type ShotsNeeded, shotsNeeded } from "./more-shots";
import {
	compareLine,
	comparePosition,
	type LineScore,
	lineScore,
	luckOf,
	type PositionScore,
	positionScore,
	type ScoreComparison,
} from "./scores";
import {
	differenceWithoutDrift,
	type SessionEffects,
	sessionEffects,
} from "./session";
import { matched, potScore, type Shot, shotsWith } from "./shots";

/** What was done with one cue. */
export interface CueResult {
	readonly cueId: string;
	readonly shots: number;
	readonly pots: number;
	/** Share potted. */
	readonly share: Share;
	readonly line: LineScore | null;
	readonly position: PositionScore | null;
}

/**
 * What a difference comes to. `apart`: luck alone would rarely do it. `leaning`: it points one way.
 * `same`: if there is a difference, it is too small to be worth having. `open`: it could be luck, and
 * a difference worth having could still hide in it.
 */
export type Verdict = "apart" | "leaning" | "same" | "open";

/** Two cues of a trial; every difference is first less second. */
export interface CueComparison {
	readonly cueIds: readonly [string, string];
	readonly basis: "pairs" | "separate-shots";
	/** Pairs, or shots with the cue that has fewer. */
	readonly comparedShots: number;
	readonly pairCounts: PairCounts | null;
	readonly difference: ShareDifference;
	/** How often equally good cues would differ this much or more, either way (exact). */
	readonly luckChance: number;
	/** The same, allowing for the other comparisons of this trial (Holm). */
	readonly luckChanceOfAll: number;
	readonly verdict: Verdict;
	readonly needed: ShotsNeeded;
	/** Shots still to be made with each cue for the width, after those compared. */
	readonly moreForWidth: number;
	readonly moreForPower: number | null;
	/** With warm-up and tiring taken out. */
	readonly withoutDrift: Share;
	readonly line: ScoreComparison | null;
	readonly position: ScoreComparison | null;
}

export interface TrialAnalysis {
	readonly cues: readonly CueResult[];
	readonly comparisons: readonly CueComparison[];
	readonly session: SessionEffects;
	readonly cautions: readonly Caution[];
}

/**
 * One trial, from its shots in the order they were played. `cueIds`: the cues of the trial, also
 * those not shot with yet; they are compared where both have shots. `plannedShots` lets a trial
 * that ended early be told.
 */
export function analyseTrial(p: {
	cueIds: readonly string[];
	shots: readonly Shot[];
	/** Shots of one `pair` number had the same set-up. */
	isPaired: boolean;
	plannedShots?: number;
}): TrialAnalysis {
	const cues = p.cueIds.map((cueId) => resultOf(cueId, p.shots));
	const pairs = p.cueIds.flatMap((first, i) =>
		p.cueIds
			.slice(i + 1)
			.map((second) => [first, second] as const)
			.filter((pair) => pair.every((id) => shotsWith(p.shots, id).length > 0)),
	);
	const single = pairs.map((pair) => compare(p.shots, pair, p.isPaired));
	const adjusted = holmAdjusted(single.map(({ luckChance }) => luckChance));
	const comparisons = single.map((comparison, i) => {
		const luckChanceOfAll = adjusted[i] ?? 1;
		return {
			...comparison,
			luckChanceOfAll,
			verdict: verdictOf(comparison.difference, luckChanceOfAll),
		};
	});
	return {
		cues,
		comparisons,
		session: sessionEffects(p.shots),
		cautions: cautionsOf({ ...p, cues, comparisons }),
	};
}

function resultOf(cueId: string, all: readonly Shot[]): CueResult {
	const shots = shotsWith(all, cueId);
	const pots = shots.filter(({ isPotted }) => isPotted).length;
	return {
		cueId,
		shots: shots.length,
		pots,
		share: shareFrom(pots, shots.length - pots),
		line: lineScore(shots),
		position: positionScore(shots),
	};
}

type Single = Omit<CueComparison, "luckChanceOfAll" | "verdict">;

function compare(
	shots: readonly Shot[],
	cueIds: readonly [string, string],
	wantsPairs: boolean,
): Single {
	const pairs = wantsPairs ? matched(shots, cueIds[0], cueIds[1]) : [];
	const isPaired = pairs.length > 0;
	const pairCounts = isPaired ? countPairs(pairs) : null;
	const [first, second] = cueIds.map((id) => {
		const own = shotsWith(shots, id);
		const pots = own.filter(({ isPotted }) => isPotted).length;
		return { count: own.length, shape: posterior(pots, own.length - pots) };
	}) as [Side, Side];
	const comparedShots = isPaired
		? pairs.length
		: Math.min(first.count, second.count);
	const needed = shotsNeeded({
		first: betaMean(first.shape),
		second: betaMean(second.shape),
		differing:
			pairCounts === null
				? null
				: (pairCounts.onlyFirst + pairCounts.onlySecond + 1) /
					(pairs.length + 2),
	});
	const more = (wanted: number) => Math.max(0, wanted - comparedShots);
	return {
		cueIds,
		basis: isPaired ? "pairs" : "separate-shots",
		comparedShots,
		pairCounts,
		difference:
			pairCounts === null
				? unpairedDifference(first.shape, second.shape)
				: pairedDifference(pairCounts),
		luckChance: luckOf(shots, cueIds, isPaired, potScore, 1),
		needed,
		moreForWidth: more(needed.forWidth.shotsEach),
		moreForPower:
			needed.forPower === null ? null : more(needed.forPower.shotsEach),
		withoutDrift: differenceWithoutDrift(shots, cueIds[0], cueIds[1]),
		line: compareLine(shots, cueIds, isPaired),
		position: comparePosition(shots, cueIds, isPaired),
	};
}

interface Side {
	readonly count: number;
	readonly shape: { readonly a: number; readonly b: number };
}

function countPairs(pairs: readonly (readonly [Shot, Shot])[]): PairCounts {
	const count = (one: boolean, other: boolean) =>
		pairs.filter(
			([first, second]) => first.isPotted === one && second.isPotted === other,
		).length;
	return {
		both: count(true, true),
		onlyFirst: count(true, false),
		onlySecond: count(false, true),
		neither: count(false, false),
	};
}

function verdictOf(
	{ low, high }: ShareDifference,
	luckChance: number,
): Verdict {
	const isOneSided = low > 0 || high < 0;
	if (isOneSided && luckChance < LUCK_BOUNDS.clear) return "apart";
	if (low > -WORTH_HAVING && high < WORTH_HAVING) return "same";
	return luckChance < LUCK_BOUNDS.leaning ? "leaning" : "open";
}

function cautionsOf(p: {
	shots: readonly Shot[];
	plannedShots?: number;
	isPaired: boolean;
	cues: readonly CueResult[];
	comparisons: readonly CueComparison[];
}): Caution[] {
	const cautions: Caution[] = [];
	const counts = p.cues.map(({ shots }) => shots);
	const [fewest, most] = [Math.min(...counts), Math.max(...counts)];
	if (fewest < WARM_UP_SHOTS)
		cautions.push({
			code: "trial-few-shots",
			facts: { fewestShots: fewest, wantedShots: WARM_UP_SHOTS },
		});
	if (most > fewest + Math.max(5, fewest / 4))
		cautions.push({
			code: "trial-uneven-shots",
			facts: { fewestShots: fewest, mostShots: most },
		});
	if (p.plannedShots !== undefined && p.shots.length < p.plannedShots)
		cautions.push({
			code: "trial-ended-early",
			facts: { shots: p.shots.length, plannedShots: p.plannedShots },
		});
	if (p.isPaired && p.comparisons.some(({ basis }) => basis !== "pairs"))
		cautions.push({ code: "trial-no-pairs" });
	if (p.comparisons.length > 1)
		cautions.push({
			code: "trial-many-comparisons",
			facts: { comparisons: p.comparisons.length },
		});
	return cautions;
}
