import "server-only";
import { notFound } from "next/navigation";
import type { SpecContent } from "@/lib/advice/spec";
import type { SpecRevisionRecord } from "@/lib/records/specs/data";
import { getSpecRevision } from "@/lib/records/specs/loaders";

export interface SpecParams {
	readonly params: Promise<{ number: string; revision: string }>;
}

export interface SavedSpec extends SpecRevisionRecord {
	readonly content: SpecContent;
}

const WHOLE = /^[1-9]\d{0,8}$/;

/** The saved revision an address names, or the not-found page. */
export async function specOf({ params }: SpecParams): Promise<SavedSpec> {
	const { number, revision } = await params;
	if (!WHOLE.test(number) || !WHOLE.test(revision)) notFound();
	const saved = await getSpecRevision(Number(number), Number(revision));
	if (saved === null) notFound();
	return { ...saved, content: contentOf(saved.content) };
}

/** Content is ours, written once and frozen: only its version needs telling. */
export function contentOf(content: unknown): SpecContent {
	const { schemaVersion } = content as Partial<SpecContent>;
	if (schemaVersion !== 1)
		throw new Error(
			`spec content of version ${String(schemaVersion)} is not known here`,
		);
	return content as SpecContent;
}
