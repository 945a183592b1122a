import type { Against, FigureName, Moving } from "./argument";
import {
	type CompiledCriteria,
	CRITERION_COUNT,
	CRITERION_IDS,
	type CriterionId,
} from "./criteria";
import { around, desirability } from "./desirability";
import { NEED_ZONE } from "./judgement";
import { type Refining, type Valued, valued } from "./refine";

/** One felt step either way, everything else kept: the criterion that would gain most by it. */
export function againstByMoving(
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
export function againstByEvidence(
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

export function stronger(a: Against | null, b: Against | null): Against | null {
	if (a === null || b === null) return a ?? b;
	return b.strength > a.strength ? b : a;
}
