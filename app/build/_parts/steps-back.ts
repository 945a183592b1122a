import {
	ONLINE_FIELDS,
	ONLINE_QUESTIONS,
	type OnlineAnswers,
} from "@/lib/forms/online-cue";
import type { OnlineField } from "@/lib/workshop/online-choices";

/** What was answered before a change. */
export interface StepBack {
	readonly answers: OnlineAnswers;
	/** The one field that was changed by hand; null where several were changed at once. */
	readonly field: OnlineField | null;
}

/** Older ones are forgotten. */
const MOST_STEPS = 100;

/** The steps back after one more change; the keys of one figure, and one slide, are one step. */
export function stepped(
	past: readonly StepBack[],
	before: OnlineAnswers,
	field: OnlineField | null,
): readonly StepBack[] {
	const isSame = field !== null && past.at(-1)?.field === field;
	return isSame && isTyped(field)
		? past
		: [...past, { answers: before, field }].slice(-MOST_STEPS);
}

const isTyped = (field: OnlineField): boolean => {
	const { kind } = ONLINE_QUESTIONS[field];
	return kind === "length" || kind === "mass";
};

/** In the order of the questions. */
export const differing = (
	a: OnlineAnswers,
	b: OnlineAnswers,
): readonly OnlineField[] =>
	ONLINE_FIELDS.filter(
		(field) => (a[field]?.trim() ?? "") !== (b[field]?.trim() ?? ""),
	);
