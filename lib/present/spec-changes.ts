import type { SpecContent } from "@/lib/advice/spec";
import type { Reader } from "@/lib/words/reader";
import { figureLabel } from "./advice-view";
import {
	fieldLabel,
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
					figureLabel(id, reader),
					formatFigure(id, content.figures[id].value, reader),
				] as const,
		),
		[
			fieldLabel("wishShaftWood", reader),
			woodName(content.request.shaftWood, reader),
		],
		[
			fieldLabel("wishButtWood", reader),
			woodName(content.request.buttWood, reader),
		],
		[
			fieldLabel("wishSplice", reader),
			spliceLabel(content.request.splice, reader),
		],
		[
			fieldLabel("wishLayout", reader),
			layoutLabel(content.request.layout, reader),
		],
		[
			fieldLabel("wishTaper", reader),
			taperLabel(content.request.taperShape, reader),
		],
		[
			fieldLabel("wishFerrule", reader),
			metalName(content.request.ferruleMetal, reader),
		],
		[
			reader.say("advice.weightToAdd"),
			formatFigure("mass", content.addedWeight.addedMassG.value, reader),
		],
		[reader.say("advice.models"), content.modelVersion],
	];
	const now = rows(after);
	return rows(before).flatMap(([label, was], i) => {
		const is = now[i]?.[1] ?? "";
		return was === is ? [] : [{ label, before: was, after: is }];
	});
}
