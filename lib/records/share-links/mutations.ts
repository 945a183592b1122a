import "server-only";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";
import {
	type LinkTarget,
	newToken,
	tokenHash,
} from "@/lib/records/share-links/data";

/**
 * Makes an unguessable address of a job or an online cue and gives its token, which is nowhere kept
 * and never told again. Done twice there are two.
 */
export const makeLink = (
	target: LinkTarget,
	expiresAt: Date | null,
): Promise<string> =>
	inTransaction((transaction) => makeLinkIn(transaction, target, expiresAt));

/** The same inside a caller's transaction. */
export async function makeLinkIn(
	transaction: DatabaseTransaction,
	target: LinkTarget,
	expiresAt: Date | null,
): Promise<string> {
	const token = newToken();
	await transaction.shareLink.create({
		data: { ...target, expiresAt, tokenHash: tokenHash(token) },
	});
	return token;
}

/** Ends every address of a job or an online cue; gives how many there were. */
export const revokeLinks = (target: LinkTarget): Promise<number> =>
	inTransaction((transaction) => revokeLinksIn(transaction, target));

/** The same inside a caller's transaction. */
export async function revokeLinksIn(
	transaction: DatabaseTransaction,
	target: LinkTarget,
): Promise<number> {
	const { count } = await transaction.shareLink.updateMany({
		where: { ...target, revokedAt: null },
		data: { revokedAt: new Date() },
	});
	return count;
}
