import { accept, type Outcome } from "@/lib/numerics/outcome";
import type { Advice } from "./advise";
import type { FittingInput } from "./input";
import { isAsWished, recommend } from "./recommend";
import type { SpecContent } from "./spec";
import { isSame } from "./today";
import { MODEL_VERSION } from "./version";

/** The figures that are compared: lengths and diameters mm, weight g. */
export const COMPARED_FIGURES = [
	"length",
	"mass",
	"butt",
	"tip",
	"balance",
] as const;
export type ComparedFigure = (typeof COMPARED_FIGURES)[number];
export type ComparedFigures = Readonly<Record<ComparedFigure, number>>;

/** Why two figures differ, in the order the parts are worked out. */
export const CAUSES = [
	"picked",
	"model",
	"grew",
	"wished",
	"settings",
] as const;
export type Cause = (typeof CAUSES)[number];

/** One of the two that are compared. */
export type Compared =
	/** Saved: the figures stay as they were. */
	| { readonly kind: "spec"; readonly content: SpecContent }
	/** Answers alone: the figures are those of today's models. */
	| { readonly kind: "fitting"; readonly input: FittingInput };

export interface FigureDifferences {
	readonly one: ComparedFigures;
	readonly other: ComparedFigures;
	/** Add up to `other − one`, figure by figure. */
	readonly parts: Readonly<Record<Cause, ComparedFigures>>;
}

export const inputOf = (side: Compared): FittingInput =>
	side.kind === "spec" ? side.content.input : side.input;

/** The best cue for a fitting's answers by today's models, in its figures. */
export type Figuring = (input: FittingInput) => Outcome<ComparedFigures>;

/** What each side says by itself; a spec as it was saved. */
export const figuresOf = (
	side: Compared,
	figuring: Figuring = remembered(todaysFigures),
): Outcome<ComparedFigures> =>
	side.kind === "spec"
		? accept(valuesOf(side.content.figures))
		: figuring(side.input);

/**
 * The whole difference between two sides, split by cause along one path, each part on top of those
 * before: from the one as it stands to the best cue of its own search (picked), by today's models
 * (model), with the other's body measures and age (grew), with all else that the other's customer said
 * (wished), with the workshop's settings of the other (settings), and back from today's models to
 * the other as it stands (model, picked). A telescoping sum: the parts are the whole difference
 * whatever the figures. Refused where a step on the way has no advice.
 */
export function figureDifferences(
	one: Compared,
	other: Compared,
	options: { figuring?: Figuring; modelVersion?: string } = {},
): Outcome<FigureDifferences> {
	const { modelVersion = MODEL_VERSION } = options;
	const figuring = remembered(options.figuring ?? todaysFigures);
	const from = inputOf(one);
	const to = inputOf(other);
	const path: ComparedFigures[] = [];
	for (const input of [
		from,
		{ ...from, player: to.player },
		{ ...to, workshop: from.workshop },
		to,
	]) {
		const figures = figuring(input);
		if (!figures.ok) return figures;
		path.push(figures.value);
	}
	const [first, grown, wished, last] = path as [
		ComparedFigures,
		ComparedFigures,
		ComparedFigures,
		ComparedFigures,
	];
	const oneStands = stoodAs(one, first, modelVersion);
	const otherStands = stoodAs(other, last, modelVersion);
	return accept({
		one: oneStands.figures,
		other: otherStands.figures,
		parts: {
			picked: each(
				(figure) =>
					otherStands.figures[figure] -
					otherStands.best[figure] -
					(oneStands.figures[figure] - oneStands.best[figure]),
			),
			model: each(
				(figure) =>
					first[figure] -
					oneStands.best[figure] -
					(last[figure] - otherStands.best[figure]),
			),
			grew: between(first, grown),
			wished: between(grown, wished),
			settings: between(wished, last),
		},
	});
}

/**
 * What a side says, and what the best cue of its own search said by the models it was made with. By
 * today's models that is today's figure; of older ones the search kept it, except for the weight and
 * balance of wood left as it is, which are taken as saved.
 */
function stoodAs(
	side: Compared,
	today: ComparedFigures,
	modelVersion: string,
): { figures: ComparedFigures; best: ComparedFigures } {
	if (side.kind === "fitting") return { figures: today, best: today };
	const { content } = side;
	const figures = valuesOf(content.figures);
	if (content.modelVersion === modelVersion) return { figures, best: today };
	const best = content.search?.options[0];
	if (best === undefined || !isAsWished(best, content.input))
		return { figures, best: figures };
	return {
		figures,
		best: {
			length: best.request.lengthMm,
			butt: best.request.buttDiameterMm,
			tip: best.request.tipDiameterMm,
			mass: best.wantedMassG ?? figures.mass,
			balance: best.wantedBalanceFromButtMm ?? figures.balance,
		},
	};
}

function todaysFigures(input: FittingInput): Outcome<ComparedFigures> {
	const advice = recommend(input);
	return advice.ok ? accept(valuesOfAdvice(advice.value)) : advice;
}

const valuesOfAdvice = ({ length, mass, butt, tip, balance }: Advice) =>
	valuesOf({ length, mass, butt: butt.figure, tip, balance });

const valuesOf = (
	figures: Readonly<Record<ComparedFigure, { readonly value: number }>>,
): ComparedFigures => each((figure) => figures[figure].value);

const each = (of: (figure: ComparedFigure) => number): ComparedFigures => ({
	length: of("length"),
	mass: of("mass"),
	butt: of("butt"),
	tip: of("tip"),
	balance: of("balance"),
});

const between = (before: ComparedFigures, after: ComparedFigures) =>
	each((figure) => after[figure] - before[figure]);

/** Asks once for equal answers: most steps of a path change nothing, and a search takes its time. */
function remembered(figuring: Figuring): Figuring {
	const asked: { input: FittingInput; figures: Outcome<ComparedFigures> }[] =
		[];
	return (input) => {
		const known = asked.find((before) => isSame(before.input, input));
		if (known !== undefined) return known.figures;
		const figures = figuring(input);
		asked.push({ input, figures });
		return figures;
	};
}
