import { accept, type Outcome, refuse } from "@/lib/numerics/outcome";
import type { GameId } from "@/lib/reference/rules";
import type { StanceAnswers } from "@/lib/stance/answers";
import { CRITERION_COUNT, CRITERION_IDS, type CriterionId } from "./criteria";
import { overallOf } from "./evaluate";
import { evaluator } from "./evaluator";
import type { FittingInput } from "./input";
import { atLeast, compromiseOf, ownBest } from "./joint-search";
import { drawsFrom } from "./latent";
import { type CueOption, type Worked, workOut } from "./option";
import type { Prepared } from "./prepare";
import type { Refined } from "./refine";
import type { SearchOptions } from "./search";
import { sharedOffer } from "./shared-offer";
import { type Closeness, closenessOf } from "./uncertainty";
import { catalogueOf } from "./usual-build";

/** How one cue for both games does in one of them, against a cue made for it alone. */
export interface GameShare {
	readonly gameId: GameId;
	readonly own: CueOption;
	/** Worth of the compromise in this game, 0 where it is unacceptable there. */
	readonly compromiseWorth: number;
	readonly loss: number;
	/** Criteria that lose most by the compromise, most first, with their desirabilities. */
	readonly losing: readonly {
		readonly criterion: CriterionId;
		readonly own: number;
		readonly compromise: number;
	}[];
	/** Own cue against the compromise, under the same draws; null without a compromise. */
	readonly closeness: Closeness | null;
}

export interface TwoGames {
	readonly games: readonly [GameShare, GameShare];
	/** Worked out as a cue for the first game; null where no cue is acceptable in both. */
	readonly compromise: CueOption | null;
	/** Whole minor units: both own cues, and the one. */
	readonly twoCuesMinor: number;
	readonly oneCueMinor: number | null;
	/**
	 * "one-cue": the loss is small in both games. "two-cues": it is not, and can be told from none in at
	 * least one, or no cue is acceptable in both. "too-close-to-call": not small, yet not told.
	 */
	readonly verdict: "one-cue" | "two-cues" | "too-close-to-call";
	/** Criteria of which no value is acceptable in both games. */
	readonly conflicts: readonly CriterionId[];
}

/** A loss of worth no player would pay a second cue for. Assumed. */
const SMALL_LOSS = 0.03;

/**
 * One player, two games: the best cue for each, and the one cue of what both games' catalogues offer with
 * the greatest geometric mean of both worths, weighted by how much each is played. Scanned over the
 * values of both searches together, then refined and snapped. Each game's own cue is at least as good
 * there as the one for both. Refuses what a search of either game alone refuses.
 */
