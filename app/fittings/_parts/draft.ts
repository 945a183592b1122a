import { z } from "zod";
import { answersSchema } from "@/lib/forms/answers";
import type { Answers } from "@/lib/forms/fields";

/**
 * What was typed and not yet acknowledged by the server, kept on the device. `base` is what the
 * server had when typing began, so that a later merge knows who changed what.
 */
const draftSchema = z.object({
	answers: answersSchema,
	base: z.object({ answers: answersSchema, revision: z.number().int() }),
});

export interface Draft {
	readonly answers: Answers;
	readonly base: { readonly answers: Answers; readonly revision: number };
}

const keyOf = (fittingId: string) => `fitting-draft:${fittingId}`;

/** The draft, null where there is none; `damaged` where something is there that cannot be read. */
export function readDraft(fittingId: string): Draft | null | "damaged" {
	const text = localStorage.getItem(keyOf(fittingId));
	if (text === null) return null;
	try {
		const parsed = draftSchema.safeParse(JSON.parse(text));
		return parsed.success ? parsed.data : "damaged";
	} catch {
		return "damaged";
	}
}

/** False when the device refuses to keep it: full, or storage switched off. */
export function keepDraft(fittingId: string, draft: Draft): boolean {
	try {
		localStorage.setItem(keyOf(fittingId), JSON.stringify(draft));
		return true;
	} catch {
		return false;
	}
}

export const dropDraft = (fittingId: string): void =>
	localStorage.removeItem(keyOf(fittingId));
