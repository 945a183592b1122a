import "server-only";
import { type RackCueFields, rackCueFieldsSchema } from "@/lib/forms/trial";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";
import { once } from "@/lib/records/once";
import { type RackCueRecord, toRackCue } from "@/lib/records/trials/data";
import demoRack from "./demo-rack.json";

/** The edit was saved, or the cue as it stands now: edited by someone else, or gone (null). */
export type RackCueSaved =
	| { readonly ok: true; readonly cue: RackCueRecord }
	| { readonly ok: false; readonly conflict: RackCueRecord | null };

/** Adds a cue to the rack once for each request key. Throws a ZodError for fields no form lets through. */
export async function addRackCue({
	requestKey,
	...given
}: RackCueFields & { requestKey: string }): Promise<RackCueRecord> {
	const fields = rackCueFieldsSchema.parse(given);
	return inTransaction(async (transaction) => {
		const id = await once(
			transaction,
			{ key: requestKey, kind: "add-trial-cue" },
			async () => (await transaction.trialCue.create({ data: fields })).id,
		);
		return toRackCue(
			await transaction.trialCue.findUniqueOrThrow({ where: { id } }),
		);
	});
}

/** Changes a cue on the revision it was read at. Trials keep the figures that the cue had then. */
export async function changeRackCue({
	id,
	revision,
	fields,
}: {
	id: string;
	revision: number;
	fields: RackCueFields;
}): Promise<RackCueSaved> {
	const changed = rackCueFieldsSchema.parse(fields);
	return inTransaction(async (transaction) => {
		const { count } = await transaction.trialCue.updateMany({
			where: { id, revision },
			data: { ...changed, revision: { increment: 1 } },
		});
		const row = await transaction.trialCue.findUnique({ where: { id } });
		if (count === 0) return { ok: false, conflict: row && toRackCue(row) };
		if (row === null)
			throw new Error(`trial cue ${id} vanished inside a transaction`);
		return { ok: true, cue: toRackCue(row) };
	});
}

/** Takes a cue off the rack or puts it back; done twice it is done once. Throws where there is no such cue. */
export async function retireRackCue(
	id: string,
	isRetired: boolean,
): Promise<void> {
	await inTransaction(async (transaction) => {
		const cue = await transaction.trialCue.findUniqueOrThrow({
			where: { id },
		});
		if ((cue.retiredAt !== null) === isRetired) return;
		await transaction.trialCue.update({
			where: { id },
			data: { retiredAt: isRetired ? new Date() : null },
		});
	});
}

/**
 * Puts the invented demo rack into a database whose rack is empty, all of it or nothing, marked as
 * demo. Gives how many cues were added. To be called where the other demo data is seeded, in its
 * transaction, or alone.
 */
export async function seedDemoRack(
	transaction: DatabaseTransaction,
): Promise<number> {
	if ((await transaction.trialCue.count()) > 0) return 0;
	const { recordedAt, cues } = demoRack;
	const at = new Date(recordedAt);
	for (const { id, ...cue } of cues)
		await transaction.trialCue.create({
			data: {
				...rackCueFieldsSchema.parse(cue),
				id,
				isDemo: true,
				createdAt: at,
				updatedAt: at,
			},
		});
	return cues.length;
}

/** The same on its own, for a coach who wants to look round before having a rack. */
export const addDemoRack = (): Promise<number> => inTransaction(seedDemoRack);
