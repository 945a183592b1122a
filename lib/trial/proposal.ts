import { SHOTS_EACH, TRIAL_FIELDS, type TrialField } from "./assumptions";
import { logistic } from "./logistic";
import { normalCdf, normalDensity } from "./normal";
import type { Preference, RackCue, SessionTally } from "./preference";

/** Two cues to try next, and what that would teach. */
export interface PairProposal {
	readonly cueIds: readonly [string, string];
	/** Shots with each cue that take half of the variance out of their difference. */
	readonly shotsEach: number;
	/** Where half would need more, or fewer, shots than one session should have. */
	readonly limitedBy: "fewest" | "most" | null;
	/** One standard deviation of the difference of the two, log-odds: now, and after those shots. */
	readonly doubtBefore: number;
	readonly doubtAfter: number;
	/** Expected information about the rack from `comparedAt` shots each, bits. */
	readonly informationBits: number;
	/** Expected gain in the share of pots with the cue then thought best, from `comparedAt` shots each. */
	readonly expectedGain: number;
	readonly comparedAt: number;
	/** In what the first differs from the second, by how much. */
	readonly differsBy: Partial<Readonly<Record<TrialField, number>>>;
	/** Shots already made with each. */
	readonly shotsSoFar: readonly [number, number];
}

/**
 * The pairs of the cues that can be tried, the one that teaches most first.
 *
 * n shots each with cues i and j in one new session tell their difference with variance
 * V = (1/(pᵢqᵢ) + 1/(pⱼqⱼ))/n on the log-odds scale (Fisher information of a binomial); the session's
 * own level is unknown and drops out. With c = Σᵢᵢ + Σⱼⱼ − 2Σᵢⱼ the variance of the difference now:
 * - information about the whole rack: ½ log₂(1 + c/V) bits (Lindley, Ann. Math. Statist. 27 (1956) 986);
 * - after the trial the means move by a·Z, a_k = (Σ_ki − Σ_kj)/√(c + V), Z standard normal, and the best
 *   cue is chosen by them: the choice gains E max(m + aZ) − max m (the knowledge gradient for
 *   correlated beliefs, Frazier, Powell & Dayanik, INFORMS J. Comput. 21 (2009) 599; both from memory).
 * Pairs stand in the order of that gain: telling two poor cues apart is information, but no help.
 * Equal gains stand by information, then in the order of the rack. The number of shots is the
 * least n with V ≤ c, after which half of the variance of the difference is gone.
 */
export function proposePairs(p: {
	rack: readonly RackCue[];
	sessions: readonly SessionTally[];
	preference: Preference;
}): PairProposal[] {
	const { rack, preference } = p;
	const { means, covariance, session } = preference;
	const cov = (i: number, j: number): number =>
		covariance[i]?.[j] ?? Number.NaN;
	const perShot = means.map((mean) => {
		const chance = logistic(session + mean);
		return 1 / (chance * (1 - chance));
	});
	const best = Math.max(...means);
	const bestChance = logistic(session + best);
	const toShare = bestChance * (1 - bestChance);
	const soFar = (id: string): number =>
		p.sessions
			.flatMap(({ tallies }) => tallies)
			.reduce((sum, tally) => sum + (tally.cueId === id ? tally.shots : 0), 0);

	const offered = rack.flatMap((cue, i) =>
		cue.isAvailable === false ? [] : [{ cue, i }],
	);
	const proposals = offered.flatMap(({ cue: first, i }, place) =>
		offered.slice(place + 1).map(({ cue: second, i: j }) => {
			const between = cov(i, i) + cov(j, j) - 2 * cov(i, j);
			const noisePerShot = (perShot[i] ?? 0) + (perShot[j] ?? 0);
			const noise = noisePerShot / SHOTS_EACH.usual;
			const spread = Math.sqrt(between + noise);
			const moves = means.map((_, k) => (cov(k, i) - cov(k, j)) / spread);
			const { shotsEach, limitedBy } = halvingShots(noisePerShot / between);
			return {
				cueIds: [first.id, second.id] as const,
				shotsEach,
				limitedBy,
				doubtBefore: Math.sqrt(between),
				doubtAfter: Math.sqrt(
					between / (1 + (between * shotsEach) / noisePerShot),
				),
				informationBits: 0.5 * Math.log2(1 + between / noise),
				expectedGain: toShare * gainOfChoice(means, moves),
				comparedAt: SHOTS_EACH.usual,
				differsBy: differences(first, second),
				shotsSoFar: [soFar(first.id), soFar(second.id)] as const,
			};
		}),
	);
	return proposals.sort(
		(one, other) =>
			rounded(other.expectedGain) - rounded(one.expectedGain) ||
			other.informationBits - one.informationBits,
	);
}

/** Gains that differ by rounding alone are equal. */
const rounded = (gain: number): number => Math.round(gain * 1e9);

function halvingShots(exact: number): {
	shotsEach: number;
	limitedBy: PairProposal["limitedBy"];
} {
	const { fewest, most, step } = SHOTS_EACH;
	const shots = Math.ceil(exact / step) * step;
	if (shots > most) return { shotsEach: most, limitedBy: "most" };
	return shots < fewest
		? { shotsEach: fewest, limitedBy: "fewest" }
		: { shotsEach: shots, limitedBy: null };
}

const differences = (
	first: RackCue,
	second: RackCue,
): PairProposal["differsBy"] =>
	Object.fromEntries(
		TRIAL_FIELDS.map(
			(field) => [field, first[field] - second[field]] as const,
		).filter(([, difference]) => difference !== 0),
	);

/**
 * E max(mean + move·Z) − max(mean): the lines that are highest somewhere, by rising slope, and at
 * each crossing |z| the gain (slope step)·(φ(z) − |z| Φ(−|z|)).
 */
export function gainOfChoice(
	means: readonly number[],
	moves: readonly number[],
): number {
	const lines = means
		.map((mean, i) => ({ mean, move: moves[i] ?? 0 }))
		.sort((one, other) => one.move - other.move || one.mean - other.mean);
	const highest: { mean: number; move: number; from: number }[] = [];
	for (const line of lines) {
		let from = Number.NEGATIVE_INFINITY;
		for (let last = highest.at(-1); last !== undefined; last = highest.at(-1)) {
			if (line.move === last.move) {
				highest.pop();
				continue;
			}
			from = (last.mean - line.mean) / (line.move - last.move);
			if (from > last.from) break;
			highest.pop();
		}
		highest.push({
			...line,
			from: highest.length === 0 ? Number.NEGATIVE_INFINITY : from,
		});
	}
	return highest.slice(1).reduce((sum, { move, from }, i) => {
		const below = highest[i] as { move: number };
		const z = -Math.abs(from);
		return sum + (move - below.move) * (normalDensity(z) + z * normalCdf(z));
	}, 0);
}
