import type { CriterionId } from "@/lib/advice/criteria";
import type { SoftenedLimit } from "@/lib/advice/soften";
import type { FieldName } from "@/lib/forms/fields";
import type { Refusal } from "@/lib/numerics/outcome";
import type { Reader } from "@/lib/words/reader";
import { criterionTitle, formatMeasure } from "./criterion-words";
import { formatLength, formatMass } from "./figures";
import { choiceLabel, fieldLabel, inSentence } from "./labels";
import { lengthText, massText, plain, type WishAnswer } from "./wish-answers";

/** A limit that had to give before anything was acceptable. */
export const softenedText = (
	{ criterion, side, limitFrom, limitTo, measured }: SoftenedLimit,
	reader: Reader,
): string =>
	reader.say("waysOut.softened", {
		criterion: criterionTitle(criterion, reader),
		side,
		from: formatMeasure(criterion, limitFrom, reader),
		measured: formatMeasure(criterion, measured, reader),
		to: formatMeasure(criterion, limitTo, reader),
	});

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
const CEILINGS = {
	maxPriceMinor: "price",
	longestPieceMm: "carrying",
} as const satisfies Readonly<Record<string, CriterionId>>;
const isCeiling = (field: string): field is keyof typeof CEILINGS =>
	Object.hasOwn(CEILINGS, field);

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
	const { say } = reader;
	return refusals
		.filter(({ code }) => code === "relax")
		.map(({ field, value, facts }): WayOut => {
			const to = facts?.to;
			if (to === undefined || value === null)
				throw new TypeError(`a way out of ${field} without a value`);
			const name = WISH_FIELDS[field];
			if (name === undefined) {
				if (!isCeiling(field)) throw new TypeError(`no words for ${field}`);
				const id = CEILINGS[field];
				const text = say(`waysOut.ceiling.${field}`, {
					to: formatMeasure(id, Number(to), reader),
					from: formatMeasure(id, Number(value), reader),
				});
				return { text, label: text, answers: [] };
			}
			const alsoDrop = facts?.alsoDrop;
			const dropped =
				alsoDrop === undefined ? undefined : WISH_FIELDS[String(alsoDrop)];
			const also =
				dropped === undefined
					? ""
					: say("waysOut.alsoOpen", {
							wish: inSentence.field(dropped, reader),
						});
			const change = {
				field: fieldLabel(name, reader),
				to: wishText(name, to, reader),
				also,
			};
			return {
				text: say("waysOut.change", {
					...change,
					from: wishText(name, value, reader),
				}),
				label: say("waysOut.take", change),
				answers: [
					{ field: name, answer: wishAnswer(name, to, reader) },
					...(dropped === undefined ? [] : [{ field: dropped, answer: "" }]),
				],
			};
		});
}
