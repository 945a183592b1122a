import { Z90 } from "@/lib/reference/estimate";
import { DRIFT_SD_LOG_ODDS, WARM_UP_SHOTS } from "./assumptions";
import {
	posterior,
	type Share,
	type ShareDifference,
	shareFrom,
	unpairedDifference,
} from "./difference";
import { fitLogistic, type LogisticFit, logistic } from "./logistic";
import { luckUnpaired } from "./luck";
import { twoSidedTail } from "./normal";
import { countsOf, cuesIn, potScore, type Shot } from "./shots";

/** One part of a session against another, whatever the cue. */
export interface PartComparison {
	readonly first: Share & { readonly shots: number };
	readonly second: Share & { readonly shots: number };
	/** First part less second. */
	readonly difference: ShareDifference;
	/** How often equal parts would differ this much or more, by shuffling (exact). */
	readonly luckChance: number;
}

/** Steady change over the session. */
export interface Drift {
	/** Share potted at the first and at the last shot, with the mean of the cues. */
	readonly atStart: number;
	readonly atEnd: number;
	/** Change of the log-odds from first to last shot. */
	readonly logOdds: number;
	readonly sdLogOdds: number;
	/** How often a session without drift would look like this much or more, either way. */
	readonly luckChance: number;
}

export interface SessionEffects {
	/** The first shots against the rest; null while there are too few. */
	readonly warmUp: PartComparison | null;
	readonly drift: Drift | null;
	/** First turn of a round against the last; null without rounds. */
	readonly order: PartComparison | null;
}

/** Wide: the level of a session and the cues' own difference are left to the shots, log-odds. */
const OPEN_SD_LOG_ODDS = 5;

/** Fewer shots than this say nothing about a session. */
const FEWEST = 2 * WARM_UP_SHOTS;

function compareParts(
	first: readonly Shot[],
	second: readonly Shot[],
): PartComparison {
	const part = (shots: readonly Shot[]) => {
		const [misses = 0, hits = 0] = countsOf(shots, potScore, 1);
		return {
			counts: [misses, hits],
			shape: posterior(hits, misses),
			share: { ...shareFrom(hits, misses), shots: shots.length },
		};
	};
	const [one, other] = [part(first), part(second)];
	return {
		first: one.share,
		second: other.share,
		difference: unpairedDifference(one.shape, other.shape),
		luckChance: luckUnpaired(one.counts, other.counts),
	};
}

/** Warm-up, drift and order of one session, from its shots in the order they were played. */
export function sessionEffects(shots: readonly Shot[]): SessionEffects {
	if (shots.length < FEWEST) return { warmUp: null, drift: null, order: null };
	const turns = turnsOf(shots);
	return {
		warmUp: compareParts(
			shots.slice(0, WARM_UP_SHOTS),
			shots.slice(WARM_UP_SHOTS),
		),
		drift: driftOf(shots),
		order:
			turns.first.length === 0 || turns.last.length === 0
				? null
				: compareParts(turns.first, turns.last),
	};
}

/** The shots of each round's first cue and of its last; rounds with one cue only are left out. */
function turnsOf(shots: readonly Shot[]): { first: Shot[]; last: Shot[] } {
	const rounds = groupRounds(shots);
	const result: { first: Shot[]; last: Shot[] } = { first: [], last: [] };
	for (const round of rounds.values()) {
		const cues = cuesIn(round);
		if (cues.length < 2) continue;
		result.first.push(...round.filter(({ cueId }) => cueId === cues[0]));
		result.last.push(...round.filter(({ cueId }) => cueId === cues.at(-1)));
	}
	return result;
}

function groupRounds(shots: readonly Shot[]): Map<number, Shot[]> {
	const rounds = new Map<number, Shot[]>();
	for (const shot of shots) {
		if (shot.round === undefined) continue;
		rounds.set(shot.round, [...(rounds.get(shot.round) ?? []), shot]);
	}
	return rounds;
}

