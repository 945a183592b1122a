import "server-only";
import { inTransaction } from "@/lib/records/database";
import { once } from "@/lib/records/once";
import {
	type PlayerFields,
	type PlayerRecord,
	playerFieldsSchema,
	toPlayer,
} from "@/lib/records/players/data";
import { searchable } from "@/lib/records/search";

export type NewPlayer = Pick<PlayerFields, "name"> & Partial<PlayerFields>;

/** The edit was saved, or the player as it stands now: edited by someone else, or gone (null). */
export type PlayerSaved =
	| { readonly ok: true; readonly player: PlayerRecord }
	| { readonly ok: false; readonly conflict: PlayerRecord | null };

/** Creates a player once for each request key. Throws a ZodError for fields no form lets through. */
export async function createPlayer({
	id: givenId,
	requestKey,
	...given
}: NewPlayer & {
	/** A UUID made where the player was first named; one is made here where it is left out. */
	id?: string;
	requestKey: string;
}): Promise<PlayerRecord> {
	const fields = playerFieldsSchema.parse({
		birthDate: null,
		sex: null,
		hand: null,
		notes: "",
		remeasureOn: null,
		...given,
	});
	return inTransaction(async (transaction) => {
		const id = await once(
			transaction,
			{ key: requestKey, kind: "create-player" },
			async () => {
				const created = await transaction.player.create({
					data: { id: givenId, ...fields, searchName: searchable(fields.name) },
				});
				return created.id;
			},
		);
		return toPlayer(
			await transaction.player.findUniqueOrThrow({ where: { id } }),
		);
	});
}

/** Replaces the fields given, on the revision they were read at. */
export async function updatePlayer({
	id,
	revision,
	...given
}: Partial<PlayerFields> & {
	id: string;
	revision: number;
}): Promise<PlayerSaved> {
	const changed = playerFieldsSchema.partial().parse(given);
	return inTransaction(async (transaction) => {
		const { count } = await transaction.player.updateMany({
			where: { id, revision },
			data: {
				...changed,
				...(changed.name === undefined
					? {}
					: { searchName: searchable(changed.name) }),
				revision: { increment: 1 },
			},
		});
		const row = await transaction.player.findUnique({ where: { id } });
		if (count === 0) return { ok: false, conflict: row && toPlayer(row) };
		if (!row) throw new Error(`player ${id} vanished inside a transaction`);
		return { ok: true, player: toPlayer(row) };
	});
}
