import { z } from "zod";
import type { WorkshopOffer } from "@/lib/advice/workshop-offer";
import { givenAnswerSchema } from "@/lib/forms/answer-changes";
import {
	conflictSchema,
	isFieldName,
	saveSchema,
	startSchema,
	storedFittingSchema,
} from "@/lib/forms/device-sync";
import type { FieldName } from "@/lib/forms/fields";
import { workshopOfferSchema } from "@/lib/forms/workshop-offer";

/** What lies on the device. Whatever is read there is parsed: it may be of another version, or damaged. */

export const keptFittingSchema = storedFittingSchema.extend({
	/** Null until the server has given one. */
	number: z.number().int().nullable(),
	conflicts: z.array(conflictSchema),
	/** How it began here, until the server knows of it. */
	start: startSchema.nullable(),
	/** When the server last answered for it, by this device's clock; null before the first time. */
	asOf: z.iso.datetime().nullable(),
	openedAt: z.iso.datetime(),
});
export type KeptFitting = z.infer<typeof keptFittingSchema>;

export const keptChangeSchema = z.object({
	fittingId: z.string(),
	key: z.string(),
	field: z.custom<FieldName>(
		(name) => typeof name === "string" && isFieldName(name),
	),
	before: givenAnswerSchema,
	after: givenAnswerSchema,
	typedAt: z.iso.datetime(),
	settles: z.array(z.string()).optional(),
});
export type KeptChange = z.infer<typeof keptChangeSchema>;

/** A spec asked for; carried out once the server has the answers it rests on. */
export const queuedSaveSchema = saveSchema.extend({
	fittingId: z.string(),
	askedAt: z.iso.datetime(),
	/** Why the server did not carry it out; null while it waits. */
	refusal: z.array(z.string()).nullable(),
});
export type QueuedSave = z.infer<typeof queuedSaveSchema>;

/** Players seen last, to start with where the server does not answer. */
export const knownPlayerSchema = z.object({
	id: z.string(),
	name: z.string(),
	isDemo: z.boolean(),
	latest: z
		.object({
			id: z.string(),
			number: z.number().int(),
			/** ISO date of its last change. */
			on: z.string(),
		})
		.nullable(),
});
export type KnownPlayer = z.infer<typeof knownPlayerSchema>;

export const knownPlayersSchema = z.object({
	players: z.array(knownPlayerSchema),
	asOf: z.iso.datetime(),
});
export type KnownPlayers = z.infer<typeof knownPlayersSchema>;

/** What the workshop makes and charges, as the server last told, by its clock. */
export const keptWorkshopSchema = z.object({
	offer: workshopOfferSchema,
	asOf: z.iso.datetime(),
});
export interface KeptWorkshop {
	readonly offer: WorkshopOffer;
	readonly asOf: string;
}

/** Something that lay on the device and could not be used; kept as it was until somebody looks. */
export interface Damaged {
	readonly id: number;
	readonly store: string;
	readonly text: string;
	readonly foundAt: string;
}
