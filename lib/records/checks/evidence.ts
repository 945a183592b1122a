import "server-only";
import type { Outcome } from "@/lib/numerics/outcome";
import type { CheckRecord } from "@/lib/records/checks/data";
import { type DatabaseTransaction, database } from "@/lib/records/database";
import { benchBuild, type JobRecord } from "@/lib/records/jobs/data";
import { addEvent } from "@/lib/records/jobs/edit";
import { evidenceByWood } from "@/lib/records/wood-evidence/loaders";
import type { WoodId } from "@/lib/reference/woods";
import {
	type CheckEvidence,
	evidenceOf,
	type WoodSaid,
} from "@/lib/workshop/check-evidence";
import { tableDensity, woodBand } from "@/lib/workshop/wood-evidence";

/**
 * What a check says of the woods, held to what every other cue of the workshop said. Checks come latest
 * first; the speaking one is the first.
 */
export async function whatIsSaid(
	job: Pick<JobRecord, "id" | "agreed" | "latest">,
	checks: readonly CheckRecord[],
	from: DatabaseTransaction = database(),
): Promise<Outcome<CheckEvidence>> {
	const others = await evidenceByWood(from, { notOfJobId: job.id });
	return evidenceOf({
		build: benchBuild(job),
		checks,
		bandOf: (wood: WoodId) => woodBand(tableDensity(wood), others[wood] ?? []),
	});
}

/** Lets a check speak for its woods, in place of what the job said before. */
export async function countIn(
	transaction: DatabaseTransaction,
	p: {
		job: Pick<JobRecord, "id" | "isDemo">;
		checkId: string;
		said: readonly WoodSaid[];
		by: string;
		requestKey: string;
	},
): Promise<void> {
	const { job, checkId, said, by, requestKey } = p;
	await transaction.woodEvidence.updateMany({
		where: { jobId: job.id, withdrawnAt: null },
		data: { withdrawnAt: new Date(), withdrawnBy: by },
	});
	for (const { wood, kgM3, sd } of said)
		await transaction.woodEvidence.create({
			data: {
				wood,
				jobId: job.id,
				checkId,
				densityKgM3: kgM3,
				sdKgM3: sd,
				by,
				isDemo: job.isDemo,
				requestKey: `${requestKey}:${wood}`,
			},
		});
	await addEvent(transaction, {
		jobId: job.id,
		kind: "evidence-taken",
		by,
		facts: { checkId, woods: said.map(({ wood }) => wood) },
		requestKey: `${requestKey}:evidence`,
	});
}
