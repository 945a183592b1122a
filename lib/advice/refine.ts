import type { Outcome } from "@/lib/numerics/outcome";
import type { Catalogue } from "./catalogue";
import { type CompiledCriteria, CRITERION_COUNT } from "./criteria";
import { type Candidate, overallOf } from "./evaluate";
import type { Measured } from "./evaluator";
import type { Wishes } from "./input";
import { STEP } from "./judgement";
import type { HardLimits } from "./limits";

/** What a candidate is worth, by the same tables as the scan. */
export interface Valued {
	readonly candidate: Candidate;
	readonly measured: Measured;
	readonly overall: number;
}

export interface Refined {
	/** The best point between the bench's steps. */
	readonly continuous: Valued;
	/** The best neighbour on the bench's steps: what is recommended. */
	readonly snapped: Valued;
	/** What snapping cost: overall desirability, and each criterion's, in order; negative where it gained. */
	readonly snappingCost: number;
	readonly snappingCostBy: readonly number[];
	readonly evaluations: number;
}

/** What refinement may move, and how candidates are valued. */
export interface Refining {
	readonly evaluate: (candidate: Candidate) => Outcome<Measured>;
	/** Overall desirability of a row; the criteria's own, or a compromise of several. */
	readonly worth: (row: Float64Array) => number;
	readonly compiled: CompiledCriteria;
	readonly wishes: Wishes;
	readonly catalogue: Catalogue;
	readonly limits: HardLimits;
}

type Free =
	| "lengthMm"
	| "buttDiameterMm"
	| "tipDiameterMm"
	| "massG"
	| "forwardMm";

/** First steps of the search: about half the spacing of a scan. */
const START: Readonly<Record<Free, number>> = {
	lengthMm: 2 * STEP.lengthMm,
	buttDiameterMm: 2 * STEP.diameterMm,
	tipDiameterMm: STEP.diameterMm,
	massG: 2 * STEP.massG,
	forwardMm: 2 * STEP.balanceMm,
};
/** Halvings: ends at an eighth of a bench step or less. */
const HALVINGS = 5;
/** A move must gain this much of the overall worth. */
const LEAST_GAIN = 1e-5;

/** Overall desirability of the criteria as compiled. */
export const worthOf =
	(compiled: CompiledCriteria) =>
	(row: Float64Array): number =>
		overallOf(compiled, row);

export function valued(r: Refining, candidate: Candidate): Valued | null {
	if (!isAllowed(r, candidate)) return null;
	const measured = r.evaluate(candidate);
	if (!measured.ok) return null;
	const { row } = measured.value;
	return { candidate, measured: measured.value, overall: r.worth(row) };
}

function isAllowed(
	{ catalogue, limits }: Refining,
	{ request, massG, forwardMm }: Candidate,
): boolean {
	const within = (value: number, [low, high]: readonly [number, number]) =>
		value >= low && value <= high;
	return (
		within(request.lengthMm, catalogue.lengthMm) &&
		within(request.buttDiameterMm, catalogue.buttDiameterMm) &&
		within(request.tipDiameterMm, catalogue.tipDiameterMm) &&
		request.lengthMm >= limits.lengthMinMm &&
		request.tipDiameterMm <= limits.tipMaxMm &&
		(massG === null || massG <= limits.massMaxG) &&
		forwardMm >= 0
	);
}

function moved(candidate: Candidate, name: Free, by: number): Candidate {
	const { request } = candidate;
	if (name === "massG")
		return {
			...candidate,
			massG: candidate.massG === null ? null : candidate.massG + by,
		};
	if (name === "forwardMm")
		return {
			...candidate,
			forwardMm: Math.max(0, candidate.forwardMm + by),
		};
	return { ...candidate, request: { ...request, [name]: request[name] + by } };
}

function freeOf({ wishes }: Refining, { massG }: Candidate): readonly Free[] {
	const names: Free[] = ["lengthMm", "buttDiameterMm", "tipDiameterMm"];
	const free = names.filter(
		(name) => wishes[name as keyof Wishes] === undefined,
	);
	if (massG === null) return free;
	if (wishes.massG === undefined) free.push("massG");
	return [...free, "forwardMm"];
}

/**
 * Pattern search from a scanned candidate: each free figure up and down in turn,
 * steps halved when none helps; then the best of the neighbours on the bench's steps. Woods, splice,
 * layout and taper stay. Moves of two figures at once were tried: three times the work, worth up by
 * 0.0003 at most.
 */
