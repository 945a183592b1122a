import type { z } from "zod";
import type { UnitSystem } from "@/lib/units/quantity";
import { answersSchema, problemsOf } from "./answers";
import { type Answers, FIELD_NAMES, FIELDS, type FieldName } from "./fields";

/**
 * The typed form's schema for one unit system: the stored shape, and one issue for each answer that
 * cannot be read, with the problem itself as the issue's params.
 */
export const fittingFormSchema = (system: UnitSystem) =>
	answersSchema.superRefine((answers, context) => {
		for (const name of FIELD_NAMES)
			for (const problem of problemsOf(name, answers[name], system))
				context.addIssue({
					code: "custom",
					path: problem.index === undefined ? [name] : [name, problem.index],
					params: { problem },
					message: problem.code,
				});
	});

export type FittingForm = z.infer<typeof answersSchema>;

export type ListField = {
	[Name in FieldName]: (typeof FIELDS)[Name]["kind"] extends
		| "readings"
		| "choices"
		? Name
		: never;
}[FieldName];
export type TextFieldName = Exclude<FieldName, ListField>;

/** Every field present: text for one answer, a list for several. */
export type FormValues = { [Name in TextFieldName]: string } & {
	[Name in ListField]: string[];
};

const isList = (name: FieldName): name is ListField =>
	FIELDS[name].kind === "readings" || FIELDS[name].kind === "choices";

export const formFrom = (answers: Answers): FormValues =>
	Object.fromEntries(
		FIELD_NAMES.map((name) => {
			const answer = answers[name];
			if (isList(name))
				return [
					name,
					typeof answer === "string" ? [answer] : [...(answer ?? [])],
				];
			return [name, typeof answer === "string" ? answer : (answer?.[0] ?? "")];
		}),
	) as FormValues;

/** Drops what was left out, so that stored answers say only what was said. */
export const answersFrom = (form: Partial<FormValues>): Answers =>
	Object.fromEntries(
		FIELD_NAMES.flatMap((name) => {
			const answer = form[name];
			if (answer === undefined) return [];
			const given =
				typeof answer === "string"
					? answer.trim() !== ""
					: answer.some((text) => text.trim() !== "");
			return given ? [[name, answer]] : [];
		}),
	);
