import { z } from "zod";
import { givenAnswerSchema } from "./answer-changes";
import { answerSchema } from "./answers";
import { CHOICES } from "./choices";
import { FIELD_NAMES, type FieldName } from "./fields";
import type { TakenWish } from "./taken-wishes";

/**
 * What a device and the server say to each other about one fitting. A request may lie on a device for
 * days: the server takes requests of every version it ever gave out, and a field it no longer knows is
 * refused by itself.
 */
const id = z.uuid();
const moment = z.iso.datetime();
const MAX_CHANGES = 400;

export const fieldSchema = z
	.string()
	.max(64)
	.regex(/^[A-Za-z0-9]+$/);

export const deviceSchema = z.strictObject({
	id,
	/** What the coach calls the device, and who uses it; empty until said. */
	name: z.string().trim().max(60),
	by: z.string().trim().max(60),
});

export const startSchema = z.strictObject({
	requestKey: id,
	player: z.discriminatedUnion("kind", [
		z.strictObject({ kind: z.literal("known"), id: z.string().min(1).max(64) }),
		z.strictObject({
			kind: z.literal("new"),
			id,
			name: z.string().trim().min(1).max(120),
		}),
	]),
	/** An earlier fitting of the player to begin with. */
	basedOnFittingId: z.string().min(1).max(64).optional(),
});

export const seenSchema = z.strictObject({
	lengthMm: z.number(),
	massG: z.number(),
	buttDiameterMm: z.number(),
	tipDiameterMm: z.number(),
	buttWood: z.enum(CHOICES.buttWood),
});

export const saveSchema = z.strictObject({
	requestKey: id,
	reason: z.string().trim().max(400),
	/** The answers as the device showed them, and the figures they gave: refused where either is another. */
	answers: z.record(fieldSchema, answerSchema),
	seen: seenSchema,
});

export const syncRequestSchema = z.strictObject({
	version: z.literal(1),
	device: deviceSchema,
	sentAt: moment,
	fittingId: z.string().min(1).max(64),
	/** Where the fitting began on the device. */
	start: startSchema.optional(),
	changes: z
		.array(
			z.strictObject({
				key: id,
				field: fieldSchema,
				before: givenAnswerSchema,
				after: givenAnswerSchema,
				typedAt: moment,
				settles: z.array(z.string().max(64)).max(64).optional(),
			}),
		)
		.max(MAX_CHANGES),
	/** Carried out once all changes are stored. */
	save: saveSchema.optional(),
});

export type Device = z.infer<typeof deviceSchema>;
export type StartRequest = z.infer<typeof startSchema>;
export type SaveRequest = z.infer<typeof saveSchema>;
export type SyncRequest = z.infer<typeof syncRequestSchema>;

/** Answers as stored, without fields this version does not know. */
export const knownAnswersSchema = z
	.record(z.string(), answerSchema)
	.transform(
		(answers) =>
			Object.fromEntries(
				Object.entries(answers).filter(([name]) => isFieldName(name)),
			) as Partial<Record<FieldName, string | string[]>>,
	);

export const isFieldName = (name: string): name is FieldName =>
	(FIELD_NAMES as readonly string[]).includes(name);

/** Where a value came from: which device, who used it, when by the server's clock. */
const originSchema = z.object({
	deviceId: z.string(),
	deviceName: z.string(),
	by: z.string(),
	at: z.string().nullable(),
});
export type Origin = z.infer<typeof originSchema>;

const takenWishSchema = z.object({
	field: z.string(),
	after: z.string(),
	sd: z.number().positive(),
	sessions: z.number().int(),
	shots: z.number().int(),
}) satisfies z.ZodType<TakenWish>;

/** A fitting as the server has it. */
export const storedFittingSchema = z.object({
	id: z.string(),
	number: z.number().int(),
	player: z.object({ id: z.string(), name: z.string() }),
	isDemo: z.boolean(),
	answers: knownAnswersSchema,
	revision: z.number().int(),
	takenWishes: z.array(takenWishSchema),
	specNumber: z.number().int().nullable(),
});
export type StoredFitting = z.infer<typeof storedFittingSchema>;

export const conflictSchema = z.object({
	id: z.string(),
	field: z.custom<FieldName>(
		(name) => typeof name === "string" && isFieldName(name),
	),
	/** The value that took the other's place. */
	came: z.object({ answer: givenAnswerSchema, from: originSchema }),
	/** The value that stood there; its origin null where no device set it. */
	stood: z.object({
		answer: givenAnswerSchema,
		from: originSchema.nullable(),
	}),
});
export type AnswerConflict = z.infer<typeof conflictSchema>;

export const syncAnswerSchema = z.discriminatedUnion("status", [
	z.object({
		status: z.literal("kept"),
		fitting: storedFittingSchema,
		conflicts: z.array(conflictSchema),
		/** Keys of changes that can never be stored, such as of a question that is no longer asked. */
		refused: z.array(z.string()),
		saved: z
			.discriminatedUnion("ok", [
				z.object({
					ok: z.literal(true),
					number: z.number().int(),
					revision: z.number().int(),
				}),
				z.object({ ok: z.literal(false), messages: z.array(z.string()) }),
			])
			.nullable(),
	}),
	/** No fitting by this id: it was taken out of the records, or never reached them. */
	z.object({ status: z.literal("gone") }),
]);
export type SyncAnswer = z.infer<typeof syncAnswerSchema>;
export type KeptAnswer = Extract<SyncAnswer, { status: "kept" }>;