export function refine(r: Refining, start: Candidate): Refined {
	const first = valued(r, start);
	if (!first) throw new RangeError("refine: the start cannot be built");
	let best = first;
	let evaluations = 1;
	const free = freeOf(r, start);
	let scale = 1;
	for (let halving = 0; halving <= HALVINGS; ) {
		let improved = false;
		for (const name of free)
			for (const sign of [1, -1]) {
				const step = sign * scale * START[name];
				const tried = valued(r, moved(best.candidate, name, step));
				evaluations++;
				if (tried && tried.overall > best.overall + LEAST_GAIN) {
					best = tried;
					improved = true;
					break;
				}
			}
		if (improved) continue;
		scale /= 2;
		halving++;
	}
	const snapped = snap(r, best, first);
	return {
		continuous: best,
		snapped: snapped.best,
		snappingCost: best.overall - snapped.best.overall,
		snappingCostBy: Array.from({ length: CRITERION_COUNT }, (_, i) => {
			const at = ({ measured }: Valued) =>
				r.compiled.desirability(i, measured.row[i] as number);
			return at(best) - at(snapped.best);
		}),
		evaluations: evaluations + snapped.evaluations,
	};
}

const SNAPPED = {
	lengthMm: STEP.lengthMm,
	buttDiameterMm: STEP.diameterMm,
	tipDiameterMm: STEP.diameterMm,
} as const;

/** Below and above on the bench's steps; the value itself where a wish fixed it or it is on a step. */
function neighbours(value: number, step: number, isFree: boolean): number[] {
	if (!isFree) return [value];
	const below = Math.floor(value / step + 1e-9) * step;
	return value - below < 1e-9 * step ? [below] : [below, below + step];
}

/**
 * The best of the neighbours on the steps. A scanned start that is on the steps already is one of them,
 * as at the edge of what the wood weighs; of one between them the neighbours are looked at too, and it
 * is taken itself only where none of all those can be built.
 */
function snap(
	r: Refining,
	from: Valued,
	start: Valued,
): { best: Valued; evaluations: number } {
	const isOn = isOnSteps(r, start);
	let best: Valued | null = isOn ? start : null;
	let evaluations = 0;
	const consider = (tried: Candidate): Valued | null => {
		evaluations++;
		const found = valued(r, tried);
		if (found && (best === null || found.overall > best.overall)) best = found;
		return found;
	};
	visitNeighbours(r, from.candidate, consider);
	if (!isOn) visitNeighbours(r, start.candidate, consider);
	return { best: best ?? start, evaluations };
}

/** Every combination of neighbouring steps; the balance, where the metal is brought forward, to its own step. */
function visitNeighbours(
	{ wishes }: Refining,
	candidate: Candidate,
	consider: (tried: Candidate) => Valued | null,
): void {
	const sides = (name: keyof typeof SNAPPED) =>
		neighbours(
			candidate.request[name],
			SNAPPED[name],
			wishes[name] === undefined,
		);
	const masses: (number | null)[] =
		candidate.massG === null
			? [null]
			: neighbours(candidate.massG, STEP.massG, wishes.massG === undefined);
	for (const lengthMm of sides("lengthMm"))
		for (const buttDiameterMm of sides("buttDiameterMm"))
			for (const tipDiameterMm of sides("tipDiameterMm"))
				for (const massG of masses) {
					const request = {
						...candidate.request,
						lengthMm,
						buttDiameterMm,
						tipDiameterMm,
					};
					const rear = consider({ request, massG, forwardMm: 0 });
					if (!rear || massG === null || candidate.forwardMm === 0) continue;
					const rearMm = balanceOf(rear);
					for (const balanceMm of neighbours(
						rearMm + candidate.forwardMm,
						STEP.balanceMm,
						true,
					))
						if (balanceMm > rearMm)
							consider({ request, massG, forwardMm: balanceMm - rearMm });
				}
}

/** A wish counts as on the steps whatever it is; a balance by itself, or by how far it was brought forward. */
function isOnSteps({ wishes }: Refining, start: Valued): boolean {
	const { request, massG, forwardMm } = start.candidate;
	const on = (value: number, step: number) =>
		Math.abs(value / step - Math.round(value / step)) < 1e-6;
	return (
		(Object.keys(SNAPPED) as (keyof typeof SNAPPED)[]).every(
			(name) => wishes[name] !== undefined || on(request[name], SNAPPED[name]),
		) &&
		(massG === null || wishes.massG !== undefined || on(massG, STEP.massG)) &&
		(on(forwardMm, STEP.balanceMm) || on(balanceOf(start), STEP.balanceMm))
	);
}

const balanceOf = ({ measured }: Valued): number =>
	measured.load.firstGMm / measured.load.massG;
