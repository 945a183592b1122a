import "server-only";
import { database, inTransaction } from "@/lib/records/database";
import {
	type PlayerNoteFields,
	playerNoteSchema,
} from "@/lib/records/diary/data";
import { once } from "@/lib/records/once";

/**
 * Writes a line into a player's diary once for each request key, and gives its id. Throws where the
 * player is not there or was taken out of the records, and a ZodError for fields no form lets through.
 */
export async function writePlayerNote({
	playerId,
	requestKey,
	...given
}: PlayerNoteFields & {
	playerId: string;
	requestKey: string;
}): Promise<string> {
	const fields = playerNoteSchema.parse(given);
	return inTransaction((transaction) =>
		once(
			transaction,
			{ key: requestKey, kind: "write-player-note" },
			async () => {
				const player = await transaction.player.findUnique({
					where: { id: playerId, erasedAt: null },
					select: { id: true },
				});
				if (player === null) throw new Error(`there is no player ${playerId}`);
				const { id } = await transaction.playerNote.create({
					data: { playerId, requestKey, ...fields },
				});
				return id;
			},
		),
	);
}

/** Takes a note back; false where the player has no such note. One taken back before keeps its moment. */
export async function withdrawPlayerNote(p: {
	playerId: string;
	id: string;
	at?: Date;
}): Promise<boolean> {
	await database().playerNote.updateMany({
		where: { id: p.id, playerId: p.playerId, withdrawnAt: null },
		data: { withdrawnAt: p.at ?? new Date() },
	});
	return isThere(p);
}

/** Puts a note back that was taken back; false where the player has no such note. */
export async function restorePlayerNote(p: {
	playerId: string;
	id: string;
}): Promise<boolean> {
	await database().playerNote.updateMany({
		where: { id: p.id, playerId: p.playerId, player: { erasedAt: null } },
		data: { withdrawnAt: null },
	});
	return isThere(p);
}

const isThere = async (p: { playerId: string; id: string }): Promise<boolean> =>
	(await database().playerNote.count({
		where: { id: p.id, playerId: p.playerId },
	})) > 0;
