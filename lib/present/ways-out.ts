import type { SoftenedLimit } from "@/lib/advice/soften";
import type { FieldName } from "@/lib/forms/fields";
import type { Refusal } from "@/lib/numerics/outcome";
import type { UnitSystem } from "@/lib/units/quantity";
import { CRITERION_WORDS, formatMeasure } from "./criterion-words";
import { formatLength, formatMass } from "./figures";
import { choiceLabel, FIELD_LABELS } from "./labels";
import { lengthText, massText, plain, type WishAnswer } from "./wish-answers";

/** A limit that had to give before anything was acceptable. */
export const softenedText = (
	{ criterion, side, limitFrom, limitTo, measured }: SoftenedLimit,
	system: UnitSystem,
): string =>
	`${CRITERION_WORDS[criterion].name}: nothing that can be built is ${side === "low" ? "above" : "below"} ${formatMeasure(criterion, limitFrom, system)}; the nearest has ${formatMeasure(criterion, measured, system)}, so the limit was moved to ${formatMeasure(criterion, limitTo, system)}.`;

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
	system: UnitSystem,
): string => {
	if (typeof value === "string") return choiceLabel(field, value);
	if (field === "wishMass") return formatMass(value, system);
	return formatLength(
		value,
		system,
		field === "wishLength" ? "length" : "diameter",
	);
};

const wishAnswer = (
	field: FieldName,
	value: number | string,
	system: UnitSystem,
): string => {
	if (typeof value === "string") return value;
	if (field === "wishMass") return massText(value, system);
	return field === "wishLength"
		? lengthText(value, system)
		: `${plain(value, 3)} mm`;
};

/** "relax" refusals as ways out, least felt first; other refusals are not its business. */
export function waysOut(
	refusals: readonly Refusal[],
	system: UnitSystem,
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
				const text = `${label} would have to be ${formatMeasure(id, Number(to), system)} instead of ${formatMeasure(id, Number(value), system)}.`;
				return { text, label: text, answers: [] };
			}
			const alsoDrop = facts?.alsoDrop;
			const dropped =
				alsoDrop === undefined ? undefined : WISH_FIELDS[String(alsoDrop)];
			const also =
				dropped === undefined
					? ""
					: ` and leave open: ${FIELD_LABELS[dropped].toLowerCase()}`;
			const change = `${wishText(name, to, system)} instead of ${wishText(name, value, system)}`;
			return {
				text: `${FIELD_LABELS[name]}: ${change}${also}.`,
				label: `${FIELD_LABELS[name]}: take ${wishText(name, to, system)}${also}`,
				answers: [
					{ field: name, answer: wishAnswer(name, to, system) },
					...(dropped === undefined ? [] : [{ field: dropped, answer: "" }]),
				],
			};
		});
}
