import { z } from "zod";
import type { FittingInput } from "@/lib/advice/input";
import { parseLength, parseMass } from "@/lib/units/parse";
import type { UnitSystem } from "@/lib/units/quantity";
import { MAX_GRIP_READINGS, MAX_NOTES_LENGTH } from "./bounds";
import {
	type Answers,
	FIELD_NAMES,
	FIELDS,
	type Field,
	type FieldName,
} from "./fields";
import { fittingInputSchema } from "./fitting-input";
import { type TakenWish, wishSpreadOf } from "./taken-wishes";

/** What is wrong with one answer, as data: `lib/present` words it. */
export interface AnswerProblem {
	readonly field: FieldName;
	/** Position in a list of readings, from 0. */
	readonly index?: number;
	readonly code:
		| "not-a-number"
		| "unknown-unit"
		| "ambiguous"
		| "out-of-range"
		| "not-a-choice"
		| "not-a-date"
		| "too-many"
		| "too-long";
	readonly text: string;
	readonly value?: number;
	readonly min?: number;
	readonly max?: number;
}

type Reading =
	| { readonly ok: true; readonly value: unknown }
	| {
			readonly ok: false;
			readonly problems: readonly Omit<AnswerProblem, "field">[];
	  };

const asList = (answer: string | readonly string[]): readonly string[] =>
	typeof answer === "string" ? [answer] : answer;

function readQuantity(
	field: Extract<Field, { kind: "length" | "mass" | "readings" }>,
	text: string,
	system: UnitSystem,
): Reading {
	const { min, max } = field.bound;
	const parsed =
		field.kind === "mass"
			? parseMass(text, {
					system,
					minG: min,
					maxG: max,
					defaultUnit: field.bare[system],
				})
			: parseLength(text, {
					system,
					minMm: min,
					maxMm: max,
					defaultUnit: field.bare[system],
				});
	if (parsed.ok)
		return { ok: true, value: "mm" in parsed ? parsed.mm : parsed.g };
	const { code, value } = parsed.refusal;
	return {
		ok: false,
		problems: [
			{
				code: code === "empty" ? "not-a-number" : code,
				text,
				...(typeof value === "number" ? { value } : {}),
				min,
				max,
			},
		],
	};
}

function readYears(
	text: string,
	{ min, max }: { min: number; max: number },
): Reading {
	const years = Number(text.trim().replace(",", "."));
	if (!Number.isFinite(years))
		return { ok: false, problems: [{ code: "not-a-number", text, min, max }] };
	if (years < min || years > max)
		return {
			ok: false,
			problems: [{ code: "out-of-range", text, value: years, min, max }],
		};
	return { ok: true, value: years };
}

const MINOR_PER_UNIT = 100;

/** "450", "449.50", "449,50"; a currency sign or name before or after is let pass. */
function readAmount(
	text: string,
	{ min, max }: { min: number; max: number },
): Reading {
	const bare = text.trim().replace(/^\p{Sc}\s*|\s*(\p{Sc}|[A-Z]{3})$/gu, "");
	if (!/^\d{1,9}([.,]\d{1,2})?$/.test(bare))
		return { ok: false, problems: [{ code: "not-a-number", text, min, max }] };
	const minor = Math.round(Number(bare.replace(",", ".")) * MINOR_PER_UNIT);
	if (minor < min || minor > max)
		return {
			ok: false,
			problems: [{ code: "out-of-range", text, value: minor, min, max }],
		};
	return { ok: true, value: minor };
}

function readField(
	field: Field,
	answer: string | readonly string[],
	system: UnitSystem,
): Reading {
	const texts = asList(answer);
	const [first = ""] = texts;
	switch (field.kind) {
		case "text":
			return first.length <= MAX_NOTES_LENGTH
				? { ok: true, value: first }
				: {
						ok: false,
						problems: [
							{
								code: "too-long",
								text: "",
								value: first.length,
								max: MAX_NOTES_LENGTH,
							},
						],
					};
		case "date":
			return z.iso.date().safeParse(first).success
				? { ok: true, value: first }
				: { ok: false, problems: [{ code: "not-a-date", text: first }] };
		case "years":
			return readYears(first, field.bound);
		case "amount":
			return readAmount(first, field.bound);
		case "length":
		case "mass":
			return readQuantity(field, first, system);
		case "yes-no":
			return first === "yes" || first === "no"
				? { ok: true, value: first === "yes" }
				: { ok: false, problems: [{ code: "not-a-choice", text: first }] };
		case "choice":
			return field.options.includes(first)
				? { ok: true, value: first }
				: { ok: false, problems: [{ code: "not-a-choice", text: first }] };
		case "choices": {
			const wrong = texts.filter((text) => !field.options.includes(text));
			return wrong.length === 0
				? { ok: true, value: [...texts] }
				: {
						ok: false,
						problems: wrong.map((text) => ({ code: "not-a-choice", text })),
					};
		}
		case "readings":
			return readReadings(field, texts, system);
	}
}

