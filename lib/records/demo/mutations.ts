import "server-only";
import { inTransaction } from "@/lib/records/database";
import { DEMO_REMOVED_KEY, type DemoInventory } from "@/lib/records/demo/data";
import { planRemoval } from "@/lib/records/demo/plan";

/**
 * Takes away every row marked as invented demo data and nothing else, all of it or nothing, and records
 * that it is gone. What something real hangs on stays, and is told. Done twice it is done once: the
 * second time there is nothing left to take.
 */
export async function removeDemo(): Promise<DemoInventory> {
	return inTransaction(async (transaction) => {
		const { ids, inventory } = await planRemoval(transaction);
		const list = (kind: keyof typeof ids) => ({ in: [...ids[kind]] });
		const ofJobs = { jobId: list("jobs") };

		await transaction.shareLink.deleteMany({
			where: { OR: [ofJobs, { onlineCueId: list("onlineCues") }] },
		});
		await transaction.playerCue.deleteMany({
			where: { id: list("playerCues") },
		});
		await transaction.woodEvidence.deleteMany({
			where: { id: list("evidence") },
		});
		await transaction.agreement.deleteMany({
			where: { jobRevision: ofJobs },
		});
		await transaction.jobCheck.deleteMany({ where: ofJobs });
		await transaction.jobEvent.deleteMany({ where: ofJobs });
		await transaction.jobRevision.deleteMany({ where: ofJobs });
		await transaction.job.deleteMany({ where: { id: list("jobs") } });
		await transaction.onlineCue.deleteMany({
			where: { id: list("onlineCues") },
		});

		await transaction.trialWish.deleteMany({
			where: {
				OR: [{ trialId: list("trials") }, { fittingId: list("fittings") }],
			},
		});
		await transaction.trialShot.deleteMany({
			where: { trialId: list("trials") },
		});
		await transaction.trial.deleteMany({ where: { id: list("trials") } });
		await transaction.trialCue.deleteMany({ where: { id: list("rackCues") } });

		await transaction.specRevision.deleteMany({
			where: { specId: list("specs") },
		});
		await transaction.spec.deleteMany({ where: { id: list("specs") } });
		await transaction.fitting.deleteMany({ where: { id: list("fittings") } });
		await transaction.playerNote.deleteMany({ where: { id: list("notes") } });
		await transaction.player.deleteMany({ where: { id: list("players") } });
		await transaction.settingVersion.deleteMany({
			where: { id: list("settings") },
		});

		// A request sent again finds nothing rather than a row that is gone.
		await transaction.appliedRequest.deleteMany({
			where: { resultId: { in: Object.values(ids).flat() } },
		});
		await transaction.appliedRequest.upsert({
			where: { key: DEMO_REMOVED_KEY },
			create: {
				key: DEMO_REMOVED_KEY,
				kind: "remove-demo",
				resultId: new Date().toISOString(),
			},
			update: {},
		});
		return inventory;
	});
}
