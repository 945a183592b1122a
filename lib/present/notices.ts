import type { AnswerProblem } from "@/lib/forms/answers";
import { FIELDS, type FieldName } from "@/lib/forms/fields";
import type { Caution, Refusal } from "@/lib/numerics/outcome";
import type { Reader } from "@/lib/words/reader";
import {
	cautionSentence,
	type Facts,
	isCautionCode,
	numberIn,
} from "./caution-words";
import { formatLength, formatMass, formatNumber } from "./figures";
import { fieldLabel } from "./labels";
import { REFUSAL_WORDS } from "./refusal-words";

/** Words for a caution that travels beside a result. Unknown codes are shown as they are, never hidden. */
export function cautionText({ code, facts }: Caution, reader: Reader): string {
	return isCautionCode(code)
		? cautionSentence(code, facts, reader)
		: [code.replaceAll("-", " "), ...factList(facts, reader)].join("; ");
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
					`${field} ${value ?? reader.say("notice.nothing")}`,
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
			label: reader.say("notice.use", { value: formatMass(nearestG, reader) }),
		},
	};
}

/** A weight a refused plan can be had at, rounded to the side that works. */
const REMEDY_ROUNDING: Readonly<Record<string, (grams: number) => number>> = {
	"weight-below-natural": Math.ceil,
	"weight-above-bore": Math.floor,
};

/** What was typed is quoted up to here. */
const LONGEST_QUOTED = 40;

/** Words for an answer that cannot be read, naming field, value and bound. */
export function problemText(problem: AnswerProblem, reader: Reader): string {
	const { field, code, text, value, min, max } = problem;
	const write = (bound: number) => writeBound(field, bound, reader);
	const shown =
		text.length > LONGEST_QUOTED ? `${text.slice(0, LONGEST_QUOTED)}…` : text;
	const { say } = reader;
	return say(`notice.problem.${code}`, {
		label: fieldLabel(field, reader),
		text: shown,
		value:
			value === undefined
				? say("notice.problem.quoted", { text: shown })
				: write(value),
		range:
			min === undefined || max === undefined
				? ""
				: say("notice.range", { min: write(min), max: write(max) }),
		count: String(value ?? 0),
		most: String(max ?? 0),
	});
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
