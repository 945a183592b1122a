import "server-only";
import type { KnownPlayer } from "@/app/_device/records";
import { lastSeenPlayers } from "@/lib/records/players/loaders";

/** As many as fit in reach of a thumb; everybody else is found by name. */
const SHOWN = 8;

/** The players seen last, as a device keeps them. */
export async function knownPlayers(): Promise<KnownPlayer[]> {
	const players = await lastSeenPlayers(SHOWN);
	return players.map(({ latest, ...player }) => ({
		...player,
		latest: {
			id: latest.id,
			number: latest.number,
			on: latest.updatedAt.toISOString().slice(0, 10),
		},
	}));
}
