import "server-only";
import { randomUUID } from "node:crypto";
import type { FieldName } from "@/lib/forms/fields";
import { withPresentCue } from "@/lib/forms/present-cue-answers";
import { canonicalJson } from "@/lib/records/canonical";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";
import {
	type FittingRecord,
	type GivenAnswers,
	openFittingSelection,
	type StoredAnswers,
	storedAnswersSchema,
	toFitting,
} from "@/lib/records/fittings/data";
import { takeNumber } from "@/lib/records/numbers";
import { once } from "@/lib/records/once";
import { presentCueOf } from "@/lib/records/player-cues/loaders";

/** The answers were saved, or the fitting as it stands now: edited elsewhere, or gone (null). */
export type AnswersSaved =
	| { readonly ok: true; readonly revision: number }
	| { readonly ok: false; readonly conflict: FittingRecord | null };

/**
 * Starts a fitting, once for each request key. Based on an earlier fitting of the same player, it
 * begins with that one's answers. A cue that the player had from the workshop, since then if there is
 * an earlier fitting, is its present cue. Throws where the player or the earlier fitting is not there.
 */
export async function startFitting({
	id: givenId,
	playerId,
	requestKey,
	basedOnFittingId,
}: {
	/** A UUID made where the fitting was begun; one is made here where it is left out. */
	id?: string;
	playerId: string;
	requestKey: string;
	basedOnFittingId?: string;
}): Promise<FittingRecord> {
	return inTransaction(async (transaction) => {
		const id = await once(
			transaction,
			{ key: requestKey, kind: "start-fitting" },
			async () => {
				const player = await transaction.player.findUnique({
					where: { id: playerId },
				});
				if (!player) throw new Error(`there is no player ${playerId}`);
				let answers: StoredAnswers = {};
				const cue = await presentCueOf(playerId, transaction);
				let isCueNewer = cue !== null;
				if (basedOnFittingId !== undefined) {
					const earlier = await transaction.fitting.findUnique({
						where: { id: basedOnFittingId, playerId },
					});
					if (!earlier) {
						throw new Error(
							`there is no fitting ${basedOnFittingId} of player ${playerId}`,
						);
					}
					answers = storedAnswersSchema.parse(earlier.answers);
					isCueNewer = cue !== null && cue.createdAt > earlier.createdAt;
				}
				if (cue !== null && isCueNewer)
					answers = storedAnswersSchema.parse(
						withPresentCue(answers, cue.content),
					);
				const created = await transaction.fitting.create({
					data: {
						id: givenId,
						number: await takeNumber(transaction, "fitting"),
						playerId,
						answers,
						basedOnFittingId: basedOnFittingId ?? null,
						isDemo: player.isDemo,
					},
				});
				if (basedOnFittingId !== undefined)
					await takeOnWishes(transaction, basedOnFittingId, {
						id: created.id,
						answers,
					});
				return created.id;
			},
		);
		return toFitting(
			await transaction.fitting.findUniqueOrThrow({
				where: { id },
				select: openFittingSelection,
			}),
		);
	});
}

/** Wishes that trials gave an earlier fitting, and that still stand: their spread goes on with them. */
async function takeOnWishes(
	transaction: DatabaseTransaction,
	earlierId: string,
	fitting: { readonly id: string; readonly answers: StoredAnswers },
): Promise<void> {
	const given = await transaction.trialWish.findMany({
		where: { fittingId: earlierId, revertedAt: null },
		orderBy: [{ appliedAt: "asc" }, { id: "asc" }],
	});
	for (const { trialId, field, before, after, offer, appliedAt } of given)
		if (fitting.answers[field as FieldName] === after)
			await transaction.trialWish.create({
				data: {
					trialId,
					fittingId: fitting.id,
					field,
					before,
					after,
					offer: offer as object,
					requestKey: randomUUID(),
					appliedAt,
				},
			});
}

/**
 * Replaces all answers of a fitting, on the revision they were read at. Answers equal to those stored
 * are a success whatever the revision, so a retry after a lost acknowledgement is no conflict.
 */
export async function saveAnswers({
	fittingId,
	answers: given,
	revision,
}: {
	fittingId: string;
	answers: GivenAnswers;
	revision: number;
}): Promise<AnswersSaved> {
	const answers = storedAnswersSchema.parse(
		Object.fromEntries(
			Object.entries(given).filter(([, answer]) => answer !== undefined),
		),
	);
	return inTransaction(async (transaction) => {
		const row = await transaction.fitting.findUnique({
			where: { id: fittingId },
			select: openFittingSelection,
		});
		if (!row) return { ok: false, conflict: null };
		const current = toFitting(row);
		if (canonicalJson(current.answers) === canonicalJson(answers))
			return { ok: true, revision: current.revision };
		const { count } = await transaction.fitting.updateMany({
			where: { id: fittingId, revision },
			data: { answers, revision: { increment: 1 } },
		});
		return count === 1
			? { ok: true, revision: revision + 1 }
			: { ok: false, conflict: current };
	});
}
