import type {
	CueRequest,
	LayoutId,
	SpliceId,
	TaperShapeId,
} from "@/lib/cue/design";
import { growthCurve } from "@/lib/cue/taper";
import type { WoodId } from "@/lib/reference/woods";
import { MM_PER_INCH } from "@/lib/units/quantity";
import {
	benchSteps,
	finerCount,
	type Span,
	spanOf,
	valuesOf,
} from "./axis-span";
import type { Catalogue } from "./catalogue";
import { AT, type Criterion } from "./criteria";
import type { Shape } from "./desirability";
import type { Candidate } from "./evaluate";
import type { FittingNeeds } from "./fitting-needs";
import { STEP } from "./judgement";

/** The values a scan takes in every direction; the candidates are all their combinations. */
export interface Axes {
	readonly lengthMm: readonly number[];
	readonly buttDiameterMm: readonly number[];
	readonly tipDiameterMm: readonly number[];
	readonly taperShapes: readonly TaperShapeId[];
	readonly splices: readonly SpliceId[];
	readonly layouts: readonly LayoutId[];
	readonly shaftWoods: readonly WoodId[];
	readonly buttWoods: readonly WoodId[];
	readonly massG: readonly number[];
	/** How far the balance is brought forward from the usual slug's; 0 first. */
	readonly forwardMm: readonly number[];
	readonly ferruleMetal: CueRequest["ferruleMetal"];
}

/** Loads of one cue: the wood as it is, then every weight with every balance. */
export const loadCount = (axes: Axes): number =>
	1 + axes.massG.length * axes.forwardMm.length;

export const candidateCount = (axes: Axes): number =>
	axes.lengthMm.length *
	axes.buttDiameterMm.length *
	axes.tipDiameterMm.length *
	axes.taperShapes.length *
	axes.splices.length *
	axes.layouts.length *
	axes.shaftWoods.length *
	axes.buttWoods.length *
	loadCount(axes);

/** The candidate at a place in the scan's order: length outermost, load innermost. */
export function candidateAt(axes: Axes, index: number): Candidate {
	let rest = index;
	const take = (count: number): number => {
		const i = rest % count;
		rest = (rest - i) / count;
		return i;
	};
	const load = take(loadCount(axes));
	const buttWood = at(axes.buttWoods, take(axes.buttWoods.length));
	const shaftWood = at(axes.shaftWoods, take(axes.shaftWoods.length));
	const layout = at(axes.layouts, take(axes.layouts.length));
	const splice = at(axes.splices, take(axes.splices.length));
	const taperShape = at(axes.taperShapes, take(axes.taperShapes.length));
	const tipDiameterMm = at(axes.tipDiameterMm, take(axes.tipDiameterMm.length));
	const buttDiameterMm = at(
		axes.buttDiameterMm,
		take(axes.buttDiameterMm.length),
	);
	const lengthMm = at(axes.lengthMm, take(axes.lengthMm.length));
	if (rest !== 0 || index < 0)
		throw new RangeError(`no candidate ${index} of ${candidateCount(axes)}`);
	const forwards = axes.forwardMm.length;
	return {
		request: {
			lengthMm,
			buttDiameterMm,
			tipDiameterMm,
			taperShape,
			shaftWood,
			buttWood,
			splice,
			layout,
			ferruleMetal: axes.ferruleMetal,
		},
		massG:
			load === 0 ? null : at(axes.massG, Math.floor((load - 1) / forwards)),
		forwardMm: load === 0 ? 0 : at(axes.forwardMm, (load - 1) % forwards),
	};
}

const at = <T>(values: readonly T[], i: number): T => {
	const value = values[i];
	if (value === undefined)
		throw new RangeError(`place ${i} of ${values.length}`);
	return value;
};

/** The furthest forward a scan tries to bring a balance. */
const FORWARD_MAX_MM = 2 * MM_PER_INCH;
/** Share of the way from ideal to limit that the scan covers: nearer the limit little is gained. */
const COVERED = 0.75;

/**
 * Axes of at least `wantedCount` candidates over what the criteria call acceptable; wishes are single
 * values. Where the bench's steps leave room for fewer, whole parts of them are taken on every figure
 * that is free, unless none of the four that can be wished for is. For none wanted, only the ends.
 */