/** Session, drift from −½ to ½, and each cue against the first one. */
function fitDrift(
	shots: readonly Shot[],
	driftSdLogOdds: number,
): {
	fit: LogisticFit;
	cues: string[];
} {
	const cues = cuesIn(shots);
	const others = cues.slice(1);
	const fit = fitLogistic(
		shots.map(({ cueId, isPotted }, i) => ({
			x: [
				1,
				shots.length === 1 ? 0 : i / (shots.length - 1) - 0.5,
				...others.map((other) => Number(other === cueId)),
			],
			hits: Number(isPotted),
			shots: 1,
		})),
		[
			{ mean: 0, sd: OPEN_SD_LOG_ODDS },
			{ mean: 0, sd: driftSdLogOdds },
			...others.map(() => ({ mean: 0, sd: OPEN_SD_LOG_ODDS })),
		],
	);
	return { fit, cues };
}

function driftOf(shots: readonly Shot[]): Drift {
	const { fit, cues } = fitDrift(shots, DRIFT_SD_LOG_ODDS);
	const [session = 0, logOdds = 0, ...others] = fit.coefficients;
	const middle =
		session + others.reduce((sum, value) => sum + value, 0) / cues.length;
	const sdLogOdds = Math.sqrt(fit.covariance[1]?.[1] ?? Number.NaN);
	return {
		atStart: logistic(middle - logOdds / 2),
		atEnd: logistic(middle + logOdds / 2),
		logOdds,
		sdLogOdds,
		luckChance: twoSidedTail(trendDeviate(shots)),
	};
}

/**
 * Normal deviate of the trend test of Cochran (1954) and Armitage (1955), each cue a stratum of its
 * own (from memory): Σ (t − t̄)(y − ȳ) over its standard deviation under shuffling. 0 where every shot
 * of each cue came out alike.
 */
export function trendDeviate(shots: readonly Shot[]): number {
	let sum = 0;
	let variance = 0;
	for (const cue of cuesIn(shots)) {
		const rows = shots.flatMap(({ cueId, isPotted }, time) =>
			cueId === cue ? [{ time, pot: Number(isPotted) }] : [],
		);
		const count = rows.length;
		if (count < 2) continue;
		const meanTime = rows.reduce((total, { time }) => total + time, 0) / count;
		const share = rows.reduce((total, { pot }) => total + pot, 0) / count;
		let spread = 0;
		for (const { time, pot } of rows) {
			sum += (time - meanTime) * (pot - share);
			spread += (time - meanTime) ** 2;
		}
		variance += (spread * share * (1 - share) * count) / (count - 1);
	}
	return variance === 0 ? 0 : sum / Math.sqrt(variance);
}

/**
 * The difference of two cues at the middle of the session, the drift taken out; a share, with its
 * 90 % interval by the delta method.
 */
export function differenceWithoutDrift(
	shots: readonly Shot[],
	first: string,
	second: string,
): Share {
	const { fit, cues } = fitDrift(
		shots.filter(({ cueId }) => cueId === first || cueId === second),
		OPEN_SD_LOG_ODDS,
	);
	const [session = 0, , contrast = 0] = fit.coefficients;
	const [atFirst, atSecond] = [logistic(session), logistic(session + contrast)];
	const sign = cues[0] === first ? 1 : -1;
	const slopes = [
		atFirst * (1 - atFirst) - atSecond * (1 - atSecond),
		0,
		-atSecond * (1 - atSecond),
	];
	const variance = slopes.reduce(
		(sum, slope, i) =>
			sum +
			slopes.reduce(
				(inner, other, j) =>
					inner + slope * other * (fit.covariance[i]?.[j] ?? Number.NaN),
				0,
			),
		0,
	);
	const value = sign * (atFirst - atSecond);
	const half = Z90 * Math.sqrt(variance);
	return { value, low: value - half, high: value + half };
}
