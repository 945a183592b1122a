import type { SpecContent } from "@/lib/advice/spec";
import type { Reader } from "@/lib/words/reader";
import { FIGURE_LABELS } from "./advice-view";
import {
	layoutLabel,
	metalName,
	spliceLabel,
	taperLabel,
	woodName,
} from "./labels";
import { type FigureId, formatFigure } from "./reasons";

export interface SpecChange {
	readonly label: string;
	readonly before: string;
	readonly after: string;
}

const FIGURES: readonly FigureId[] = [
	"length",
	"mass",
	"butt",
	"tip",
	"balance",
];

/** What a reader would want told between two revisions, in words. Empty where nothing shows. */
export function specChanges(
	before: SpecContent,
	after: SpecContent,
	reader: Reader,
): SpecChange[] {
	const rows = (
		content: SpecContent,
	): readonly (readonly [string, string])[] => [
		...FIGURES.map(
			(id) =>
				[
					FIGURE_LABELS[id],
					formatFigure(id, content.figures[id].value, reader),
				] as const,
		),
		["Shaft wood", woodName(content.request.shaftWood, reader)],
		["Butt wood", woodName(content.request.buttWood, reader)],
		["Splice", spliceLabel(content.request.splice, reader)],
		["Pieces", layoutLabel(content.request.layout, reader)],
		["Taper", taperLabel(content.request.taperShape, reader)],
		["Ferrule", metalName(content.request.ferruleMetal, reader)],
		[
			"Weight to be added",
			formatFigure("mass", content.addedWeight.addedMassG.value, reader),
		],
		["Models", content.modelVersion],
	];
	const now = rows(after);
	return rows(before).flatMap(([label, was], i) => {
		const is = now[i]?.[1] ?? "";
		return was === is ? [] : [{ label, before: was, after: is }];
	});
}
