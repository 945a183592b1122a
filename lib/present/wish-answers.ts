import type { CueChoice } from "@/lib/advice/choice";
import type { FieldName } from "@/lib/forms/fields";
import { gramsToOunces, mmToInches } from "@/lib/units/quantity";
import type { Reader } from "@/lib/words/reader";

/** One answer to be put in, as it would be typed; empty text leaves the question open. */
export interface WishAnswer {
	readonly field: FieldName;
	readonly answer: string;
}

/** A number as it would be typed: no zeros at its end. */
export const plain = (value: number, decimals: number): string =>
	String(Number(value.toFixed(decimals)));

/** A weight as it would be typed: to the bench's step where it lies on one. */
export const massText = (g: number, reader: Reader): string =>
	reader.system === "metric"
		? `${plain(g, 2)} g`
		: `${plain(gramsToOunces(g), 3)} oz`;
export const lengthText = (mm: number, reader: Reader): string =>
	reader.system === "metric"
		? `${plain(mm, 2)} mm`
		: `${plain(mmToInches(mm), 4)} in`;

/** A cue as wishes. The wood's own weight leaves the weight open: it is what the wood turns out to give. */
export function wishesOf(
	{ request, wantedMassG }: CueChoice,
	reader: Reader,
): readonly WishAnswer[] {
	return [
		{ field: "wishLength", answer: lengthText(request.lengthMm, reader) },
		{
			field: "wishMass",
			answer: wantedMassG === null ? "" : massText(wantedMassG, reader),
		},
		{ field: "wishButt", answer: `${plain(request.buttDiameterMm, 3)} mm` },
		{ field: "wishTip", answer: `${plain(request.tipDiameterMm, 3)} mm` },
		{ field: "wishButtWood", answer: request.buttWood },
		{ field: "wishShaftWood", answer: request.shaftWood },
		{ field: "wishSplice", answer: request.splice },
		{ field: "wishLayout", answer: request.layout },
		{ field: "wishTaper", answer: request.taperShape },
	];
}

/** What `wishesOf` sets, to be left open again. */
export const OPEN_WISHES: readonly WishAnswer[] = (
	[
		"wishLength",
		"wishMass",
		"wishButt",
		"wishTip",
		"wishButtWood",
		"wishShaftWood",
		"wishSplice",
		"wishLayout",
		"wishTaper",
	] as const
).map((field) => ({ field, answer: "" }));
