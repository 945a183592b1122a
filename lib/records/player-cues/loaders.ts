import "server-only";
import { type DatabaseTransaction, database } from "@/lib/records/database";
import {
	type PlayerCueRecord,
	playerCueSelection,
	toPlayerCue,
} from "@/lib/records/player-cues/data";

/** The newest cue of a player that was not put aside; null where none is recorded. */
export async function presentCueOf(
	playerId: string,
	from: Pick<DatabaseTransaction, "playerCue"> = database(),
): Promise<PlayerCueRecord | null> {
	const row = await from.playerCue.findFirst({
		where: { playerId, asideAt: null },
		orderBy: [{ createdAt: "desc" }, { id: "desc" }],
		select: playerCueSelection,
	});
	return row && toPlayerCue(row);
}
