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

/** The best cue for one game alone, refined. */
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
	const [k] = bestDifferent(pool, 1);
	if (k === undefined) throw new RangeError("ownBest: an empty pool");
	return accept({
		prepared,
		axes: pool.axes,
		refined: refine(
			refiningOf(prepared),
			candidateAt(pool.axes, pool.place[k] as number),
		),
	});
}

/** The candidate of greatest weighted mean worth, refined; null where none is acceptable in both games. */
export function compromiseOf(
	both: readonly [OwnBest, OwnBest],
	p: { shareOfFirst: number; options: SearchOptions },
): Refined | null {
	const [a, b] = both;
	const axes = joinedAxes(a, b, p.options.candidateCount ?? 90_000);
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

/** Axes over what either game calls acceptable, and what either catalogue offers. */
function joinedAxes(a: OwnBest, b: OwnBest, wantedCount: number): Axes {
	const { catalogue } = a.prepared;
	const other = b.prepared.catalogue;
	const union = <T>(one: readonly T[], two: readonly T[]) => [
		...new Set([...one, ...two]),
	];
	const merged: Prepared["catalogue"] = {
		...catalogue,
		shaftWoods: union(catalogue.shaftWoods, other.shaftWoods),
		layouts: union(catalogue.layouts, other.layouts),
	};
	const half = Math.ceil(wantedCount / 4);
	const [one, two] = [a, b].map(({ prepared }) =>
		axesFor({ ...prepared, catalogue: merged, wantedCount: half }),
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
