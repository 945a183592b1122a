import "server-only";
import type { Refusal } from "@/lib/numerics/outcome";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";
import { bySchema } from "@/lib/records/jobs/data";
import { addEvent } from "@/lib/records/jobs/edit";
import { carriedOut, once } from "@/lib/records/once";
import { woodOf } from "@/lib/records/wood-evidence/data";
import { restoreRefusals } from "@/lib/workshop/check-rules";

export interface EvidenceEdit {
	readonly id: string;
	readonly by: string;
	readonly requestKey: string;
}

export type EvidenceSaved =
	| { readonly ok: true }
	| { readonly ok: false; readonly refusals: readonly Refusal[] };

/** Takes evidence out of the band, by name. Withdrawn already, it stays so. */
export const withdrawEvidence = (given: EvidenceEdit): Promise<EvidenceSaved> =>
	edit("withdraw-evidence", given, async (transaction, row, by) => {
		if (row.withdrawnAt !== null) return [];
		await transaction.woodEvidence.update({
			where: { id: row.id },
			data: { withdrawnAt: new Date(), withdrawnBy: by },
		});
		await tell(transaction, row, "evidence-withdrawn", given, by);
		return [];
	});

/**
 * Lets withdrawn evidence count again, by name. Refused as check-rules.ts says: of one cue only one
 * check speaks for a wood.
 */
export const restoreEvidence = (given: EvidenceEdit): Promise<EvidenceSaved> =>
	edit("restore-evidence", given, async (transaction, row, by) => {
		if (row.withdrawnAt === null) return [];
		const refusals = restoreRefusals({
			wood: woodOf(row.wood),
			isOtherOfJob:
				row.jobId !== null &&
				(await transaction.woodEvidence.count({
					where: { jobId: row.jobId, wood: row.wood, withdrawnAt: null },
				})) > 0,
		});
		if (refusals.length > 0) return refusals;
		await transaction.woodEvidence.update({
			where: { id: row.id },
			data: { withdrawnAt: null, withdrawnBy: null },
		});
		await tell(transaction, row, "evidence-restored", given, by);
		return [];
	});

interface Row {
	readonly id: string;
	readonly wood: string;
	readonly jobId: string | null;
	readonly withdrawnAt: Date | null;
}

async function edit(
	kind: "withdraw-evidence" | "restore-evidence",
	given: EvidenceEdit,
	make: (
		transaction: DatabaseTransaction,
		row: Row,
		by: string,
	) => Promise<readonly Refusal[]>,
): Promise<EvidenceSaved> {
	const by = bySchema.parse(given.by);
	const { id, requestKey } = given;
	return inTransaction(async (transaction): Promise<EvidenceSaved> => {
		const request = { key: requestKey, kind } as const;
		if ((await carriedOut(transaction, request)) !== null) return { ok: true };
		const row = await transaction.woodEvidence.findUnique({
			where: { id },
			select: { id: true, wood: true, jobId: true, withdrawnAt: true },
		});
		if (row === null) throw new Error(`there is no evidence ${id}`);
		const refusals = await make(transaction, row, by);
		if (refusals.length > 0) return { ok: false, refusals };
		await once(transaction, request, async () => id);
		return { ok: true };
	});
}

/** Its line in the history of the job it came from. */
async function tell(
	transaction: DatabaseTransaction,
	{ jobId, wood }: Row,
	kind: "evidence-withdrawn" | "evidence-restored",
	{ requestKey }: EvidenceEdit,
	by: string,
): Promise<void> {
	if (jobId === null) return;
	await addEvent(transaction, {
		jobId,
		kind,
		by,
		facts: { woods: [woodOf(wood)] },
		requestKey,
	});
}
