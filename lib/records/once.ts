import "server-only";
import type { DatabaseTransaction } from "@/lib/records/database";

type RequestKind =
	| "create-player"
	| "start-fitting"
	| "save-spec"
	| "add-trial-cue"
	| "start-trial"
	| "apply-trial-wish"
	| "keep-online-cue"
	| "open-job"
	| "save-setting"
	| "move-job"
	| "set-job-due"
	| "note-job"
	| "change-job-customer"
	| "write-job-revision"
	| "agree-job"
	| "make-job-link"
	| "revoke-job-links"
	| "write-player-note"
	| "write-check"
	| "decide-check"
	| "take-evidence"
	| "withdraw-evidence"
	| "restore-evidence";

interface Request {
	readonly key: string;
	readonly kind: RequestKind;
}

/**
 * Carries out a creating request unless its key was seen before, and gives the id of its result
 * either way: a double click, a retry after a lost answer or the back button creates nothing twice.
 * Throws where the key was used for a request of another kind.
 */
export async function once(
	transaction: DatabaseTransaction,
	{ key, kind }: Request,
	create: () => Promise<string>,
): Promise<string> {
	const before = await carriedOut(transaction, { key, kind });
	if (before !== null) return before;
	const resultId = await create();
	await transaction.appliedRequest.create({ data: { key, kind, resultId } });
	return resultId;
}

/**
 * What an earlier request with this key came to; null where there was none. Throws where the key was
 * used for a request of another kind.
 */
export async function carriedOut(
	transaction: DatabaseTransaction,
	{ key, kind }: Request,
): Promise<string | null> {
	if (key.length < 8 || key.length > 200) {
		throw new RangeError(
			`a request key has 8 to 200 characters, got ${key.length}`,
		);
	}
	const applied = await transaction.appliedRequest.findUnique({
		where: { key },
	});
	if (applied && applied.kind !== kind) {
		throw new Error(
			`request key ${key} was already used to ${applied.kind}, now to ${kind}`,
		);
	}
	return applied?.resultId ?? null;
}
