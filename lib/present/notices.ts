import type { AnswerProblem } from "@/lib/forms/answers";
import { FIELDS, type FieldName } from "@/lib/forms/fields";
import type { Caution, Refusal } from "@/lib/numerics/outcome";
import type { UnitSystem } from "@/lib/units/quantity";
import { CAUTION_WORDS, type Facts, numberIn, telling } from "./caution-words";
import { formatLength, formatMass, formatNumber } from "./figures";
import { FIELD_LABELS } from "./labels";

/** The published equipment rules a build is checked against. */
export const RULE_LABELS: Readonly<Record<string, string>> = {
	"cue-length": "Length of the cue",
	"cue-weight": "Weight of the cue",
	"tip-width": "Width of the tip",
	"metal-ferrule-length": "Length of a metal ferrule",
	"tapered-form": "Tapered form",
};

/** Words for a caution that travels beside a result. Unknown codes are shown as they are, never hidden. */
export function cautionText(
	{ code, facts }: Caution,
	system: UnitSystem,
): string {
	const words = CAUTION_WORDS[code];
	return words === undefined
		? [code.replaceAll("-", " "), ...factList(facts)].join("; ")
		: words(telling(facts, system));
}

const factList = (facts: Facts | undefined): string[] =>
	Object.entries(facts ?? {}).map(([name, value]) =>
		typeof value === "number"
			? `${name} ${formatNumber(value, 1)}`
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

/** Words for a refusal, with the nearest answer that works where one is known. */
export function refusalView(
	{ code, field, value, min, max, facts }: Refusal,
	system: UnitSystem,
): RefusalView {
	switch (code) {
		case "weight-below-natural": {
			const nearestG = numberIn(facts, "nearestMassG");
			return {
				text: `${formatMass(Number(value), system)} cannot be built: these woods weigh about ${formatMass(numberIn(facts, "naturalMassG"), system)} with nothing added. The lightest this build can promise is ${formatMass(nearestG, system)}.`,
				remedy: {
					field: "wishMass",
					answer: typedGrams(nearestG, Math.ceil),
					label: `Use ${formatMass(nearestG, system)}`,
				},
			};
		}
		case "weight-above-bore": {
			const nearestG = numberIn(facts, "nearestMassG");
			return {
				text: `${formatMass(Number(value), system)} cannot be reached: the bore that leaves sound wood holds enough for ${formatMass(nearestG, system)} at most.`,
				remedy: {
					field: "wishMass",
					answer: typedGrams(nearestG, Math.floor),
					label: `Use ${formatMass(nearestG, system)}`,
				},
			};
		}
		case "rule-broken":
			return {
				text: `${RULE_LABELS[String(facts?.rule)] ?? String(facts?.rule)}: ${boundText(field, value, { min, max }, system)}`,
				remedy: null,
			};
		default:
			return {
				text: [
					boundText(field, value, { min, max }, system),
					...factList(facts),
				].join("; "),
				remedy: null,
			};
	}
}

function inUnits(field: string, value: number, system: UnitSystem): string {
	if (field.endsWith("Mm"))
		return formatLength(
			value,
			system,
			/diameter/i.test(field) ? "diameter" : "length",
		);
	if (field.endsWith("G")) return formatMass(value, system);
	return formatNumber(value, Number.isInteger(value) ? 0 : 2);
}

/** "buttDiameterMm" reads "butt diameter". */
const plainField = (field: string): string =>
	(field.split(".").at(-1) ?? field)
		.replace(/(Mm|G|Deg|Years|Ratio)$/, "")
		.replace(/([A-Z])/g, " $1")
		.toLowerCase()
		.trim();

const capital = (text: string): string =>
	text.charAt(0).toUpperCase() + text.slice(1);

function boundText(
	field: string,
	value: Refusal["value"],
	{ min, max }: { min?: number; max?: number },
	system: UnitSystem,
): string {
	const got =
		typeof value === "number"
			? inUnits(field, value, system)
			: (value ?? "nothing");
	const bounds = [
		min === undefined ? "" : `at least ${inUnits(field, min, system)}`,
		max === undefined ? "" : `at most ${inUnits(field, max, system)}`,
	].filter(Boolean);
	return `${capital(plainField(field))} is ${got}${bounds.length > 0 ? `; it can be ${bounds.join(" and ")}` : ""}.`;
}

/** Words for an answer that cannot be read, naming field, value and bound. */
export function problemText(
	problem: AnswerProblem,
	system: UnitSystem,
): string {
	const { field, code, text, value, min, max } = problem;
	const label = FIELD_LABELS[field];
	const write = (bound: number) => writeBound(field, bound, system);
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

function writeBound(
	name: FieldName,
	bound: number,
	system: UnitSystem,
): string {
	const field = FIELDS[name];
	if (field.kind === "mass") return formatMass(bound, system);
	if (field.kind === "amount") return formatNumber(bound / 100, 2);
	if (field.kind === "length" || field.kind === "readings")
		return formatLength(
			bound,
			system,
			field.bare.metric === "mm"
				? "diameter"
				: name === "stature"
					? "body"
					: "length",
		);
	return formatNumber(bound);
}
