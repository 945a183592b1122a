import {
	CAUSES,
	type Cause,
	COMPARED_FIGURES,
	type ComparedFigures,
	type FigureDifferences,
} from "@/lib/advice/differences";
import type { FittingInput } from "@/lib/advice/input";
import { FIELD_NAMES, FIELDS, type FieldName } from "@/lib/forms/fields";
import type { Reader } from "@/lib/words/reader";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import { offerOf } from "@/lib/workshop/settings";
import {
	formatLength,
	formatLengthDifference,
	formatMass,
	formatMassDifference,
	formatNumber,
	type LengthKind,
} from "./figures";
import { choiceLabel, fieldLabel } from "./labels";
import { formatAmount } from "./money";
import { type FigureId, formatFigure } from "./reasons";

export interface FigureRow {
	readonly figure: string;
	readonly one: string;
	readonly other: string;
	readonly difference: string;
}
export type CauseRow = { readonly figure: string } & Readonly<
	Record<Cause | "difference", string>
>;
export interface AnswerRow {
	readonly question: string;
	readonly one: string;
	readonly other: string;
}

const DIFFERENCE_KIND: Readonly<Record<Exclude<FigureId, "mass">, LengthKind>> =
	{ length: "length", butt: "diameter", tip: "diameter", balance: "length" };

/** Less than this, mm or g, is rounding of the arithmetic. */
const NIL = 1e-6;

function differenceText(id: FigureId, by: number, reader: Reader): string {
	const value = Math.abs(by) < NIL ? 0 : by;
	return id === "mass"
		? formatMassDifference(value, reader)
		: formatLengthDifference(value, reader, DIFFERENCE_KIND[id]);
}

/** Both sides' figures with what lies between them. */
export const figureRows = (
	{ one, other }: { one: ComparedFigures; other: ComparedFigures },
	reader: Reader,
): FigureRow[] =>
	COMPARED_FIGURES.map((id) => ({
		figure: reader.say(`compare.figure.${id}`),
		one: formatFigure(id, one[id], reader),
		other: formatFigure(id, other[id], reader),
		difference: differenceText(id, other[id] - one[id], reader),
	}));

/** The whole difference of each figure and its part by each cause. */
export const causeRows = (
	{ one, other, parts }: FigureDifferences,
	reader: Reader,
): CauseRow[] =>
	COMPARED_FIGURES.map((id) => ({
		figure: reader.say(`compare.figure.${id}`),
		...(Object.fromEntries(
			CAUSES.map((cause) => [
				cause,
				differenceText(id, parts[cause][id], reader),
			]),
		) as Record<Cause, string>),
		difference: differenceText(id, other[id] - one[id], reader),
	}));

/** Answers that differ between two inputs, in the order they are asked. */
export function answerRows(
	one: FittingInput,
	other: FittingInput,
	reader: Reader,
): AnswerRow[] {
	return FIELD_NAMES.flatMap((name) => {
		const before = valueAt(one, name);
		const after = valueAt(other, name);
		if (JSON.stringify(before) === JSON.stringify(after)) return [];
		return [
			{
				question: fieldLabel(name, reader),
				one: answerText(name, before, one, reader),
				other: answerText(name, after, other, reader),
			},
		];
	});
}

function valueAt(input: FittingInput, name: FieldName): unknown {
	const field = FIELDS[name];
	if (!("path" in field)) return undefined;
	return field.path
		.split(".")
		.reduce<unknown>(
			(branch, key) =>
				(branch as Readonly<Record<string, unknown>> | undefined)?.[key],
			input,
		);
}

const lengthKind = (path: string): LengthKind =>
	/Diameter|gripCircle/.test(path)
		? "diameter"
		: /stature|armSpan/.test(path)
			? "body"
			: "length";

function answerText(
	name: FieldName,
	value: unknown,
	{ workshop }: FittingInput,
	reader: Reader,
): string {
	const { say } = reader;
	if (value === undefined || (Array.isArray(value) && value.length === 0))
		return say("compare.unsaid");
	const field = FIELDS[name];
	switch (field.kind) {
		case "length":
			return formatLength(Number(value), reader, lengthKind(field.path));
		case "readings":
			return (value as readonly number[])
				.map((mm) => formatLength(mm, reader, lengthKind(field.path)))
				.join(", ");
		case "mass":
			return formatMass(Number(value), reader);
		case "years":
			return say("compare.years", {
				years: formatNumber(Number(value), reader, 1),
			});
		case "amount":
			return formatAmount(
				Number(value),
				(workshop ?? offerOf(DEFAULT_SETTINGS)).priceList,
				reader,
			);
		case "yes-no":
			return say(value === true ? "compare.yes" : "compare.no");
		case "choice":
			return choiceLabel(name, String(value), reader);
		case "choices":
			return (value as readonly string[])
				.map((option) => choiceLabel(name, option, reader))
				.join(", ");
		case "text":
		case "date":
			return String(value);
	}
}
