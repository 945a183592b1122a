import type { SoftenedLimit } from "@/lib/advice/soften";
import type { FieldName } from "@/lib/forms/fields";
import type { Refusal } from "@/lib/numerics/outcome";
import type { Reader } from "@/lib/words/reader";
import { CRITERION_WORDS, formatMeasure } from "./criterion-words";
import { formatLength, formatMass } from "./figures";
import { choiceLabel, fieldLabel, inSentence } from "./labels";
import { lengthText, massText, plain, type WishAnswer } from "./wish-answers";

/** A limit that had to give before anything was acceptable. */
export const softenedText = (
	{ criterion, side, limitFrom, limitTo, measured }: SoftenedLimit,
	reader: Reader,
): string =>
	`${CRITERION_WORDS[criterion].name}: nothing that can be built is ${side === "low" ? "above" : "below"} ${formatMeasure(criterion, limitFrom, reader)}; the nearest has ${formatMeasure(criterion, measured, reader)}, so the limit was moved to ${formatMeasure(criterion, limitTo, reader)}.`;

/** A way out of a search that found nothing to build. */
export interface WayOut {
	readonly text: string;
	readonly label: string;
	/** What one tap puts in; empty where the page has no field for it. */
	readonly answers: readonly WishAnswer[];
}

const WISH_FIELDS: Readonly<Record<string, FieldName>> = {
	"wishes.lengthMm": "wishLength",
	"wishes.massG": "wishMass",
	"wishes.buttDiameterMm": "wishButt",
	"wishes.tipDiameterMm": "wishTip",
	"wishes.buttWood": "wishButtWood",
	"wishes.shaftWood": "wishShaftWood",
	"wishes.splice": "wishSplice",
	"wishes.layout": "wishLayout",
	"wishes.taperShape": "wishTaper",
};

/** Limits that are no question of the fitting: named, without a button. */
const CEILING_LABELS: Readonly<Record<string, string>> = {
	maxPriceMinor: "The most it may cost",
	longestPieceMm: "The longest piece",
};

const wishText = (
	field: FieldName,
	value: number | string,
	reader: Reader,
): string => {
	if (typeof value === "string") return choiceLabel(field, value, reader);
	if (field === "wishMass") return formatMass(value, reader);
	return formatLength(
		value,
		reader,
		field === "wishLength" ? "length" : "diameter",
	);
};

const wishAnswer = (
	field: FieldName,
	value: number | string,
	reader: Reader,
): string => {
	if (typeof value === "string") return value;
	if (field === "wishMass") return massText(value, reader);
	return field === "wishLength"
		? lengthText(value, reader)
		: `${plain(value, 3)} mm`;
};

/** "relax" refusals as ways out, least felt first; other refusals are not its business. */
export function waysOut(
	refusals: readonly Refusal[],
	reader: Reader,
): readonly WayOut[] {
	return refusals
		.filter(({ code }) => code === "relax")
		.map(({ field, value, facts }): WayOut => {
			const to = facts?.to;
			if (to === undefined || value === null)
				throw new TypeError(`a way out of ${field} without a value`);
			const name = WISH_FIELDS[field];
			if (name === undefined) {
				const label = CEILING_LABELS[field];
				if (label === undefined) throw new TypeError(`no words for ${field}`);
				const id = field === "maxPriceMinor" ? "price" : "carrying";
				const text = `${label} would have to be ${formatMeasure(id, Number(to), reader)} instead of ${formatMeasure(id, Number(value), reader)}.`;
				return { text, label: text, answers: [] };
			}
			const alsoDrop = facts?.alsoDrop;
			const dropped =
				alsoDrop === undefined ? undefined : WISH_FIELDS[String(alsoDrop)];
			const also =
				dropped === undefined
					? ""
					: ` and leave open: ${inSentence.field(dropped, reader)}`;
			const change = `${wishText(name, to, reader)} instead of ${wishText(name, value, reader)}`;
			return {
				text: `${fieldLabel(name, reader)}: ${change}${also}.`,
				label: `${fieldLabel(name, reader)}: take ${wishText(name, to, reader)}${also}`,
				answers: [
					{ field: name, answer: wishAnswer(name, to, reader) },
					...(dropped === undefined ? [] : [{ field: dropped, answer: "" }]),
				],
			};
		});
}