export function twoGames(p: {
	input: FittingInput;
	/** The other game's stance; what is left out stays as in the first. */
	second: Partial<StanceAnswers> & { readonly gameId: GameId };
	/** Share of play in the first game, 0–1. Default a half. */
	shareOfFirst?: number;
	options: SearchOptions;
}): Outcome<TwoGames> {
	const { input, options, shareOfFirst = 0.5 } = p;
	if (!(shareOfFirst > 0 && shareOfFirst < 1))
		return refuse({
			code: "out-of-range",
			field: "shareOfFirst",
			value: shareOfFirst,
			min: 0,
			max: 1,
		});
	const inputs = [
		input,
		{ ...input, stance: { ...input.stance, ...p.second } },
	] as const;
	const catalogueIn = (one: FittingInput) =>
		options.catalogue ?? catalogueOf(one, one.stance.gameId);
	const { shared, own } = sharedOffer(
		catalogueIn(inputs[0]),
		catalogueIn(inputs[1]),
	);
	const first = ownBest(inputs[0], { ...options, catalogue: own[0] });
	if (!first.ok) return first;
	const second = ownBest(inputs[1], { ...options, catalogue: own[1] });
	if (!second.ok) return second;
	const found = [first.value, second.value] as const;
	const joined = compromiseOf(found, { shareOfFirst, shared, options });
	const judged = found.map(
		({ prepared }) => joined && judgedIn(prepared, joined),
	) as [Refined | null, Refined | null];
	const both = [
		atLeast(found[0], judged[0]),
		atLeast(found[1], judged[1]),
	] as const;
	const refinedAll = [...both.map(({ refined }) => refined), joined].filter(
		(one) => one !== null,
	);
	const draws = drawsFrom({
		uniform: options.uniform,
		count: options.drawCount ?? 400,
		woods: refinedAll.flatMap(({ snapped }) => [
			snapped.candidate.request.shaftWood,
			snapped.candidate.request.buttWood,
		]),
	});
	const asOne = both.map(({ prepared }, i) => {
		const refined = judged[i];
		return refined ? workOut({ prepared, refined, draws }) : null;
	});
	const shares = both.map(({ prepared, refined }, i) => {
		const own = workOut({ prepared, refined, draws });
		if (!own) throw new RangeError("twoGames: an own best cannot be planned");
		return shareOf(prepared, own, asOne[i] ?? null);
	});
	const [one, other] = shares as [GameShare, GameShare];
	const option = asOne[0]?.option ?? null;
	const told = shares.some(
		({ closeness }) => closeness === null || !closeness.tooClose,
	);
	const large = shares.some(({ loss }) => loss > SMALL_LOSS);
	return accept({
		games: [one, other],
		compromise: option,
		twoCuesMinor: one.own.price.totalMinor + other.own.price.totalMinor,
		oneCueMinor: option?.price.totalMinor ?? null,
		verdict: !large ? "one-cue" : told ? "two-cues" : "too-close-to-call",
		conflicts: conflictsOf(both[0].prepared, both[1].prepared),
	});
}

/** The compromise judged as a cue for one of the games; null where it is unacceptable there. */
function judgedIn(prepared: Prepared, joined: Refined): Refined | null {
	const judged = (candidate: Refined["snapped"]["candidate"]) => {
		const measured = evaluator(prepared.setting)(candidate);
		if (!measured.ok) return null;
		return {
			candidate,
			measured: measured.value,
			overall: overallOf(prepared.compiled, measured.value.row),
		};
	};
	const snapped = judged(joined.snapped.candidate);
	const continuous = judged(joined.continuous.candidate);
	if (!snapped || !continuous) return null;
	return {
		...joined,
		snapped,
		continuous,
		snappingCost: continuous.overall - snapped.overall,
		snappingCostBy: Array.from(
			{ length: CRITERION_COUNT },
			(_, i) =>
				prepared.compiled.desirability(
					i,
					continuous.measured.row[i] as number,
				) -
				prepared.compiled.desirability(i, snapped.measured.row[i] as number),
		),
	};
}

function shareOf(
	prepared: Prepared,
	own: Worked,
	compromise: Worked | null,
): GameShare {
	const compromiseWorth = compromise?.option.overall ?? 0;
	return {
		gameId: prepared.needs.gameId,
		own: own.option,
		compromiseWorth,
		loss: own.option.overall - compromiseWorth,
		losing: compromise
			? CRITERION_IDS.flatMap((criterion, i) => {
					if ((prepared.compiled.weights[i] as number) === 0) return [];
					const before = own.option.results[criterion].desirability;
					const after = compromise.option.results[criterion].desirability;
					return after < before - 0.005
						? [{ criterion, own: before, compromise: after }]
						: [];
				}).sort((x, y) => y.own - y.compromise - (x.own - x.compromise))
			: [],
		closeness: compromise && closenessOf(own.outlook, compromise.outlook),
	};
}

/** Two-sided criteria whose acceptable stretches in the two games do not meet. */
function conflictsOf(a: Prepared, b: Prepared): readonly CriterionId[] {
	return a.criteria.flatMap((one, i) => {
		const other = b.criteria[i];
		if (!other || one.weight === 0 || other.weight === 0) return [];
		const { low, high } = one.shape;
		const { low: otherLow, high: otherHigh } = other.shape;
		if (!low || !high || !otherLow || !otherHigh) return [];
		const apart = low.limit >= otherHigh.limit || otherLow.limit >= high.limit;
		return apart ? [one.id] : [];
	});
}
