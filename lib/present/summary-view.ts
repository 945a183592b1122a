import type { Advice } from "@/lib/advice/advise";
import type { Figure } from "@/lib/advice/figure";
import type { FittingInput, PresentCue } from "@/lib/advice/input";
import { FELT } from "@/lib/advice/judgement";
import type { SpecContent } from "@/lib/advice/spec";
import type { Answers, FieldName } from "@/lib/forms/fields";
import type { Reader } from "@/lib/words/reader";
import { figureLabel, figureView, quantityOf } from "./advice-view";
import { type Both, formatBoth } from "./figures";
import { growthOf } from "./growth-view";
import { fieldLabel } from "./labels";
import { joinedAnd } from "./lists";
import { cautionText } from "./notices";
import { poseView } from "./pose-view";
import { type FigureId, formatFigure, formatFigureBand } from "./reasons";
import { type MeasuredLine, measuredLines } from "./summary-measures";

/** What a summary is of: a saved spec as it was saved, or an advice as it stands. The numbers are theirs. */
export type SummarySource = Pick<
	SpecContent,
	"input" | "figures" | "buttRangeMm" | "cautions" | "modelVersion"
>;

export const summarySource = (advice: Advice): SummarySource => ({
	input: advice.input,
	figures: {
		length: advice.length,
		mass: advice.mass,
		butt: advice.butt.figure,
		tip: advice.tip,
		balance: advice.balance,
	},
	buttRangeMm: advice.butt.rangeMm,
	cautions: advice.cautions,
	modelVersion: advice.modelVersion,
});

export interface SummaryView {
	readonly figures: readonly {
		readonly id: FigureId;
		readonly label: string;
		readonly value: Both;
		/** The band and what it means, in a sentence. */
		readonly band: string;
		readonly reason: string;
	}[];
	readonly measured: readonly MeasuredLine[];
	/** What is known of the present cue. */
	readonly present: readonly {
		readonly label: string;
		readonly value: string;
	}[];
	readonly toTry: readonly string[];
	readonly care: readonly string[];
	/** When to measure again; for who still grows, with the dates of the growth tables. */
	readonly again: readonly string[];
	readonly unknown: readonly string[];
}

const FIGURES = ["length", "mass", "butt", "tip", "balance"] as const;

/** What the player takes home, in the reader's units and language. `today` is an ISO date. */
export function summaryView(
	p: {
		source: SummarySource;
		/** What the models of today make of the same answers: they stand in for what was not measured. */
		around: Advice;
		answers: Answers;
		/** Answers that two devices gave differently and nobody settled yet. */
		disputed: readonly FieldName[];
		/** Null while no spec was saved. */
		spec: { readonly number: number; readonly revision: number } | null;
		today: string;
	},
	reader: Reader,
): SummaryView {
	const { source, around, answers, disputed, spec, today } = p;
	const measured = measuredLines(
		{ input: source.input, answers, around },
		reader,
	);
	return {
		figures: FIGURES.map((id) => figureLine(id, source, reader)),
		measured,
		present: presentFigures(source.input, reader),
		toTry: toTry(source, spec, reader),
		care: care(around, reader),
		again: again({ around, answers, today }, reader),
		unknown: unknown({ source, measured, disputed }, reader),
	};
}

function figureLine(
	id: FigureId,
	{ figures, buttRangeMm }: SummarySource,
	reader: Reader,
): SummaryView["figures"][number] {
	const figure = figures[id];
	const view = figureView({
		id,
		figure,
		reader,
		...(id === "butt" ? { rangeMm: buttRangeMm } : {}),
	});
	return {
		id,
		label: view.label,
		value: view.value,
		band: bandWords(id, figure, view, reader),
		reason: view.reason,
	};
}

function bandWords(
	id: FigureId,
	figure: Figure,
	{ band, range }: { band: string; range: string | null },
	{ say }: Reader,
): string {
	if (figure.sureness === "chosen" && figure.sd === 0)
		return say("summary.band.wish");
	const words =
		id === "balance"
			? say("summary.band.built", { band })
			: say(`summary.band.${figure.sureness}` as const, { band });
	return range === null ? words : `${words} ${say("summary.range", { range })}`;
}

