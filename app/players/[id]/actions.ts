"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { playerNoteSchema } from "@/lib/records/diary/data";
import {
	restorePlayerNote,
	withdrawPlayerNote,
	writePlayerNote,
} from "@/lib/records/diary/mutations";
import { updatePlayer } from "@/lib/records/players/mutations";

/** An action is a public endpoint: whatever comes in is parsed, whoever the type says sent it. */
const idSchema = z.string().min(1).max(64);
const writeSchema = playerNoteSchema.extend({
	playerId: idSchema,
	requestKey: z.uuid(),
});
const noteSchema = z.strictObject({ playerId: idSchema, id: idSchema });
const remeasureSchema = z.strictObject({
	playerId: idSchema,
	revision: z.number().int().min(1),
	remeasureOn: z.iso.date().nullable(),
});

export async function writeNote(
	request: z.input<typeof writeSchema>,
): Promise<void> {
	const note = writeSchema.parse(request);
	await writePlayerNote(note);
	revalidatePath(`/players/${note.playerId}`);
}

/** Leaves the page as it stands, so that the note can be put back from where it was. */
export async function takeBackNote(
	request: z.input<typeof noteSchema>,
): Promise<{ ok: boolean }> {
	return { ok: await withdrawPlayerNote(noteSchema.parse(request)) };
}

export async function putBackNote(
	request: z.input<typeof noteSchema>,
): Promise<{ ok: boolean }> {
	return { ok: await restorePlayerNote(noteSchema.parse(request)) };
}

/** Sets the day to measure again, or takes it away; not where the player was edited meanwhile. */
export async function setRemeasure(
	request: z.input<typeof remeasureSchema>,
): Promise<{ ok: boolean }> {
	const { playerId, revision, remeasureOn } = remeasureSchema.parse(request);
	const { ok } = await updatePlayer({ id: playerId, revision, remeasureOn });
	if (ok) revalidatePath(`/players/${playerId}`);
	return { ok };
}
