import "server-only";
import { database } from "@/lib/records/database";
import {
	type OnlineCueRecord,
	onlineCueSelection,
	toOnlineCue,
} from "@/lib/records/online-cues/data";
import { isToken, tokenHash } from "@/lib/records/share-links/data";
import { openLink } from "@/lib/records/share-links/loaders";

/** What the address of an online cue opens, and whether the device asking may change it. */
export type OpenedCue =
	| {
			readonly standing: "open";
			readonly cue: OnlineCueRecord;
			readonly isOwn: boolean;
			readonly expiresAt: Date | null;
	  }
	| { readonly standing: "expired" | "revoked" | "unknown" };

/** Opens an address. `deviceToken` is what the device was given when it kept its first cue. */
export async function openOnlineCue(
	token: string,
	deviceToken: string | null,
	now = new Date(),
): Promise<OpenedCue> {
	const opened = await openLink(token, now);
	if (opened.standing !== "open") return opened;
	const { onlineCueId, expiresAt } = opened.link;
	if (onlineCueId === null) return { standing: "unknown" };
	const row = await database().onlineCue.findUniqueOrThrow({
		where: { id: onlineCueId },
		select: { ...onlineCueSelection, ownerHash: true },
	});
	const { ownerHash, ...rest } = row;
	return {
		standing: "open",
		cue: toOnlineCue(rest),
		isOwn: isOwner(ownerHash, deviceToken),
		expiresAt,
	};
}

/** Compared by hash, so that how long it takes tells nothing of the token. */
export const isOwner = (
	ownerHash: string | null,
	deviceToken: string | null,
): boolean =>
	ownerHash !== null &&
	deviceToken !== null &&
	isToken(deviceToken) &&
	tokenHash(deviceToken) === ownerHash;