/** The same quantity of the present cue, where it is known. */
const PRESENT = {
	length: "lengthMm",
	mass: "massG",
	butt: "buttDiameterMm",
	tip: "tipDiameterMm",
} as const satisfies Partial<Record<FigureId, keyof PresentCue>>;
const COMPARED = Object.keys(PRESENT) as (keyof typeof PRESENT)[];

function toTry(
	{ input, figures }: SummarySource,
	spec: { readonly number: number; readonly revision: number } | null,
	reader: Reader,
): readonly string[] {
	const { say } = reader;
	const labelOf = (id: FigureId) => figureLabel(id, reader);
	const changes = COMPARED.flatMap((id) => {
		const now = input.presentCue[PRESENT[id]];
		if (now === undefined || isFeltTheSame(id, now, figures[id].value))
			return [];
		return [
			say("summary.try.change", {
				figure: labelOf(id),
				now: formatFigure(id, now, reader),
				here: formatFigure(id, figures[id].value, reader),
			}),
		];
	});
	const unsure = COMPARED.filter((id) => figures[id].sureness === "rough");
	return [
		say("summary.try.first"),
		...changes,
		...unsure.map((id) =>
			say("summary.try.unsure", {
				figure: labelOf(id),
				band: formatFigureBand(id, figures[id].band, reader),
			}),
		),
		say("summary.try.blind"),
		spec === null
			? say("summary.try.save")
			: say("summary.try.build", {
					number: String(spec.number),
					revision: String(spec.revision),
				}),
	];
}

const isFeltTheSame = (
	id: keyof typeof PRESENT,
	a: number,
	b: number,
): boolean => Math.abs(a - b) < FELT[PRESENT[id]];

function care(around: Advice, reader: Reader): readonly string[] {
	const { say } = reader;
	const { posture } = poseView(
		{
			input: around.input,
			body: around.body,
			reach: around.reach,
			length: around.length,
			tip: around.tip,
			butt: around.butt,
		},
		reader,
	);
	const whomToAsk = say("notice.seeSomebody");
	return [
		say("summary.care.standUp"),
		...posture.cautions,
		...(posture.cautions.some((text) => text.includes(whomToAsk))
			? []
			: [say("summary.care.pain")]),
	];
}

function again(
	p: { around: Advice; answers: Answers; today: string },
	reader: Reader,
): readonly string[] {
	const { say } = reader;
	const growth = growthOf(
		{
			advice: p.around,
			bornOn: bornOn(p.answers),
			today: p.today,
		},
		reader,
	);
	switch (growth.kind) {
		case "shown":
			return [...growth.view.plan, growth.view.error];
		case "wanting":
			return [growth.text, say("summary.again.grownUp")];
		case "refused":
			return [...growth.texts, say("summary.again.grownUp")];
		case "none":
			return [say("summary.again.grownUp")];
	}
}

const bornOn = ({ birthDate }: Answers): string | null =>
	typeof birthDate === "string" && /^\d{4}-\d{2}-\d{2}$/.test(birthDate)
		? birthDate
		: null;

function unknown(
	{
		source,
		measured,
		disputed,
	}: {
		source: SummarySource;
		measured: readonly MeasuredLine[];
		disputed: readonly FieldName[];
	},
	reader: Reader,
): readonly string[] {
	const { say } = reader;
	const estimated = measured
		.filter(({ state }) => state === "estimated")
		.map(({ measure }) => measure);
	return [
		...(disputed.length === 0
			? []
			: [
					say("summary.unknown.disputed", {
						fields: joinedAnd(
							disputed.map((field) => fieldLabel(field, reader)),
							reader,
						),
					}),
				]),
		...(estimated.length === 0
			? []
			: [
					say("summary.unknown.estimated", {
						measures: joinedAnd(estimated, reader),
					}),
				]),
		...new Set(source.cautions.map((caution) => cautionText(caution, reader))),
		say("summary.unknown.noTheory"),
		say("summary.unknown.wood"),
	];
}

const presentFigures = (
	{ presentCue }: FittingInput,
	reader: Reader,
): readonly { readonly label: string; readonly value: string }[] =>
	COMPARED.flatMap((id) => {
		const value = presentCue[PRESENT[id]];
		return value === undefined
			? []
			: [
					{
						label: figureLabel(id, reader),
						value: formatBoth(quantityOf(id, value), reader).main,
					},
				];
	});
