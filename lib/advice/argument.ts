import type { CitationId } from "@/lib/reference/citations";
import { againstByEvidence, againstByMoving, stronger } from "./against";
import { CRITERION_IDS, type CriterionId } from "./criteria";
import type { Candidate } from "./evaluate";
import type { Basis, Figure } from "./figure";
import { FELT, STEP } from "./judgement";
import type { CueOption } from "./option";
import type { Prepared } from "./prepare";
import type { Refining, Valued } from "./refine";

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

export interface Moving {
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
