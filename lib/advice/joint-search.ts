import { accept, type Outcome } from "@/lib/numerics/outcome";
import { type Axes, axesFor, candidateAt, candidateCount } from "./axes";
import { overallOf } from "./evaluate";
import { evaluator, type Measured } from "./evaluator";
import type { FittingInput } from "./input";
import type { HardLimits } from "./limits";
import { bestDifferent } from "./pool";
import { type Prepared, prepare, refiningOf } from "./prepare";
import { type Refined, type Refining, refine, worthOf } from "./refine";
import { refusalsFrom, relaxationsFor } from "./relax";
import { scan } from "./scan";
import { poolOf, type SearchOptions } from "./search";
import type { ByGame } from "./shared-offer";

/** The best cue for one game alone, refined from the best starts of the scan that differ. */
export interface OwnBest {
	readonly prepared: Prepared;
	readonly axes: Axes;
	readonly refined: Refined;
}

export function ownBest(
	input: FittingInput,
	options: SearchOptions,
): Outcome<OwnBest> {
	const made = prepare(input, options);
	if (!made.ok) return made;
	const found = poolOf(made.value, options.candidateCount ?? 90_000);
	if (found === null)
		return {
			ok: false,
			refusals: refusalsFrom(relaxationsFor({ input, choices: options })),
		};
	const { prepared, pool } = found;
	const refining = refiningOf(prepared);
	const starts = bestDifferent(pool, options.optionCount ?? STARTS).map((k) =>
		candidateAt(pool.axes, pool.place[k] as number),
	);
	return accept({
		prepared,
		axes: pool.axes,
		refined: bestOf(starts.map((start) => refine(refining, start))),
	});
}

/** As many as the search of one game refines. */
const STARTS = 4;

function bestOf(refined: readonly Refined[]): Refined {
	const [first, ...others] = refined;
	if (!first) throw new RangeError("bestOf: nothing was refined");
	return others.reduce(
		(best, one) => (one.snapped.overall > best.snapped.overall ? one : best),
		first,
	);
}

/**
 * The own best, or what a cue rated in the same game leads to where that is better: no cue that the
 * computation rates in a game may come out ahead of the game's own. `rated` is that cue, judged there.
 */
export function atLeast(own: OwnBest, rated: Refined | null): OwnBest {
	if (rated === null) return own;
	const polished = refine(refiningOf(own.prepared), rated.snapped.candidate);
	return { ...own, refined: bestOf([own.refined, polished, rated]) };
}

/** The candidate of greatest weighted mean worth, refined; null where none is acceptable in both games. */
export function compromiseOf(
	both: readonly [OwnBest, OwnBest],
	p: { shareOfFirst: number; shared: ByGame; options: SearchOptions },
): Refined | null {
	const [a, b] = both;
	const axes = joinedAxes(a, b, {
		shared: p.shared,
		wantedCount: p.options.candidateCount ?? 90_000,
	});
	const limits = strictest(a.prepared.limits, b.prepared.limits);
	const worths = both.map(({ prepared }) => {
		const worth = new Float64Array(candidateCount(axes));
		scan({
			axes,
			limits,
			setting: prepared.setting,
			visit: (place, row) => {
				worth[place] = overallOf(prepared.compiled, row);
			},
		});
		return worth;
	});
	const joint = (one: number, other: number) =>
		one ** p.shareOfFirst * other ** (1 - p.shareOfFirst);
	let best = 0;
	let place = -1;
	const [first, second] = worths as [Float64Array, Float64Array];
	for (let i = 0; i < first.length; i++) {
		const worth = joint(first[i] as number, second[i] as number);
		if (worth > best) {
			best = worth;
			place = i;
		}
	}
	if (place < 0) return null;
	return refine(
		jointRefining(both, { limits, joint }),
		candidateAt(axes, place),
	);
}

/** Both games' worth of one candidate: the second game's measures are found again by the first's row. */
function jointRefining(
	[a, b]: readonly [OwnBest, OwnBest],
	p: { limits: HardLimits; joint: (one: number, other: number) => number },
): Refining {
	const inFirst = evaluator(a.prepared.setting);
	const inSecond = evaluator(b.prepared.setting);
	const others = new WeakMap<Float64Array, Measured>();
	const worthFirst = worthOf(a.prepared.compiled);
	const worthSecond = worthOf(b.prepared.compiled);
	return {
		...refiningOf(a.prepared),
		limits: p.limits,
		evaluate: (candidate) => {
			const one = inFirst(candidate);
			const other = inSecond(candidate);
			if (!other.ok) return other;
			if (one.ok) others.set(one.value.row, other.value);
			return one;
		},
		worth: (row) => {
			const other = others.get(row);
			if (!other) throw new RangeError("jointRefining: an unknown row");
			return p.joint(worthFirst(row), worthSecond(other.row));
		},
	};
}

const strictest = (a: HardLimits, b: HardLimits): HardLimits => ({
	lengthMinMm: Math.max(a.lengthMinMm, b.lengthMinMm),
	massMaxG: Math.min(a.massMaxG, b.massMaxG),
	tipMaxMm: Math.min(a.tipMaxMm, b.tipMaxMm),
	priceMaxMinor: Math.min(a.priceMaxMinor, b.priceMaxMinor),
	pieceMaxMm: Math.min(a.pieceMaxMm, b.pieceMaxMm),
	wishedMassG: a.wishedMassG,
});

/** Axes over what either game calls acceptable, of what both share. */
function joinedAxes(
	a: OwnBest,
	b: OwnBest,
	{ shared, wantedCount }: { shared: ByGame; wantedCount: number },
): Axes {
	const { wishes } = a.prepared.needs.input;
	const catalogue = {
		...a.prepared.catalogue,
		shaftWoods: wishes.shaftWood ? [wishes.shaftWood] : shared.shaftWoods,
		layouts: wishes.layout ? [wishes.layout] : shared.layouts,
	};
	const half = Math.ceil(wantedCount / 4);
	const union = <T>(one: readonly T[], two: readonly T[]) => [
		...new Set([...one, ...two]),
	];
	const [one, two] = [a, b].map(({ prepared }) =>
		axesFor({ ...prepared, catalogue, wantedCount: half }),
	) as [Axes, Axes];
	const values = (
		name: "lengthMm" | "buttDiameterMm" | "tipDiameterMm" | "massG",
	) => thinned(union(one[name], two[name]).sort((x, y) => x - y));
	return {
		...one,
		lengthMm: values("lengthMm"),
		buttDiameterMm: values("buttDiameterMm"),
		tipDiameterMm: values("tipDiameterMm"),
		massG: values("massG"),
	};
}

/** Most values of one axis of a compromise. */
const MOST_VALUES = 5;

/** Evenly picked, the ends kept. */
function thinned(sorted: readonly number[]): readonly number[] {
	if (sorted.length <= MOST_VALUES) return sorted;
	const last = sorted.length - 1;
	return Array.from(
		{ length: MOST_VALUES },
		(_, i) => sorted[Math.round((i * last) / (MOST_VALUES - 1))] as number,
	);
}