function readReadings(
	field: Extract<Field, { kind: "readings" }>,
	texts: readonly string[],
	system: UnitSystem,
): Reading {
	const taken = texts
		.map((text, index) => ({ text, index }))
		.filter(({ text }) => text.trim() !== "");
	if (taken.length > MAX_GRIP_READINGS)
		return {
			ok: false,
			problems: [
				{
					code: "too-many",
					text: "",
					value: taken.length,
					max: MAX_GRIP_READINGS,
				},
			],
		};
	const readings = taken.map(({ text, index }) => ({
		index,
		reading: readQuantity(field, text, system),
	}));
	const problems = readings.flatMap(({ index, reading }) =>
		reading.ok
			? []
			: reading.problems.map((problem) => ({ ...problem, index })),
	);
	if (problems.length > 0) return { ok: false, problems };
	return {
		ok: true,
		value: readings.flatMap(({ reading }) =>
			reading.ok ? [reading.value] : [],
		),
	};
}

const isLeftOut = (answer: string | readonly string[] | undefined): boolean =>
	answer === undefined || asList(answer).every((text) => text.trim() === "");

/** The problems of one answer; none for an answer left out. */
export function problemsOf(
	name: FieldName,
	answer: string | readonly string[] | undefined,
	system: UnitSystem,
): AnswerProblem[] {
	if (answer === undefined || isLeftOut(answer)) return [];
	const reading = readField(FIELDS[name], answer, system);
	return reading.ok
		? []
		: reading.problems.map((problem) => ({ ...problem, field: name }));
}

export interface ReadAnswers {
	readonly input: FittingInput;
	readonly problems: readonly AnswerProblem[];
	/** Fields that carry a usable answer; every other is estimated. */
	readonly answered: readonly FieldName[];
}

/**
 * Turns stored answers into the domain input. An answer that cannot be read counts as left out and
 * is reported, so that one slip never hides the rest of a fitting. `taken` are the wishes that were
 * taken from trials and stand: theirs go with their spread as long as they read as they were taken.
 */
export function readAnswers(
	answers: Answers,
	system: UnitSystem = "metric",
	taken: readonly TakenWish[] = [],
): ReadAnswers {
	const problems: AnswerProblem[] = [];
	const answered: FieldName[] = [];
	const tree: Record<string, unknown> = {};
	for (const name of FIELD_NAMES) {
		const answer = answers[name];
		if (answer === undefined || isLeftOut(answer)) continue;
		const field = FIELDS[name];
		const reading = readField(field, answer, system);
		if (!reading.ok) {
			problems.push(
				...reading.problems.map((problem) => ({ ...problem, field: name })),
			);
			continue;
		}
		answered.push(name);
		if ("path" in field) place(tree, field.path, reading.value);
	}
	const input = fittingInputSchema.parse(tree);
	const wishSpread = wishSpreadOf({ answers, wishes: input.wishes, taken });
	return {
		input: wishSpread === null ? input : { ...input, wishSpread },
		problems,
		answered,
	};
}

function place(
	tree: Record<string, unknown>,
	path: string,
	value: unknown,
): void {
	const [head = "", ...tail] = path.split(".");
	if (tail.length === 0) {
		tree[head] = value;
		return;
	}
	const branch = { ...(tree[head] as Record<string, unknown> | undefined) };
	place(branch, tail.join("."), value);
	tree[head] = branch;
}

export const answerSchema = z.union([
	z.string().max(MAX_NOTES_LENGTH * 2),
	z.array(z.string().max(200)).max(64),
]);

/** The stored shape: known fields only, texts as typed. What a save accepts, readable or not. */
export const answersSchema = z.strictObject(
	Object.fromEntries(
		FIELD_NAMES.map((name) => [name, answerSchema.optional()]),
	) as Record<FieldName, z.ZodOptional<typeof answerSchema>>,
);
