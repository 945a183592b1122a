import "server-only";
import { canonicalJson } from "@/lib/records/canonical";
import type { DatabaseTransaction } from "@/lib/records/database";
import { benchBuild, type JobRecord } from "@/lib/records/jobs/data";
import { today } from "@/lib/records/settings/loaders";
import { type DecidedCheck, finishedFigures } from "@/lib/workshop/check";
import { asBuiltCue } from "@/lib/workshop/player-cue";

/**
 * Makes the cue of a job that is handed over its player's own, as the bench measured it last; nothing
 * where the job has no player. Inside the caller's transaction.
 */
export async function handOver(
	transaction: DatabaseTransaction,
	{ job, checks }: { job: JobRecord; checks: readonly DecidedCheck[] },
): Promise<void> {
	if (job.player === null) return;
	const content = asBuiltCue({
		build: benchBuild(job),
		readings: finishedFigures(checks),
	});
	await transaction.playerCue.create({
		data: {
			playerId: job.player.id,
			// The same in every language; the pages say what it is.
			name: `№ ${job.number}`,
			content: JSON.parse(canonicalJson(content)),
			jobId: job.id,
			since: today(),
			isDemo: job.isDemo,
		},
	});
}
