import { answerSchema } from "./answers";
import { type Answers, FIELD_NAMES, type FieldName } from "./fields";

/** One answer; null where it was left out. */
export type Answer = string | readonly string[] | null;

export const givenAnswerSchema = answerSchema.nullable();

/**
 * What a device wants of one answer, kept there until the server has it. `before` is what the device
 * knew the server to have, so that the server can tell a change made in ignorance of another.
 */
export interface AnswerChange {
	/** Made by the device for this very text: sent again, it is stored once. */
	readonly key: string;
	readonly field: FieldName;
	readonly before: Answer;
	readonly after: Answer;
	/** By the device's own clock, ISO 8601. */
	readonly typedAt: string;
	/** The conflicts this change settles, by id. */
	readonly settles?: readonly string[];
}

const isBlank = (answer: string | readonly string[]): boolean =>
	[answer].flat().every((text) => text.trim() === "");

/** An answer of blanks only was left out. */
export const answerOf = (
	answer: string | readonly string[] | null | undefined,
): Answer =>
	answer === null || answer === undefined || isBlank(answer) ? null : answer;

export const sameAnswer = (
	a: string | readonly string[] | null | undefined,
	b: string | readonly string[] | null | undefined,
): boolean => JSON.stringify(answerOf(a)) === JSON.stringify(answerOf(b));

/** The answers with some of them replaced; what is left out is not there. */
export function withAnswers(
	answers: Answers,
	changed: Iterable<readonly [FieldName, Answer]>,
): Answers {
	const next: Answers = { ...answers };
	for (const [field, answer] of changed) {
		if (answer === null) delete next[field];
		else next[field] = answer;
	}
	return next;
}

/** What the device shows: what the server had, and the device's own changes over it. */
export const shownAnswers = (
	base: Answers,
	changes: Iterable<AnswerChange>,
): Answers =>
	withAnswers(
		base,
		[...changes].map(({ field, after }) => [field, after] as const),
	);

/** The fields in which two sets of answers differ. */
export const differingFields = (a: Answers, b: Answers): FieldName[] =>
	FIELD_NAMES.filter((field) => !sameAnswer(a[field], b[field]));

/**
 * The change that makes `after` the device's word on a field. A change not yet acknowledged is
 * replaced under a new key and keeps what it started from: whether its earlier text arrived is the
 * server's to tell.
 */
export const changeTo = (p: {
	field: FieldName;
	after: Answer;
	base: Answers;
	waiting: AnswerChange | undefined;
	key: string;
	typedAt: string;
	settles?: readonly string[];
}): AnswerChange => {
	const settles = [...(p.waiting?.settles ?? []), ...(p.settles ?? [])];
	return {
		key: p.key,
		field: p.field,
		before:
			p.waiting === undefined ? answerOf(p.base[p.field]) : p.waiting.before,
		after: answerOf(p.after),
		typedAt: p.typedAt,
		...(settles.length > 0 ? { settles } : {}),
	};
};

/**
 * What is left of a waiting change once the server has answered for `sent`: nothing, or what was typed
 * meanwhile, which now starts from what was sent.
 */
export const afterAcknowledged = (
	waiting: AnswerChange,
	sent: AnswerChange,
): AnswerChange | null => {
	if (waiting.key === sent.key) return null;
	const { settles = [], ...left } = waiting;
	const open = settles.filter((id) => !sent.settles?.includes(id));
	return {
		...left,
		before: sent.after,
		...(open.length > 0 ? { settles: open } : {}),
	};
};

/** Who last touched a field on the server, and what they made of it. */
export interface LastChange {
	readonly deviceId: string;
	readonly after: Answer;
}

/**
 * A change follows on what stands there where the device knew that value, where it says the same, or
 * where the value came from the very device: one person's later word. No clock decides. Otherwise
 * another value came meanwhile that the device had not seen.
 */
function followsOn(
	change: AnswerChange,
	p: { deviceId: string; stands: Answer; last: LastChange | null },
): boolean {
	const { stands, last } = p;
	return (
		sameAnswer(stands, change.before) ||
		sameAnswer(stands, change.after) ||
		(last !== null &&
			last.deviceId === p.deviceId &&
			sameAnswer(last.after, stands))
	);
}

/** A change as the server stores it. */
export interface StoredChange<Last extends LastChange> {
	readonly change: AnswerChange;
	/** What stood there unseen by the device and gave way; null where the change followed on it. */
	readonly overrode: {
		readonly answer: Answer;
		/** Where that came from, null where it was no device. */
		readonly from: Last | null;
	} | null;
}

/**
 * What the server makes of a device's changes: the one that came last stands for the time being, and
 * what it took the place of unseen is kept beside it. Changes known by their key are left out.
 */
export function receive<Last extends LastChange>(p: {
	answers: Answers;
	deviceId: string;
	changes: readonly AnswerChange[];
	isKnown: (key: string) => boolean;
	lastOf: (field: FieldName) => Last | null;
}): { answers: Answers; stored: readonly StoredChange<Last>[] } {
	let { answers } = p;
	const keys = new Set<string>();
	const stored: StoredChange<Last>[] = [];
	for (const change of p.changes) {
		const { key, field } = change;
		if (keys.has(key) || p.isKnown(key)) continue;
		keys.add(key);
		const stands = answerOf(answers[field]);
		const from = p.lastOf(field);
		const last = stored.some((earlier) => earlier.change.field === field)
			? { deviceId: p.deviceId, after: stands }
			: from;
		const isPlain = followsOn(change, { deviceId: p.deviceId, stands, last });
		stored.push({
			change,
			overrode: isPlain
				? null
				: {
						answer: stands,
						from: from !== null && sameAnswer(from.after, stands) ? from : null,
					},
		});
		answers = withAnswers(answers, [[field, change.after]]);
	}
	return { answers, stored };
}

/**
 * When a change was typed, by the server's clock: its age by the device's clock, taken from the moment
 * it arrived. Null where the device's clock was set back in between and the age means nothing.
 */
export function typedAtOf(p: {
	typedAt: string;
	sentAt: string;
	receivedAt: Date;
}): Date | null {
	const ageMs = Date.parse(p.sentAt) - Date.parse(p.typedAt);
	return ageMs >= 0 ? new Date(p.receivedAt.getTime() - ageMs) : null;
}
