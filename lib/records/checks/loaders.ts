import "server-only";
import {
	type CheckRecord,
	checkSelection,
	toCheck,
} from "@/lib/records/checks/data";
import { type DatabaseTransaction, database } from "@/lib/records/database";
import type { BuiltResult } from "@/lib/workshop/prediction-record";

type Reader = Pick<DatabaseTransaction, "jobCheck" | "jobEvent">;

/** Checks looked through for predictions, newest first. */
const MOST_CHECKS = 1000;

/**
 * Of every job whose cue was weighed, what was predicted when it was ordered and what the latest telling
 * check read; newest first.
 */
export async function predictedResults(): Promise<BuiltResult[]> {
	const rows = await database().jobCheck.findMany({
		where: { stage: { in: ["before-weighting", "finished"] } },
		orderBy: [{ createdAt: "desc" }, { id: "desc" }],
		take: MOST_CHECKS,
		select: { ...checkSelection, job: { select: { number: true } } },
	});
	const seen = new Set<number>();
	return rows.flatMap(({ job, ...row }) => {
		const { content, createdAt } = toCheck(row, []);
		if (content.predicted === null || seen.has(job.number)) return [];
		seen.add(job.number);
		return [
			{ jobNumber: job.number, at: createdAt, prediction: content.predicted },
		];
	});
}

/** Every check of a job with what was decided of it, latest first. */
export async function checksOf(
	jobId: string,
	from: Reader = database(),
): Promise<CheckRecord[]> {
	const rows = await from.jobCheck.findMany({
		where: { jobId },
		orderBy: [{ createdAt: "desc" }, { id: "desc" }],
		select: checkSelection,
	});
	if (rows.length === 0) return [];
	const events = await from.jobEvent.findMany({
		where: { jobId, kind: "decided" },
		orderBy: [{ createdAt: "desc" }, { id: "desc" }],
		select: { kind: true, facts: true, by: true, note: true, createdAt: true },
	});
	return rows.map((row) => toCheck(row, events));
}
