import {
	MOST_ONLINE_TYPED,
	ONLINE_FIELDS,
	type OnlineAnswers,
} from "@/lib/forms/online-cue";
import { HOME_FIELDS, type HomeAnswers } from "@/lib/forms/online-measures";
import { differing } from "./steps-back";

/** A cue that is kept on the server under an address. */
export interface Kept {
	readonly id: string;
	readonly token: string;
	readonly revision: number;
	/** ISO moment until which the address opens. */
	readonly expiresAt: string | null;
	/** What the server has. */
	readonly answers: OnlineAnswers;
}

/** What this device holds of the cue being put together. Measures at home are here and nowhere else. */
export interface Draft {
	readonly answers: OnlineAnswers;
	readonly home: HomeAnswers;
	readonly kept: Kept | null;
}

export const EMPTY_DRAFT: Draft = { answers: {}, home: {}, kept: null };

/** The same in what was said; left out and emptied are one. */
export const sameAnswers = (a: OnlineAnswers, b: OnlineAnswers): boolean =>
	differing(a, b).length === 0;

const DRAFT = "online-cue";
const ASIDE = "online-cue-aside";

export const isEmpty = ({ answers }: Pick<Draft, "answers">): boolean =>
	Object.values(answers).every((text) => !text);

export const readDraft = (): Draft | null => read(DRAFT);
export const keepDraft = (draft: Draft): boolean => write(DRAFT, draft);

/** What was put aside to make room for another cue. */
export const readAside = (): Draft | null => read(ASIDE);

/** Puts a draft in the place of the present one, which is put aside where it is kept nowhere else. */
export function replaceDraft(draft: Draft): void {
	const before = readDraft();
	if (before !== null && before.kept === null && !isEmpty(before))
		write(ASIDE, before);
	write(DRAFT, draft);
}

/** Changes places with what was put aside; null where there is nothing. */
export function bringBack(): Draft | null {
	const aside = readAside();
	if (aside === null) return null;
	const before = readDraft();
	write(DRAFT, aside);
	if (before !== null && before.kept === null && !isEmpty(before))
		write(ASIDE, before);
	else forget(ASIDE);
	return aside;
}

/** Null where there is nothing, or nothing of this shape: another version of the page may have written it. */
function read(key: string): Draft | null {
	try {
		const text = localStorage.getItem(key);
		return text === null ? null : draftIn(JSON.parse(text));
	} catch {
		// No storage, or damaged: as good as empty, and the next change writes it anew.
		return null;
	}
}

function write(key: string, draft: Draft): boolean {
	try {
		localStorage.setItem(key, JSON.stringify(draft));
		return true;
	} catch {
		return false;
	}
}

function forget(key: string): void {
	try {
		localStorage.removeItem(key);
	} catch {
		// Nothing was stored then.
	}
}

type Plain = Readonly<Record<string, unknown>>;
const isPlain = (value: unknown): value is Plain =>
	typeof value === "object" && value !== null && !Array.isArray(value);

function textsIn<Name extends string>(
	value: unknown,
	names: readonly Name[],
): Partial<Record<Name, string>> {
	if (!isPlain(value)) return {};
	const texts: Partial<Record<Name, string>> = {};
	for (const name of names) {
		const text = value[name];
		if (typeof text === "string" && text.length <= MOST_ONLINE_TYPED)
			texts[name] = text;
	}
	return texts;
}

function draftIn(value: unknown): Draft | null {
	if (!isPlain(value)) return null;
	return {
		answers: textsIn(value.answers, ONLINE_FIELDS),
		home: textsIn(value.home, HOME_FIELDS),
		kept: keptIn(value.kept),
	};
}

function keptIn(value: unknown): Kept | null {
	if (!isPlain(value)) return null;
	const { id, token, revision, expiresAt } = value;
	if (
		typeof id !== "string" ||
		typeof token !== "string" ||
		typeof revision !== "number"
	)
		return null;
	return {
		id,
		token,
		revision,
		expiresAt: typeof expiresAt === "string" ? expiresAt : null,
		answers: textsIn(value.answers, ONLINE_FIELDS),
	};
}
