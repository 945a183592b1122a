import { needsFor } from "./fitting-needs";
import type { FittingInput } from "./input";
import { FELT } from "./judgement";
import { prepare, refiningOf, type SearchChoices } from "./prepare";
import { refine, type Valued, valued } from "./refine";
import type { CueSearch } from "./search";
import {
	type OpenQuestion,
	openQuestions,
	type PossibleAnswer,
} from "./unanswered";
import { catalogueOf } from "./usual-build";

type Figures = Readonly<
	Record<
		"lengthMm" | "massG" | "buttDiameterMm" | "tipDiameterMm" | "balanceMm",
		number
	>
>;

/** What knowing one answer better would do. */
export interface Influence {
	readonly answer: string;
	readonly unit: OpenQuestion["unit"];
	readonly now: OpenQuestion["now"];
	/** Standard deviation of each figure over the possible answers: how far it would move. */
	readonly needMovement: Omit<Figures, "balanceMm">;
	/** The same of the recommended cue, worked out anew for each answer; null where that was not tried. */
	readonly cueMovement: Figures | null;
	/** Root sum of squares in smallest felt differences, of the cue where known, else of the needs. */
	readonly feltSteps: number;
	/** Mean worth gained by ordering for the answer instead of without it; null as above. */
	readonly worthGained: number | null;
}

/** Needs that move by less than this are not worth working the cue out for, felt steps. */
const WORTH_TRYING = 0.15;

/**
 * Which answer, if measured better, moves the recommendation most. Each open answer is forecast by the
 * models as two values one standard deviation either side (a two-point rule: the spread of the results
 * is Var(E[result | answer])), the needs and then the cue are worked out for both. Strongest first.
 */
export function whatWouldChange(p: {
	search: CueSearch;
	choices: SearchChoices;
	/** Cues are worked out anew for this many answers. Default 6. */
	triedCount?: number;
}): readonly Influence[] {
	const { prepared, refined } = p.search;
	const best = refined[0]?.continuous;
	if (!best) return [];
	const { request } = best.candidate;
	const questions = openQuestions({
		needs: prepared.needs,
		woods: [request.shaftWood, request.buttWood],
		densities: prepared.setting.densities,
	});
	const moved = questions
		.map((question) => ({ question, movement: needMovementOf(question) }))
		.map((one) => ({ ...one, felt: feltOf(one.movement) }))
		.sort((a, b) => b.felt - a.felt);
	const tried = new Set(
		[
			...moved
				.filter(({ felt }) => felt > WORTH_TRYING)
				.slice(0, p.triedCount ?? 6),
			...moved.filter(({ question }) => question.unit === "kg/m³"),
		].map(({ question }) => question.answer),
	);
	return moved
		.map(({ question, movement, felt }): Influence => {
			const cue = tried.has(question.answer)
				? cueMovementOf(question, best, p)
				: null;
			return {
				answer: question.answer,
				unit: question.unit,
				now: question.now,
				needMovement: movement,
				cueMovement: cue?.movement ?? null,
				feltSteps: cue ? feltOf(cue.movement) : felt,
				worthGained: cue?.worthGained ?? null,
			};
		})
		.sort((a, b) => b.feltSteps - a.feltSteps);
}

const NO_MOVEMENT = {
	lengthMm: 0,
	massG: 0,
	buttDiameterMm: 0,
	tipDiameterMm: 0,
} as const;

function needMovementOf({
	possible,
	unit,
}: OpenQuestion): Influence["needMovement"] {
	if (unit === "kg/m³") return NO_MOVEMENT;
	const found = possible.flatMap(({ share, input }) => {
		const figures = figuresOf(input);
		return figures ? [{ share, figures }] : [];
	});
	const of = (name: keyof typeof NO_MOVEMENT) =>
		spreadOf(
			found.map(({ share, figures }) => ({ share, value: figures[name] })),
		);
	return {
		lengthMm: of("lengthMm"),
		massG: of("massG"),
		buttDiameterMm: of("buttDiameterMm"),
		tipDiameterMm: of("tipDiameterMm"),
	};
}

