import type { AnswerProblem } from "@/lib/forms/answers";
import { FIELDS, type FieldName } from "@/lib/forms/fields";
import type { Caution, Refusal } from "@/lib/numerics/outcome";
import type { Reader } from "@/lib/words/reader";
import { CAUTION_WORDS, type Facts, numberIn, telling } from "./caution-words";
import { formatLength, formatMass, formatNumber } from "./figures";
import { FIELD_LABELS } from "./labels";
import { REFUSAL_WORDS } from "./refusal-words";

/** Words for a caution that travels beside a result. Unknown codes are shown as they are, never hidden. */
export function cautionText({ code, facts }: Caution, reader: Reader): string {
	const words = CAUTION_WORDS[code];
	return words === undefined
		? [code.replaceAll("-", " "), ...factList(facts, reader)].join("; ")
		: words(telling(facts, reader));
}

const factList = (facts: Facts | undefined, reader: Reader): string[] =>
	Object.entries(facts ?? {}).map(([name, value]) =>
		typeof value === "number"
			? `${name} ${formatNumber(value, reader, 1)}`
			: `${name} ${value}`,
	);

/** What a page may offer to make a refused combination work. */
export interface Remedy {
	readonly field: FieldName;
	/** The answer to put in, as it would be typed. */
	readonly answer: string;
	readonly label: string;
}

export interface RefusalView {
	readonly text: string;
	readonly remedy: Remedy | null;
}

/** Half a gram either way is noise to a bench; quarter grams keep the remedy just inside the bound. */
const typedGrams = (grams: number, round: (value: number) => number) =>
	`${round(grams)} g`;

/** Words for a refusal, with the nearest answer that works where one is known. Unknown codes are shown as they are. */
export function refusalView(refusal: Refusal, reader: Reader): RefusalView {
	const { code, field, value, facts } = refusal;
	const words = REFUSAL_WORDS[code];
	const text =
		words === undefined
			? [
					code.replaceAll("-", " "),
					`${field} ${value ?? "nothing"}`,
					...factList(facts, reader),
				].join("; ")
			: words(refusal, reader);
	const round = REMEDY_ROUNDING[code];
	if (round === undefined) return { text, remedy: null };
	const nearestG = numberIn(facts, "nearestMassG");
	return {
		text,
		remedy: {
			field: "wishMass",
			answer: typedGrams(nearestG, round),
			label: `Use ${formatMass(nearestG, reader)}`,
		},
	};
}

/** A weight a refused plan can be had at, rounded to the side that works. */
const REMEDY_ROUNDING: Readonly<Record<string, (grams: number) => number>> = {
	"weight-below-natural": Math.ceil,
	"weight-above-bore": Math.floor,
};

/** Words for an answer that cannot be read, naming field, value and bound. */
export function problemText(problem: AnswerProblem, reader: Reader): string {
	const { field, code, text, value, min, max } = problem;
	const label = FIELD_LABELS[field];
	const write = (bound: number) => writeBound(field, bound, reader);
	const range =
		min === undefined || max === undefined
			? ""
			: ` It can be ${write(min)} to ${write(max)}.`;
	const quoted = `“${text.length > 40 ? `${text.slice(0, 40)}…` : text}”`;
	switch (code) {
		case "not-a-number":
			return `${label}: ${quoted} is not a number.${range}`;
		case "unknown-unit":
			return `${label}: the unit in ${quoted} is not known here.${range}`;
		case "ambiguous":
			return `${label}: ${quoted} can be read in two ways; write it without the comma.${range}`;
		case "out-of-range":
			return `${label}: ${value === undefined ? quoted : write(value)} is outside what the models cover.${range}`;
		case "not-a-choice":
			return `${label}: ${quoted} is not one of the choices.`;
		case "not-a-date":
			return `${label}: ${quoted} is not a date.`;
		case "too-many":
			return `${label}: ${value ?? 0} entries; at most ${max ?? 0} are kept.`;
		case "too-long":
			return `${label}: ${value ?? 0} characters; at most ${max ?? 0} are kept.`;
	}
}

function writeBound(name: FieldName, bound: number, reader: Reader): string {
	const field = FIELDS[name];
	if (field.kind === "mass") return formatMass(bound, reader);
	if (field.kind === "amount") return formatNumber(bound / 100, reader, 2);
	if (field.kind === "length" || field.kind === "readings")
		return formatLength(
			bound,
			reader,
			field.bare.metric === "mm"
				? "diameter"
				: name === "stature"
					? "body"
					: "length",
		);
	return formatNumber(bound, reader);
}