export function axesFor(p: {
	needs: FittingNeeds;
	criteria: readonly Criterion[];
	catalogue: Catalogue;
	wantedCount: number;
}): Axes {
	const { needs, criteria, catalogue } = p;
	const { wishes } = needs.input;
	const spans: Record<Continuous, Span> = {
		lengthMm: spanOf({
			wish: wishes.lengthMm,
			covered: coveredBy(shapeOf(criteria, AT.reach)),
			allowed: catalogue.lengthMm,
			step: STEP.lengthMm,
		}),
		buttDiameterMm: spanOf({
			wish: wishes.buttDiameterMm,
			covered: buttCovered(needs, shapeOf(criteria, AT.closure)),
			allowed: catalogue.buttDiameterMm,
			step: STEP.diameterMm,
		}),
		tipDiameterMm: spanOf({
			wish: wishes.tipDiameterMm,
			covered: coveredBy(shapeOf(criteria, AT.tip)),
			allowed: catalogue.tipDiameterMm,
			step: STEP.diameterMm,
		}),
		massG: spanOf({
			wish: wishes.massG,
			covered: coveredBy(shapeOf(criteria, AT.weight)),
			allowed: [0, Number.POSITIVE_INFINITY],
			step: STEP.massG,
		}),
		forwardMm: { low: 0, high: FORWARD_MAX_MM, step: STEP.balanceMm },
	};
	const first = (name: Continuous) =>
		Math.min(p.wantedCount > 0 ? 3 : 2, benchSteps(spans[name]) + 1);
	const counts: Record<Continuous, number> = {
		lengthMm: first("lengthMm"),
		buttDiameterMm: first("buttDiameterMm"),
		tipDiameterMm: first("tipDiameterMm"),
		massG: first("massG"),
		forwardMm: first("forwardMm"),
	};
	let axes = axesOf(p, spans, counts);
	const isFixed = isEverythingFixed(axes);
	while (candidateCount(axes) < p.wantedCount) {
		const coarsest = coarsestOf(spans, counts, isFixed);
		if (coarsest === null) break;
		counts[coarsest] = finerCount(spans[coarsest], counts[coarsest]);
		axes = axesOf(p, spans, counts);
	}
	return axes;
}

/** No length, butt, tip or weight is left to choose: every candidate differs in wood, build or balance only. */
export const isEverythingFixed = (axes: Axes): boolean =>
	axes.lengthMm.length === 1 &&
	axes.buttDiameterMm.length === 1 &&
	axes.tipDiameterMm.length === 1 &&
	axes.massG.length === 1;

const CONTINUOUS = [
	"lengthMm",
	"buttDiameterMm",
	"tipDiameterMm",
	"massG",
	"forwardMm",
] as const;
type Continuous = (typeof CONTINUOUS)[number];

/** Weights and balances are weighed up this much before shapes: a shape costs the scan far more than a load. */
const LOADS_FIRST = 3;

/**
 * The axis whose values lie most bench steps apart, of those that are coarser than the bench works while
 * there are any; null where nothing can be made finer, or only the balance and `toBenchOnly`.
 */
function coarsestOf(
	spans: Readonly<Record<Continuous, Span>>,
	counts: Readonly<Record<Continuous, number>>,
	toBenchOnly: boolean,
): Continuous | null {
	let coarsest: Continuous | null = null;
	let most = 0;
	let isAboveBench = false;
	for (const name of CONTINUOUS) {
		const steps = benchSteps(spans[name]);
		if (steps === 0) continue;
		const apart = steps / (counts[name] - 1);
		const isCoarse = apart > 1 + 1e-9;
		if (!isCoarse && (isAboveBench || toBenchOnly)) continue;
		const isLoad = name === "massG" || name === "forwardMm";
		const urgency = isLoad ? LOADS_FIRST * apart : apart;
		if (urgency > most + 1e-9 || (isCoarse && !isAboveBench)) {
			most = urgency;
			coarsest = name;
		}
		isAboveBench ||= isCoarse;
	}
	return coarsest;
}

function axesOf(
	p: { catalogue: Catalogue; needs: FittingNeeds },
	spans: Readonly<Record<Continuous, Span>>,
	counts: Readonly<Record<Continuous, number>>,
): Axes {
	const values = (name: Continuous) => valuesOf(spans[name], counts[name]);
	const { catalogue } = p;
	return {
		lengthMm: values("lengthMm"),
		buttDiameterMm: values("buttDiameterMm"),
		tipDiameterMm: values("tipDiameterMm"),
		taperShapes: catalogue.taperShapes,
		splices: catalogue.splices.map(({ id }) => id),
		layouts: catalogue.layouts,
		shaftWoods: catalogue.shaftWoods,
		buttWoods: catalogue.buttWoods.map(({ id }) => id),
		massG: values("massG"),
		forwardMm: values("forwardMm"),
		ferruleMetal:
			p.needs.input.wishes.ferruleMetal ??
			p.needs.input.workshop?.ferruleMetals[0] ??
			"brass",
	};
}

const shapeOf = (criteria: readonly Criterion[], i: number): Shape => {
	const criterion = criteria[i];
	if (!criterion) throw new RangeError(`no criterion at ${i}`);
	return criterion.shape;
};

function coveredBy({ low, high }: Shape): readonly [number, number] {
	if (!low || !high) throw new RangeError("an axis needs a two-sided shape");
	return [
		low.ideal + COVERED * (low.limit - low.ideal),
		high.ideal + COVERED * (high.limit - high.ideal),
	];
}

/** Butts whose closure at the hand is covered, on an even taper of the needed length. */
function buttCovered(
	needs: FittingNeeds,
	closure: Shape,
): readonly [number, number] {
	const [low, high] = coveredBy(closure);
	const tipMm = needs.tip.value;
	const grown = growthCurve("even").at(
		needs.butt.gripStationMm / needs.length.value,
	);
	const butt = (closureMm: number) =>
		tipMm + (needs.ringMm.value + closureMm / Math.PI - tipMm) / grown;
	return [butt(low), butt(high)];
}