function figuresOf(input: FittingInput): Influence["needMovement"] | null {
	const needs = needsFor(input);
	if (!needs.ok) return null;
	const { length, massNeed, butt, tip } = needs.value;
	return {
		lengthMm: length.exact,
		massG: massNeed.figure.exact,
		buttDiameterMm: butt.figure.exact,
		tipDiameterMm: tip.exact,
	};
}

/** Standard deviation of a value over answers of the given shares. */
function spreadOf(
	parts: readonly { readonly share: number; readonly value: number }[],
): number {
	const total = parts.reduce((sum, { share }) => sum + share, 0);
	if (parts.length < 2) return 0;
	const mean =
		parts.reduce((sum, one) => sum + one.share * one.value, 0) / total;
	return Math.sqrt(
		parts.reduce((sum, one) => sum + one.share * (one.value - mean) ** 2, 0) /
			total,
	);
}

const FELT_OF: Readonly<Record<keyof Figures, number>> = {
	lengthMm: FELT.lengthMm,
	massG: FELT.massG,
	buttDiameterMm: FELT.buttDiameterMm,
	tipDiameterMm: FELT.tipDiameterMm,
	balanceMm: FELT.balanceMm,
};

const feltOf = (movement: Partial<Figures>): number =>
	Math.hypot(
		...(Object.keys(movement) as (keyof Figures)[]).map(
			(name) => (movement[name] ?? 0) / FELT_OF[name],
		),
	);

/** The cue worked out anew from the present best for each answer, and what that is worth. */
function cueMovementOf(
	{ possible }: OpenQuestion,
	best: Valued,
	p: { search: CueSearch; choices: SearchChoices },
): { movement: Figures; worthGained: number } | null {
	const outcomes = possible.flatMap((answer) => {
		const made = refinedFor(answer, best, p);
		return made ? [{ share: answer.share, ...made }] : [];
	});
	if (outcomes.length < 2) return null;
	const of = (name: keyof Figures) =>
		spreadOf(
			outcomes.map(({ share, figures }) => ({ share, value: figures[name] })),
		);
	const total = outcomes.reduce((sum, { share }) => sum + share, 0);
	return {
		movement: {
			lengthMm: of("lengthMm"),
			massG: of("massG"),
			buttDiameterMm: of("buttDiameterMm"),
			tipDiameterMm: of("tipDiameterMm"),
			balanceMm: of("balanceMm"),
		},
		worthGained:
			outcomes.reduce((sum, { share, gained }) => sum + share * gained, 0) /
			total,
	};
}

function refinedFor(
	answer: PossibleAnswer,
	best: Valued,
	{ search, choices }: { search: CueSearch; choices: SearchChoices },
): { figures: Figures; gained: number } | null {
	const catalogue =
		choices.catalogue ??
		catalogueOf(answer.input, search.prepared.needs.gameId);
	const made = prepare(answer.input, {
		...choices,
		catalogue: {
			...catalogue,
			...(answer.densities ? { densities: answer.densities } : {}),
		},
	});
	if (!made.ok) return null;
	const refining = refiningOf(made.value);
	// A weight the wood turns out not to give leaves the wood's own.
	const start =
		valued(refining, best.candidate) ??
		valued(refining, { ...best.candidate, massG: null, forwardMm: 0 });
	if (!start) return null;
	const { continuous } = refine(refining, start.candidate);
	const { request } = continuous.candidate;
	const { load } = continuous.measured;
	return {
		figures: {
			lengthMm: request.lengthMm,
			massG: load.massG,
			buttDiameterMm: request.buttDiameterMm,
			tipDiameterMm: request.tipDiameterMm,
			balanceMm: load.firstGMm / load.massG,
		},
		gained: continuous.overall - start.overall,
	};
}
