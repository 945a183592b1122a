import "server-only";
import { database } from "@/lib/records/database";
import {
	type FittingRecord,
	type FittingSummary,
	fittingSelection,
	openFittingSelection,
	toFitting,
	toSummary,
} from "@/lib/records/fittings/data";
import {
	cursorAt,
	type ListRequest,
	readCursor,
	rowsWanted,
} from "@/lib/records/page";
import { nameContains } from "@/lib/records/search";

export async function getFitting(
	number: number,
): Promise<FittingRecord | null> {
	const row = await database().fitting.findUnique({
		where: { number },
		select: openFittingSelection,
	});
	return row && toFitting(row);
}

export async function getFittingById(
	id: string,
): Promise<FittingRecord | null> {
	const row = await database().fitting.findUnique({
		where: { id },
		select: openFittingSelection,
	});
	return row && toFitting(row);
}

/** Whether a fitting was begun by this key, be it there still or not. */
export const hasBegun = async (requestKey: string): Promise<boolean> =>
	(await database().appliedRequest.count({
		where: { key: requestKey, kind: "start-fitting" },
	})) > 0;

/** Fittings last changed first, found by any parts of the player's name; `next` continues the list. */
export async function listFittings(request: ListRequest = {}): Promise<{
	fittings: FittingSummary[];
	next: string | null;
}> {
	const limit = rowsWanted(request.limit);
	const after = request.after === undefined ? null : readCursor(request.after);
	const updatedAt = after && new Date(after.value);
	const rows = await database().fitting.findMany({
		where: {
			AND: [
				request.search ? { player: nameContains(request.search) } : {},
				after && updatedAt
					? {
							OR: [
								{ updatedAt: { lt: updatedAt } },
								{ updatedAt, id: { lt: after.id } },
							],
						}
					: {},
			],
		},
		orderBy: [{ updatedAt: "desc" }, { id: "desc" }],
		take: limit + 1,
		select: fittingSelection,
	});
	const page = rows.slice(0, limit);
	const last = page.at(-1);
	return {
		fittings: page.map(toSummary),
		next:
			last && rows.length > limit
				? cursorAt(last.updatedAt.toISOString(), last.id)
				: null,
	};
}

/** All fittings of one player, last begun first. */
export async function listFittingsOf(
	playerId: string,
): Promise<FittingSummary[]> {
	const rows = await database().fitting.findMany({
		where: { playerId },
		orderBy: [{ number: "desc" }],
		select: fittingSelection,
	});
	return rows.map(toSummary);
}
