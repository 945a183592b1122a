import "server-only";
import { database, inTransaction } from "@/lib/records/database";
import { DEMO_REMOVED_KEY, type DemoInventory } from "@/lib/records/demo/data";
import { planRemoval } from "@/lib/records/demo/plan";

/** What there is of invented demo data now, and what of it could not go. */
export const demoInventory = (): Promise<DemoInventory> =>
	inTransaction(
		async (transaction) => (await planRemoval(transaction)).inventory,
	);

/** Whether the invented demo data was taken away: it is then not added again. */
export async function isDemoRemoved(): Promise<boolean> {
	const removed = await database().appliedRequest.findUnique({
		where: { key: DEMO_REMOVED_KEY },
	});
	return removed !== null;
}
