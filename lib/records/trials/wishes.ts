import "server-only";
import { canonicalJson } from "@/lib/records/canonical";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";
import {
	type StoredAnswers,
	storedAnswersSchema,
} from "@/lib/records/fittings/data";
import { once } from "@/lib/records/once";

/**
 * Sets one wish of a fitting from what the trials say, once for each request key, and keeps what
 * stood there. Throws where the trial or the fitting is not there, or they are of two players.
 */
export async function applyTrialWish({
	trialId,
	fittingId,
	field,
	after,
	offer,
	requestKey,
}: {
	trialId: string;
	fittingId: string;
	/** Name of the answer, and its text as it would be typed. */
	field: string;
	after: string;
	/** What was offered, kept as it was shown. */
	offer: object;
	requestKey: string;
}): Promise<string> {
	return inTransaction((transaction) =>
		once(
			transaction,
			{ key: requestKey, kind: "apply-trial-wish" },
			async () => {
				const trial = await transaction.trial.findUnique({
					where: { id: trialId },
				});
				const answers = await answersOf(transaction, fittingId);
				if (trial === null || answers === null)
					throw new Error(
						`there is no trial ${trialId} or fitting ${fittingId}`,
					);
				if (trial.playerId !== answers.playerId)
					throw new Error(
						`trial ${trialId} and fitting ${fittingId} are of two players`,
					);
				const before = answers.answers[field] ?? null;
				if (Array.isArray(before))
					throw new Error(`${field} is no wish with one answer`);
				await putAnswer(transaction, fittingId, answers, field, after);
				const created = await transaction.trialWish.create({
					data: {
						trialId,
						fittingId,
						field,
						before,
						after,
						offer: JSON.parse(canonicalJson(offer)),
						requestKey,
					},
				});
				return created.id;
			},
		),
	);
}

/** The wish was put back, or what stands there now in its place; gone where there is no such wish. */
export type WishReverted =
	| { readonly ok: true }
	| { readonly ok: false; readonly standsNow: string | null };

/**
 * Puts back what stood there before a wish was set. Where the answer was changed since, it stays
 * as it is and is told. Done twice it is done once.
 */
export async function revertTrialWish(wishId: string): Promise<WishReverted> {
	return inTransaction(async (transaction) => {
		const wish = await transaction.trialWish.findUnique({
			where: { id: wishId },
		});
		if (wish === null) throw new Error(`there is no wish ${wishId}`);
		if (wish.revertedAt !== null) return { ok: true };
		const answers = await answersOf(transaction, wish.fittingId);
		if (answers === null) throw new Error(`fitting ${wish.fittingId} is gone`);
		const now = answers.answers[wish.field] ?? null;
		if (now !== wish.after)
			return {
				ok: false,
				standsNow: Array.isArray(now) ? now.join(", ") : now,
			};
		await putAnswer(
			transaction,
			wish.fittingId,
			answers,
			wish.field,
			wish.before,
		);
		await transaction.trialWish.update({
			where: { id: wishId },
			data: { revertedAt: new Date() },
		});
		return { ok: true };
	});
}

interface Current {
	readonly playerId: string;
	readonly answers: StoredAnswers;
	readonly revision: number;
}

async function answersOf(
	transaction: DatabaseTransaction,
	fittingId: string,
): Promise<Current | null> {
	const row = await transaction.fitting.findUnique({
		where: { id: fittingId },
		select: { playerId: true, answers: true, revision: true },
	});
	return row && { ...row, answers: storedAnswersSchema.parse(row.answers) };
}

async function putAnswer(
	transaction: DatabaseTransaction,
	fittingId: string,
	{ answers, revision }: Current,
	field: string,
	text: string | null,
): Promise<void> {
	const { [field]: _, ...others } = answers;
	const { count } = await transaction.fitting.updateMany({
		where: { id: fittingId, revision },
		data: {
			answers: text === null ? others : { ...others, [field]: text },
			revision: { increment: 1 },
		},
	});
	if (count !== 1)
		throw new Error(`fitting ${fittingId} was changed meanwhile; try again`);
}
