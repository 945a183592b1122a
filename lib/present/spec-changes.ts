import type { SpecContent } from "@/lib/advice/spec";
import type { Reader } from "@/lib/words/reader";
import { FIGURE_LABELS } from "./advice-view";
import {
	LAYOUT_LABELS,
	metalName,
	SPLICE_LABELS,
	TAPER_LABELS,
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
		["Shaft wood", woodName(content.request.shaftWood)],
		["Butt wood", woodName(content.request.buttWood)],
		["Splice", SPLICE_LABELS[content.request.splice]],
		["Pieces", LAYOUT_LABELS[content.request.layout]],
		["Taper", TAPER_LABELS[content.request.taperShape]],
		["Ferrule", metalName(content.request.ferruleMetal)],
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
