import "server-only";
import { predictedResults } from "@/lib/records/checks/loaders";
import { currentSettings } from "@/lib/records/settings/loaders";
import {
	countEvidence,
	evidenceOfWood,
	latestEvidence,
} from "@/lib/records/wood-evidence/loaders";
import { WOOD_IDS, type WoodId } from "@/lib/reference/woods";

/** Results listed at once, newest first. */
export const MOST_RESULTS = 100;

/** What the page shows: of the wood that was asked for, where one was, else of all. */
export async function woodsOfWorkshop(asked: string | string[] | undefined) {
	const chosen = WOOD_IDS.find((wood) => wood === asked) ?? null;
	const { catalogue, stock, evidence } = await currentSettings();
	const counts = await countEvidence();
	const shown = new Set<WoodId>([
		...counts.map(({ wood }) => wood),
		...stock.woods.map(({ wood }) => wood),
		...Object.values(catalogue.games).flatMap(({ shaftWoods }) => shaftWoods),
		...catalogue.buttWoods.map(({ id }) => id),
	]);
	const countOf = new Map(counts.map((one) => [one.wood, one.counting]));
	return {
		chosen,
		evidence,
		// Those with results first, then in the order of the tables.
		woods: WOOD_IDS.filter((wood) => shown.has(wood)).sort(
			(a, b) => (countOf.get(b) ?? 0) - (countOf.get(a) ?? 0),
		),
		withdrawn: Object.fromEntries(
			counts.map(({ wood, withdrawn }) => [wood, withdrawn]),
		) as Partial<Record<WoodId, number>>,
		results: await predictedResults(),
		rows:
			chosen === null
				? await latestEvidence(MOST_RESULTS)
				: await evidenceOfWood(chosen, MOST_RESULTS),
	};
}
