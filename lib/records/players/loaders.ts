import "server-only";
import { database } from "@/lib/records/database";
import {
	cursorAt,
	type ListRequest,
	readCursor,
	rowsWanted,
} from "@/lib/records/page";
import { type PlayerRecord, toPlayer } from "@/lib/records/players/data";
import { nameContains } from "@/lib/records/search";

export async function getPlayer(id: string): Promise<PlayerRecord | null> {
	const row = await database().player.findUnique({ where: { id } });
	return row && toPlayer(row);
}

/** Players in the order of their names, found by any parts of them; `next` continues the list. */
export async function listPlayers(request: ListRequest = {}): Promise<{
	players: PlayerRecord[];
	next: string | null;
}> {
	const limit = rowsWanted(request.limit);
	const after = request.after === undefined ? null : readCursor(request.after);
	const rows = await database().player.findMany({
		where: {
			AND: [
				nameContains(request.search ?? ""),
				after
					? {
							OR: [
								{ searchName: { gt: after.value } },
								{ searchName: after.value, id: { gt: after.id } },
							],
						}
					: {},
			],
		},
		orderBy: [{ searchName: "asc" }, { id: "asc" }],
		take: limit + 1,
	});
	const page = rows.slice(0, limit);
	const last = page.at(-1);
	return {
		players: page.map(toPlayer),
		next:
			last && rows.length > limit ? cursorAt(last.searchName, last.id) : null,
	};
}

/** A player with the fitting last worked on. */
export interface SeenPlayer {
	readonly id: string;
	readonly name: string;
	readonly isDemo: boolean;
	readonly latest: {
		readonly id: string;
		readonly number: number;
		readonly updatedAt: Date;
	};
}

/** How many fittings are looked through for each player wanted: a player may have several. */
const FITTINGS_EACH = 8;

/** Players whose fittings were worked on last, the last one first; fewer where few had many. */
export async function lastSeenPlayers(limit: number): Promise<SeenPlayer[]> {
	const fittings = await database().fitting.findMany({
		where: { player: { erasedAt: null } },
		orderBy: [{ updatedAt: "desc" }, { id: "desc" }],
		take: limit * FITTINGS_EACH,
		select: {
			id: true,
			number: true,
			updatedAt: true,
			player: { select: { id: true, name: true, isDemo: true } },
		},
	});
	const seen = new Map<string, SeenPlayer>();
	for (const { player, ...latest } of fittings)
		if (!seen.has(player.id)) seen.set(player.id, { ...player, latest });
	return [...seen.values()].slice(0, limit);
}
