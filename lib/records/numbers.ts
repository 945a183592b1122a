import "server-only";
import type { DatabaseTransaction } from "@/lib/records/database";

/** The next number of a kind, from 1. Inside the caller's transaction: undone with it, so no number is lost or given twice. */
export async function takeNumber(
	transaction: DatabaseTransaction,
	kind: "fitting" | "spec" | "trial" | "job",
): Promise<number> {
	const { next } = await transaction.sequence.upsert({
		where: { name: kind },
		create: { name: kind, next: 2 },
		update: { next: { increment: 1 } },
	});
	return next - 1;
}
