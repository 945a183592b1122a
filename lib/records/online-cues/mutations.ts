import "server-only";
import type { OnlineAnswers } from "@/lib/forms/online-cue";
import { onlineAnswersSchema } from "@/lib/forms/online-cue-schema";
import { canonicalJson } from "@/lib/records/canonical";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";
import { type NewJob, openJobIn } from "@/lib/records/jobs/mutations";
import { carriedOut, once } from "@/lib/records/once";
import {
	linkExpiry,
	type OnlineCueRecord,
	onlineCueSelection,
	toOnlineCue,
} from "@/lib/records/online-cues/data";
import { isOwner } from "@/lib/records/online-cues/loaders";
import { spendChallenge } from "@/lib/records/rates/mutations";
import { tokenHash } from "@/lib/records/share-links/data";
import { makeLinkIn } from "@/lib/records/share-links/mutations";

/** Work that a browser did for one creating request. */
export interface Challenge {
	readonly id: string;
	readonly expiresAtMs: number;
}

/** "challenge-used": that work was handed in for something else before. */
export type CueKept =
	| {
			readonly ok: true;
			readonly cue: OnlineCueRecord;
			/** Of an address of its own, told this once. */
			readonly token: string;
	  }
	| { readonly ok: false; readonly code: "challenge-used" };

interface NewCue {
	readonly requestKey: string;
	readonly answers: OnlineAnswers;
	/** Of the device that may change it. */
	readonly deviceToken: string;
	readonly challenge: Challenge;
}

/**
 * Keeps a cue under an address of its own, once for each request key: asked again it is the same cue
 * under one more address, because the first is nowhere kept.
 */
export async function keepOnlineCue(
	given: NewCue,
	now = new Date(),
): Promise<CueKept> {
	const answers = onlineAnswersSchema.parse(given.answers);
	return inTransaction(async (transaction): Promise<CueKept> => {
		const request = { key: given.requestKey, kind: "keep-online-cue" } as const;
		const isRepeated = (await carriedOut(transaction, request)) !== null;
		if (!isRepeated && !(await spendChallenge(transaction, given.challenge)))
			return { ok: false, code: "challenge-used" };
		const id = await createCue(transaction, { ...given, answers });
		return { ok: true, ...(await withLink(transaction, id, now)) };
	});
}

const stored = (answers: OnlineAnswers): Record<string, string> =>
	JSON.parse(canonicalJson(answers));

const createCue = (
	transaction: DatabaseTransaction,
	{ requestKey, answers, deviceToken }: Omit<NewCue, "challenge">,
): Promise<string> =>
	once(transaction, { key: requestKey, kind: "keep-online-cue" }, async () => {
		const created = await transaction.onlineCue.create({
			data: {
				requestKey,
				choices: stored(answers),
				ownerHash: tokenHash(deviceToken),
			},
		});
		return created.id;
	});

async function withLink(
	transaction: DatabaseTransaction,
	onlineCueId: string,
	now: Date,
): Promise<{ cue: OnlineCueRecord; token: string }> {
	const token = await makeLinkIn(transaction, { onlineCueId }, linkExpiry(now));
	return { cue: await read(transaction, onlineCueId), token };
}

const read = async (
	transaction: DatabaseTransaction,
	id: string,
): Promise<OnlineCueRecord> =>
	toOnlineCue(
		await transaction.onlineCue.findUniqueOrThrow({
			where: { id },
			select: onlineCueSelection,
		}),
	);

/** Changed; changed elsewhere since it was read; or not this device's to change (null). */
export type CueChanged =
	| { readonly ok: true; readonly revision: number }
	| { readonly ok: false; readonly conflict: OnlineCueRecord | null };

