import type { Advice } from "@/lib/advice/advise";
import type { Figure, Sureness } from "@/lib/advice/figure";
import type { CitationId } from "@/lib/reference/citations";
import { band90 } from "@/lib/reference/estimate";
import type { Reader } from "@/lib/words/reader";
import { type Both, formatBoth, formatMass, formatPercent } from "./figures";
import {
	citationTitle,
	fieldLabel,
	inSentence,
	layoutLabel,
	metalName,
	ruleLabel,
	spliceLabel,
	surenessLabel,
	taperLabel,
	woodName,
} from "./labels";
import { cautionText, type RefusalView, refusalView } from "./notices";
import { type FigureId, formatFigureBand, reasonSentence } from "./reasons";

export interface FigureView {
	readonly id: FigureId;
	readonly label: string;
	readonly value: Both;
	/** The recommended range, where the figure is a range and not a point. */
	readonly range: string | null;
	/** Where nine in ten needs like this one lie. */
	readonly band: string;
	readonly reason: string;
	/** The lesser reasons, heaviest first, each with its share. */
	readonly others: readonly string[];
	readonly basis: string;
	readonly sources: readonly string[];
	readonly sureness: Sureness;
	readonly surenessText: string;
}

export interface AdviceView {
	readonly figures: readonly FigureView[];
	readonly build: readonly { readonly label: string; readonly value: string }[];
	readonly cautions: readonly string[];
	readonly refusals: readonly RefusalView[];
	readonly rules: readonly {
		readonly rule: string;
		readonly ok: boolean;
		readonly source: string;
	}[];
}

export const figureLabel = (id: FigureId, { say }: Reader): string =>
	say(`advice.figure.${id}`);

export const sourceTitles = (
	ids: readonly CitationId[],
	reader: Reader,
): string[] => [...new Set(ids.map((id) => citationTitle(id, reader)))];

/** Shares below this are not worth a sentence. */
const WORTH_TELLING = 0.03;

export const quantityOf = (id: FigureId, value: number) =>
	id === "mass"
		? ({ g: value } as const)
		: ({
				mm: value,
				kind: id === "butt" || id === "tip" ? "diameter" : "length",
			} as const);

export function figureView({
	id,
	figure,
	reader,
	rangeMm,
}: {
	id: FigureId;
	figure: Figure;
	reader: Reader;
	rangeMm?: { low: number; high: number };
}): FigureView {
	const [first, ...rest] = figure.evidence;
	if (first === undefined)
		throw new RangeError(`figureView: ${id} has no evidence`);
	const told = rest.filter(
		({ shareFraction }) =>
			shareFraction >= WORTH_TELLING || first.basis === "wish",
	);
	return {
		id,
		label: figureLabel(id, reader),
		value: formatBoth(quantityOf(id, figure.value), reader),
		range: rangeMm === undefined ? null : formatFigureBand(id, rangeMm, reader),
		band: formatFigureBand(id, figure.band, reader),
		reason: reasonSentence(id, first, reader),
		others: told.map((evidence) => {
			const reason = reasonSentence(id, evidence, reader);
			return first.basis === "wish"
				? reader.say("advice.withoutWish", { reason })
				: reader.say("advice.ofWeight", {
						share: formatPercent(evidence.shareFraction, reader),
						reason,
					});
		}),
		basis: inSentence.basis(figure.basis, reader),
		sources: sourceTitles(
			[first, ...told].flatMap(({ sources }) => sources),
			reader,
		),
		sureness: figure.sureness,
		surenessText: surenessLabel(figure.sureness, reader),
	};
}

/** Everything the recommendation page shows, in the reader's units. */
export function adviceView(advice: Advice, reader: Reader): AdviceView {
	const { build } = advice;
	const { request, plan } = build;
	const { say } = reader;
	return {
		figures: [
			figureView({ id: "length", figure: advice.length, reader }),
			figureView({ id: "mass", figure: advice.mass, reader }),
			figureView({
				id: "butt",
				figure: advice.butt.figure,
				reader,
				rangeMm: advice.butt.rangeMm,
			}),
			figureView({ id: "tip", figure: advice.tip, reader }),
			figureView({ id: "balance", figure: advice.balance, reader }),
		],
		build: [
			{
				label: say("advice.shaft"),
				value: woodName(request.shaftWood, reader),
			},
			{ label: say("advice.butt"), value: woodName(request.buttWood, reader) },
			{
				label: fieldLabel("wishSplice", reader),
				value: spliceLabel(request.splice, reader),
			},
			{
				label: fieldLabel("wishLayout", reader),
				value: layoutLabel(request.layout, reader),
			},
			{
				label: fieldLabel("wishTaper", reader),
				value: taperLabel(request.taperShape, reader),
			},
			{
				label: fieldLabel("wishFerrule", reader),
				value: metalName(request.ferruleMetal, reader),
			},
			{
				label: say("advice.naturalWeight"),
				value: say("advice.natural", {
					mass: formatMass(build.natural.massG.value, reader),
					band: formatFigureBand("mass", band90(build.natural.massG), reader),
				}),
			},
			{
				label: say("advice.addedWeight"),
				value: plan.ok
					? say("advice.added", {
							mass: formatMass(plan.value.addedMassG.value, reader, "added"),
							metal: inSentence.metal(plan.value.metal, reader),
						})
					: say("advice.cannotAdd"),
			},
			...build.setAside.map(({ wood, naturalMassG }) => ({
				label: say("advice.setAside"),
				value: say("advice.tooHeavy", {
					wood: woodName(wood, reader),
					mass: formatMass(naturalMassG, reader),
				}),
			})),
		],
		cautions: [
			...new Set(
				advice.cautions.map((caution) => cautionText(caution, reader)),
			),
		],
		refusals: plan.ok
			? []
			: plan.refusals.map((refusal) => refusalView(refusal, reader)),
		rules: advice.rules.map(({ rule, ok, source }) => ({
			rule: ruleLabel(rule, reader),
			ok,
			source: citationTitle(source, reader),
		})),
	};
}
