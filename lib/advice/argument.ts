import type { CitationId } from "@/lib/reference/citations";
import {
	type CompiledCriteria,
	CRITERION_COUNT,
	CRITERION_IDS,
	type CriterionId,
} from "./criteria";
import { around, desirability } from "./desirability";
import type { Candidate } from "./evaluate";
import type { Basis, Figure } from "./figure";
import { FELT, NEED_ZONE, STEP } from "./judgement";
import type { CueOption } from "./option";
import type { Prepared } from "./prepare";
import { type Refining, type Valued, valued } from "./refine";

export type FigureName = "length" | "mass" | "butt" | "tip" | "balance";

type Facts = Readonly<Record<string, number | string>>;

export interface Reason {
	readonly code: string;
	readonly basis: Basis;
	readonly sources: readonly CitationId[];
	readonly facts: Facts;
}

/** What speaks most strongly against a choice, as the change of the overall desirability's logarithm. */
export type Against =
	| {
			/** A criterion that would gain most if the choice were another one step away. */
			readonly kind: "criterion";
			readonly criterion: CriterionId;
			readonly moveTo: number | string;
			/** Of the criterion's desirability, from and to. */
			readonly from: number;
			readonly to: number;
			/** Of the overall desirability, all criteria together: what the move would cost. */
			readonly overallCost: number;
			readonly strength: number;
	  }
	| {
			/** The piece of evidence that pulls hardest the other way, were it alone. */
			readonly kind: "evidence";
			readonly code: string;
			readonly value: number;
			readonly sd: number;
			readonly shareFraction: number;
			readonly strength: number;
	  };

export interface Argued {
	readonly choice: FigureName | "butt-wood" | "splice" | "layout" | "taper";
	readonly value: number | string;
	readonly forPlayer: Reason;
	/** What the bench sets for it. */
	readonly forBench: Facts;
	/** Null where nothing speaks against it. */
	readonly against: Against | null;
}

interface Moving {
	readonly figure: Figure | null;
	readonly felt: number;
	readonly value: number;
	moved(by: number): Candidate;
}

/** Reasons and the strongest counter-argument of each figure of a recommended cue. */
export function argueFigures(p: {
	prepared: Prepared;
	refining: Refining;
	best: Valued;
	option: CueOption;
}): readonly Argued[] {
	const { prepared, option } = p;
	const { needs } = prepared;
	const { plan, request } = option;
	const bench: Readonly<Record<FigureName, Facts>> = {
		length: { lengthMm: request.lengthMm, stepMm: STEP.lengthMm },
		mass: {
			naturalMassG: option.naturalMassG.value,
			naturalMassSdG: option.naturalMassG.sd,
			metalMassG: plan.metalMassG,
			drilledOutMassG: plan.drilledOutMassG,
			boreDiameterMm: plan.boreDiameterMm,
			boreDepthMm: plan.boreDepthMm,
		},
		butt: {
			buttDiameterMm: request.buttDiameterMm,
			stepMm: STEP.diameterMm,
			gripStationMm: needs.butt.gripStationMm,
		},
		tip: { tipDiameterMm: request.tipDiameterMm, stepMm: STEP.diameterMm },
		balance: {
			slugFromButtMm: plan.slugFromButtMm,
			slugLengthMm: plan.slugLengthMm,
			naturalBalanceFromButtMm: plan.naturalBalanceFromButtMm.value,
			balanceAfterFromButtMm: plan.balanceAfterFromButtMm.value,
		},
	};
	const moving = movingFigures(p);
	return (Object.keys(bench) as FigureName[]).map((choice) => {
		const one = moving[choice];
		return {
			choice,
			value: one.value,
			forPlayer: one.figure
				? heaviest(one.figure)
				: servedBy(prepared, option, "balance"),
			forBench: bench[choice],
			against: stronger(
				againstByMoving(p, one),
				one.figure && againstByEvidence(prepared.compiled, one, choice),
			),
		};
	});
}

function movingFigures({
	prepared,
	best,
	option,
}: {
	prepared: Prepared;
	best: Valued;
	option: CueOption;
}): Readonly<Record<FigureName, Moving>> {
	const { needs } = prepared;
	const { candidate } = best;
	const { request } = candidate;
	const shape =
		(name: "lengthMm" | "buttDiameterMm" | "tipDiameterMm") =>
		(by: number): Candidate => ({
			...candidate,
			request: { ...request, [name]: request[name] + by },
		});
	const massG = best.measured.load.massG;
	return {
		length: {
			figure: needs.length,
			felt: FELT.lengthMm,
			value: request.lengthMm,
			moved: shape("lengthMm"),
		},
		mass: {
			figure: needs.massNeed.figure,
			felt: FELT.massG,
			value: massG,
			moved: (by) => ({ ...candidate, massG: massG + by }),
		},
		butt: {
			figure: needs.butt.figure,
			felt: FELT.buttDiameterMm,
			value: request.buttDiameterMm,
			moved: shape("buttDiameterMm"),
		},
		tip: {
			figure: needs.tip,
			felt: FELT.tipDiameterMm,
			value: request.tipDiameterMm,
			moved: shape("tipDiameterMm"),
		},
		balance: {
			figure: null,
			felt: FELT.balanceMm,
			value: option.plan.balanceAfterFromButtMm.value,
			moved: (by) => ({
				...candidate,
				forwardMm: Math.max(0, candidate.forwardMm + by),
			}),
		},
	};
}

