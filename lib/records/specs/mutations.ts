import "server-only";
import { z } from "zod";
import { canonicalJson, contentSha256 } from "@/lib/records/canonical";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";
import { takeNumber } from "@/lib/records/numbers";
import { once } from "@/lib/records/once";

/** Plain JSON, in the order of its names: what is stored is what the checksum is of. */
const contentSchema = z.record(z.string(), z.json());
const reasonSchema = z.string().trim().max(2000);

export interface SpecSaved {
	readonly number: number;
	readonly revision: number;
}

/**
 * Saves what a fitting came to. The first save gives the spec its number and revision 1; content that
 * differs from the latest revision becomes the next; equal content is the latest revision again.
 * The same request key gives the same revision whatever was saved since. Throws where the fitting is
 * not there, or where the content is not plain JSON.
 */
export async function saveSpec({
	fittingId,
	content,
	reason,
	requestKey,
}: {
	fittingId: string;
	content: object;
	reason: string;
	requestKey: string;
}): Promise<SpecSaved> {
	const data = {
		content: contentSchema.parse(JSON.parse(canonicalJson(content))),
		contentSha256: contentSha256(content),
		reason: reasonSchema.parse(reason),
		requestKey,
	};
	return inTransaction(async (transaction) => {
		const revisionId = await once(
			transaction,
			{ key: requestKey, kind: "save-spec" },
			async () => {
				const specId = await specOf(transaction, fittingId);
				const latest = await transaction.specRevision.findFirst({
					where: { specId },
					orderBy: { revision: "desc" },
				});
				if (latest?.contentSha256 === data.contentSha256) return latest.id;
				const created = await transaction.specRevision.create({
					data: { ...data, specId, revision: (latest?.revision ?? 0) + 1 },
				});
				return created.id;
			},
		);
		const saved = await transaction.specRevision.findUniqueOrThrow({
			where: { id: revisionId },
			select: { revision: true, spec: { select: { number: true } } },
		});
		return { number: saved.spec.number, revision: saved.revision };
	});
}

/** The fitting's spec, given its number now where it has none; that finishes the fitting. */
async function specOf(
	transaction: DatabaseTransaction,
	fittingId: string,
): Promise<string> {
	const spec = await transaction.spec.findUnique({ where: { fittingId } });
	if (spec) return spec.id;
	const fitting = await transaction.fitting.findUnique({
		where: { id: fittingId },
	});
	if (!fitting) throw new Error(`there is no fitting ${fittingId}`);
	await transaction.fitting.update({
		where: { id: fittingId },
		data: { finishedAt: new Date() },
	});
	const created = await transaction.spec.create({
		data: { fittingId, number: await takeNumber(transaction, "spec") },
	});
	return created.id;
}
