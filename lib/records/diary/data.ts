import "server-only";
import { z } from "zod";

export const MAX_PLAYER_NOTE_LENGTH = 4000;

export const playerNoteSchema = z.strictObject({
	text: z.string().trim().min(1).max(MAX_PLAYER_NOTE_LENGTH),
	/** ISO date it is about. */
	writtenOn: z.iso.date(),
});
export type PlayerNoteFields = z.infer<typeof playerNoteSchema>;

/** Figures of a cue that the diary tells; the rest of its content is for others to read. */
export const cueFiguresSchema = z.looseObject({
	lengthMm: z.number().nullable(),
	massG: z.number().nullable(),
});
