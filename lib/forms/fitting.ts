import { type Answers, FIELD_NAMES, FIELDS, type FieldName } from "./fields";

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