/** Replaces what was chosen, on the revision it was read at, for the device that keeps the cue. */
export async function changeOnlineCue(given: {
	id: string;
	revision: number;
	answers: OnlineAnswers;
	deviceToken: string | null;
}): Promise<CueChanged> {
	const answers = onlineAnswersSchema.parse(given.answers);
	return inTransaction(async (transaction): Promise<CueChanged> => {
		const row = await transaction.onlineCue.findUnique({
			where: { id: given.id },
			select: { ...onlineCueSelection, ownerHash: true },
		});
		if (row === null || !isOwner(row.ownerHash, given.deviceToken))
			return { ok: false, conflict: null };
		const { ownerHash: _, ...rest } = row;
		const before = toOnlineCue(rest);
		if (canonicalJson(before.answers) === canonicalJson(answers))
			return { ok: true, revision: before.revision };
		if (before.revision !== given.revision)
			return { ok: false, conflict: before };
		await transaction.onlineCue.update({
			where: { id: given.id },
			data: { choices: stored(answers), revision: { increment: 1 } },
		});
		return { ok: true, revision: before.revision + 1 };
	});
}

/** Ends every address of a cue and gives a new one; null where it is not this device's. */
export async function renewLink(
	given: { id: string; deviceToken: string | null },
	now = new Date(),
): Promise<string | null> {
	return inTransaction(async (transaction) => {
		const row = await transaction.onlineCue.findUnique({
			where: { id: given.id },
			select: { ownerHash: true },
		});
		if (row === null || !isOwner(row.ownerHash, given.deviceToken)) return null;
		await transaction.shareLink.updateMany({
			where: { onlineCueId: given.id, revokedAt: null },
			data: { revokedAt: now },
		});
		return makeLinkIn(transaction, { onlineCueId: given.id }, linkExpiry(now));
	});
}

export type CueSent =
	| {
			readonly ok: true;
			readonly jobNumber: number;
			readonly cue: OnlineCueRecord;
			readonly token: string;
	  }
	| { readonly ok: false; readonly code: "challenge-used" };

/**
 * Sends a cue to the workshop as a job in state "asked", once for each request key; with the billets to
 * pick already in the build. The cue is kept as it was sent: a new one, or this device's own.
 */
export async function sendOnlineCue(
	given: NewCue & {
		/** The cue as it was kept before; null for none. One of another device is copied. */
		readonly cueId: string | null;
		readonly job: Omit<NewJob, "from" | "requestKey">;
	},
	now = new Date(),
): Promise<CueSent> {
	const answers = onlineAnswersSchema.parse(given.answers);
	const { requestKey, deviceToken } = given;
	return inTransaction(async (transaction): Promise<CueSent> => {
		const request = { key: requestKey, kind: "open-job" } as const;
		const before = await carriedOut(transaction, request);
		if (before !== null) {
			const { number, onlineCueId } = await transaction.job.findUniqueOrThrow({
				where: { id: before },
				select: { number: true, onlineCueId: true },
			});
			if (onlineCueId === null)
				throw new Error(`job ${number} was not sent online`);
			return {
				ok: true,
				jobNumber: number,
				...(await withLink(transaction, onlineCueId, now)),
			};
		}
		if (!(await spendChallenge(transaction, given.challenge)))
			return { ok: false, code: "challenge-used" };
		const id =
			(await keptAs(transaction, { ...given, answers })) ??
			(await createCue(transaction, {
				requestKey: `${requestKey} cue`,
				answers,
				deviceToken,
			}));
		const { number } = await openJobIn(transaction, {
			...given.job,
			requestKey,
			from: { onlineCueId: id },
		});
		return {
			ok: true,
			jobNumber: number,
			...(await withLink(transaction, id, now)),
		};
	});
}

/** This device's own cue, brought to what is sent; null where there is none. */
async function keptAs(
	transaction: DatabaseTransaction,
	given: Pick<NewCue, "answers" | "deviceToken"> & { cueId: string | null },
): Promise<string | null> {
	if (given.cueId === null) return null;
	const row = await transaction.onlineCue.findUnique({
		where: { id: given.cueId },
		select: { id: true, choices: true, ownerHash: true },
	});
	if (row === null || !isOwner(row.ownerHash, given.deviceToken)) return null;
	if (canonicalJson(row.choices) !== canonicalJson(given.answers))
		await transaction.onlineCue.update({
			where: { id: row.id },
			data: { choices: stored(given.answers), revision: { increment: 1 } },
		});
	return row.id;
}
