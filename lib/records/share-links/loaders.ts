import "server-only";
import { database } from "@/lib/records/database";
import {
	isToken,
	type LinkTarget,
	linkSelection,
	type ShareLinkRecord,
	tokenHash,
} from "@/lib/records/share-links/data";

/** What an address opens, or why it no longer does. Unknown tells nothing of what there is. */
export type OpenedLink =
	| { readonly standing: "open"; readonly link: ShareLinkRecord }
	| { readonly standing: "expired" | "revoked" | "unknown" };

export async function openLink(
	token: string,
	now = new Date(),
): Promise<OpenedLink> {
	if (!isToken(token)) return { standing: "unknown" };
	const link = await database().shareLink.findUnique({
		where: { tokenHash: tokenHash(token) },
		select: linkSelection,
	});
	if (link === null) return { standing: "unknown" };
	if (link.revokedAt !== null) return { standing: "revoked" };
	if (link.expiresAt !== null && link.expiresAt <= now)
		return { standing: "expired" };
	return { standing: "open", link };
}

/** Newest first. The addresses themselves are not kept. */
export async function listLinks(
	target: LinkTarget,
): Promise<ShareLinkRecord[]> {
	return database().shareLink.findMany({
		where: target,
		orderBy: [{ createdAt: "desc" }, { id: "desc" }],
		select: linkSelection,
	});
}
