import "server-only";
import {
	type CheckRecord,
	checkSelection,
	toCheck,
} from "@/lib/records/checks/data";
import { type DatabaseTransaction, database } from "@/lib/records/database";

type Reader = Pick<DatabaseTransaction, "jobCheck" | "jobEvent">;

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
