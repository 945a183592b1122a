import "server-only";
import { z } from "zod";
import { Prisma } from "@/generated/prisma/client";
import {
	type Answer,
	type AnswerChange,
	givenAnswerSchema,
	receive,
	typedAtOf,
} from "@/lib/forms/answer-changes";
import type { Device } from "@/lib/forms/device-sync";
import type { Answers, FieldName } from "@/lib/forms/fields";
import {
	type DatabaseTransaction,
	database,
	inTransaction,
} from "@/lib/records/database";
import { storedAnswersSchema } from "@/lib/records/fittings/data";

const originSchema = z.object({
	deviceId: z.string(),
	deviceName: z.string(),
	by: z.string(),
	/** ISO 8601, the server's clock. */
	at: z.string(),
});
const overrodeSchema = z.object({
	answer: givenAnswerSchema,
	from: originSchema.nullable(),
});

/** A change as it was stored, newest first in lists. */
export interface ChangeRecord {
	readonly id: string;
	readonly field: string;
	readonly before: Answer;
	readonly after: Answer;
	readonly overrode: z.infer<typeof overrodeSchema> | null;
	readonly settledAt: Date | null;
	readonly deviceId: string;
	readonly deviceName: string;
	readonly by: string;
	/** When it was typed, as well as that is known. */
	readonly at: Date;
}

const selection = {
	id: true,
	field: true,
	before: true,
	after: true,
	overrode: true,
	settledAt: true,
	deviceId: true,
	deviceName: true,
	by: true,
	typedAt: true,
	createdAt: true,
} as const satisfies Prisma.AnswerChangeSelect;

const answerFrom = (stored: unknown): Answer =>
	givenAnswerSchema.parse(stored ?? null);

const toChange = ({
	typedAt,
	createdAt,
	before,
	after,
	overrode,
	...row
}: Prisma.AnswerChangeGetPayload<{
	select: typeof selection;
}>): ChangeRecord => ({
	...row,
	before: answerFrom(before),
	after: answerFrom(after),
	overrode: overrode === null ? null : overrodeSchema.parse(overrode),
	at: typedAt ?? createdAt,
});

/**
 * Stores a device's changes of a fitting's answers, each once by its key, in one transaction. False
 * where there is no such fitting.
 */
export async function keepChanges({
	fittingId,
	device,
	changes,
	sentAt,
	receivedAt,
}: {
	fittingId: string;
	device: Device;
	changes: readonly AnswerChange[];
	/** By the device's clock, and by the server's. */
	sentAt: string;
	receivedAt: Date;
}): Promise<boolean> {
	return inTransaction(async (transaction) => {
		const fitting = await transaction.fitting.findUnique({
			where: { id: fittingId },
			select: { answers: true, revision: true },
		});
		if (fitting === null) return false;
		if (changes.length === 0) return true;
		const known = await transaction.answerChange.findMany({
			where: { requestKey: { in: changes.map(({ key }) => key) } },
			select: { requestKey: true, fittingId: true },
		});
		const elsewhere = known.find((row) => row.fittingId !== fittingId);
		if (elsewhere)
			throw new Error(
				`the key ${elsewhere.requestKey} is of a change of fitting ${elsewhere.fittingId}, not ${fittingId}`,
			);
		const lasts = await lastChanges(transaction, fittingId, changes);
		const { answers, stored } = receive({
			answers: storedAnswersSchema.parse(fitting.answers) as Answers,
			deviceId: device.id,
			changes,
			isKnown: (key) => known.some(({ requestKey }) => requestKey === key),
			lastOf: (field) => lasts.get(field) ?? null,
		});
		if (stored.length === 0) return true;
		const revision = fitting.revision + 1;
		for (const { change, overrode } of stored) {
			const { key, field, before, after, typedAt, settles = [] } = change;
			await transaction.answerChange.create({
				data: {
					fittingId,
					revision,
					field,
					before: jsonOf(before),
					after: jsonOf(after),
					overrode:
						overrode === null
							? undefined
							: {
									answer: jsonOf(overrode.answer) ?? null,
									from: overrode.from && originOf(overrode.from),
								},
					deviceId: device.id,
					deviceName: device.name,
					by: device.by,
					typedAt: typedAtOf({ typedAt, sentAt, receivedAt }),
					requestKey: key,
				},
			});
			if (settles.length > 0)
				await transaction.answerChange.updateMany({
					where: {
						id: { in: [...settles] },
						fittingId,
						field,
						settledAt: null,
					},
					data: { settledAt: receivedAt },
				});
		}
		const { count } = await transaction.fitting.updateMany({
			where: { id: fittingId, revision: fitting.revision },
			data: { answers: jsonOf(answers) ?? {}, revision },
		});
		if (count !== 1)
			throw new Error(`fitting ${fittingId} changed inside a transaction`);
		return true;
	});
}

/** Lists are copied: stored JSON is not read-only to the ORM's types. */
const jsonOf = (value: Answer | Answers): Prisma.InputJsonValue | undefined =>
	value === null
		? undefined
		: (structuredClone(value) as Prisma.InputJsonValue);

const originOf = ({ deviceId, deviceName, by, at }: ChangeRecord) => ({
	deviceId,
	deviceName,
	by,
	at: at.toISOString(),
});

async function lastChanges(
	transaction: DatabaseTransaction,
	fittingId: string,
	changes: readonly AnswerChange[],
): Promise<Map<FieldName, ChangeRecord>> {
	const lasts = new Map<FieldName, ChangeRecord>();
	for (const field of new Set(changes.map((change) => change.field))) {
		const row = await transaction.answerChange.findFirst({
			where: { fittingId, field },
			orderBy: [{ revision: "desc" }, { id: "desc" }],
			select: selection,
		});
		if (row !== null) lasts.set(field, toChange(row));
	}
	return lasts;
}

/** Changes that took the place of a value their device had not seen, and that nobody settled yet; oldest first. */
export async function openConflicts(
	fittingId: string,
): Promise<ChangeRecord[]> {
	const rows = await database().answerChange.findMany({
		where: { fittingId, settledAt: null, overrode: { not: Prisma.DbNull } },
		orderBy: [{ revision: "asc" }, { id: "asc" }],
		select: selection,
	});
	return rows.map(toChange);
}

/** Every change of a fitting's answers, newest first. */
export async function listChanges(
	fittingId: string,
	limit: number,
): Promise<ChangeRecord[]> {
	const rows = await database().answerChange.findMany({
		where: { fittingId },
		orderBy: [{ revision: "desc" }, { id: "desc" }],
		take: limit,
		select: selection,
	});
	return rows.map(toChange);
}