function heaviest({ evidence, basis }: Figure): Reason {
	const [first] = evidence;
	if (!first) throw new RangeError("a figure without evidence");
	return {
		code: first.code,
		basis,
		sources: first.sources,
		facts: {
			...first.facts,
			value: first.value,
			sd: first.sd,
			shareFraction: first.shareFraction,
		},
	};
}

function servedBy(
	{ criteria }: Prepared,
	option: CueOption,
	id: CriterionId,
): Reason {
	const criterion = criteria[CRITERION_IDS.indexOf(id)];
	if (!criterion) throw new RangeError(`no criterion ${id}`);
	return {
		code: `serves-${id}`,
		basis: criterion.basis,
		sources: criterion.sources,
		facts: {
			...criterion.facts,
			desirability: option.results[id].desirability,
		},
	};
}

/** One felt step either way, everything else kept: the criterion that would gain most by it. */
function againstByMoving(
	{ refining, best }: { refining: Refining; best: Valued },
	{ felt, value, moved }: Moving,
): Against | null {
	let strongest: Against | null = null;
	for (const by of [felt, -felt]) {
		const tried = valued(refining, moved(by));
		if (!tried) continue;
		const gain = mostGained(
			refining.compiled,
			best.measured.row,
			tried.measured.row,
		);
		if (gain)
			strongest = stronger(strongest, {
				...gain,
				moveTo: value + by,
				overallCost: best.overall - tried.overall,
			});
	}
	return strongest;
}

type Gain = Pick<
	Extract<Against, { kind: "criterion" }>,
	"kind" | "criterion" | "from" | "to" | "strength"
>;

/** Smaller changes of the overall logarithm than this are no argument. */
const NEGLIGIBLE = 1e-4;

/** The criterion whose weighted logarithm rises most from one row to another. */
export function mostGained(
	compiled: CompiledCriteria,
	from: ArrayLike<number>,
	to: ArrayLike<number>,
): Gain | null {
	let most: Gain | null = null;
	for (let i = 0; i < CRITERION_COUNT; i++) {
		const weight = compiled.weights[i] as number;
		if (weight === 0) continue;
		const before = compiled.desirability(i, from[i] as number);
		const after = compiled.desirability(i, to[i] as number);
		if (!(after > before)) continue;
		const strength =
			(weight * (Math.log(after) - Math.log(before))) / compiled.weightSum;
		if (strength > (most?.strength ?? NEGLIGIBLE))
			most = {
				kind: "criterion",
				criterion: CRITERION_IDS[i] as CriterionId,
				from: before,
				to: after,
				strength,
			};
	}
	return most;
}

/** Desirability is not let fall below this when one piece of evidence alone would call a value unacceptable. */
const LEAST = 0.05;

/** Each piece of evidence taken alone as the need: the one under which the chosen value is worth least. */
function againstByEvidence(
	compiled: CompiledCriteria,
	{ figure, felt, value }: Moving,
	choice: FigureName,
): Against | null {
	if (!figure) return null;
	const own = OWN[choice];
	const i = own === null ? -1 : CRITERION_IDS.indexOf(own);
	const weight = i < 0 ? 0 : Math.max(1, compiled.weights[i] as number);
	let strongest: Against | null = null;
	for (const {
		code,
		value: pull,
		sd,
		shareFraction,
		basis,
	} of figure.evidence) {
		if (basis === "wish") continue;
		const alone = around({
			value: pull,
			idealHalf: NEED_ZONE.idealShare * felt,
			limitHalf: Math.max(NEED_ZONE.limitFelt * felt, felt + 2 * sd),
		});
		const worth = Math.max(LEAST, desirability(alone, value));
		const strength = (-weight * Math.log(worth)) / compiled.weightSum;
		if (strength > (strongest?.strength ?? NEGLIGIBLE))
			strongest = {
				kind: "evidence",
				code,
				value: pull,
				sd,
				shareFraction,
				strength,
			};
	}
	return strongest;
}

const OWN: Readonly<Record<FigureName, CriterionId | null>> = {
	length: "reach",
	mass: "weight",
	butt: "closure",
	tip: "tip",
	balance: null,
};

function stronger(a: Against | null, b: Against | null): Against | null {
	if (a === null || b === null) return a ?? b;
	return b.strength > a.strength ? b : a;
}
