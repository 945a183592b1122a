import { z } from "zod";
import { JOB_STATES, WAITING_FOR } from "@/lib/workshop/job-state";
import { MAY_VARY } from "@/lib/workshop/may-vary";
import { BOUNDS, type QuantityBound } from "./bounds";
import { CHOICES } from "./choices";

/** What the pages of a job send. Whatever comes in is parsed, whoever the type says sent it. */

const number = z.int().min(1).max(999_999_999);
const by = z.string().trim().min(1).max(120);
const note = z.string().trim().max(2000);
const isoDate = z.iso.date();
const quantity = ({ min, max }: QuantityBound) => z.number().min(min).max(max);

/** An edit names the job, the revision it was read at, who does it, and a key so that it is done once. */
const edit = { number, revision: number, by, requestKey: z.uuid() };

const extras = z.strictObject({
	case: z.string().trim().max(120).nullable(),
	tip: z.string().trim().max(120).nullable(),
	gripNotes: z.string().trim().max(400),
});

export const sendSchema = z.strictObject({
	specNumber: number,
	specRevision: number,
	customerName: z.string().trim().min(1).max(200),
	customerContact: z.string().trim().max(400),
	dueOn: isoDate.nullable(),
	notes: note,
	extras,
	by,
	requestKey: z.uuid(),
});

export const moveSchema = z.strictObject({
	...edit,
	to: z.enum(JOB_STATES),
	note,
	waitingFor: z.enum(WAITING_FOR).optional(),
	expectedOn: z.string().max(20).optional(),
});

export const dueSchema = z.strictObject({ ...edit, dueOn: isoDate.nullable() });

export const noteSchema = z.strictObject({ ...edit, note: note.min(1) });

export const customerSchema = z.strictObject({
	...edit,
	customerName: z.string().trim().min(1).max(200),
	customerContact: z.string().trim().max(400),
	notes: note,
});

export const quoteSchema = z.strictObject({
	...edit,
	reason: note,
	quote: z.strictObject({
		priceMinor: z.number(),
		validUntil: z.string().max(20),
		mayVary: z
			.array(
				z.strictObject({
					code: z.enum(MAY_VARY),
					within: z.number().nullable(),
				}),
			)
			.max(MAY_VARY.length),
		note,
	}),
});

/** The figures and parts of a cue that the workshop can change on a job. */
export const CHANGE_BOUNDS = {
	lengthMm: BOUNDS.cueLengthMm,
	buttDiameterMm: BOUNDS.buttDiameterMm,
	tipDiameterMm: BOUNDS.tipDiameterMm,
	massG: BOUNDS.cueMassG,
	balanceFromButtMm: BOUNDS.balanceFromButtMm,
} as const;

export const cueChangeSchema = z.strictObject({
	lengthMm: quantity(CHANGE_BOUNDS.lengthMm),
	buttDiameterMm: quantity(CHANGE_BOUNDS.buttDiameterMm),
	tipDiameterMm: quantity(CHANGE_BOUNDS.tipDiameterMm),
	massG: quantity(CHANGE_BOUNDS.massG),
	/** Null: as far back as the bench usually puts the weight. */
	balanceFromButtMm: quantity(CHANGE_BOUNDS.balanceFromButtMm).nullable(),
	shaftWood: z.enum(CHOICES.shaftWood),
	buttWood: z.enum(CHOICES.buttWood),
	splice: z.enum(CHOICES.splice),
	layout: z.enum(CHOICES.layout),
	taperShape: z.enum(CHOICES.taperShape),
	ferruleMetal: z.enum(CHOICES.ferruleMetal),
});
export type CueChange = z.infer<typeof cueChangeSchema>;

const change = z.discriminatedUnion("from", [
	z.strictObject({ from: z.literal("edit"), cue: cueChangeSchema, extras }),
	/** A later revision of the spec the job came from. */
	z.strictObject({ from: z.literal("spec"), specRevision: number, extras }),
	/** Back to what an earlier revision of the job says. */
	z.strictObject({ from: z.literal("earlier"), jobRevision: number }),
]);
export type JobChange = z.infer<typeof change>;

export const previewSchema = z.strictObject({ number, change });

export const changeSchema = z.strictObject({
	...edit,
	change,
	reason: note,
	/** Null where the job was not quoted yet, or goes back to an earlier revision. */
	priceMinor: z.number().nullable(),
});

export const linkSchema = z.strictObject({
	...edit,
	/** ISO date: the last day it opens; null: until it is taken back. */
	lastDay: isoDate.nullable(),
});

export const revokeSchema = z.strictObject(edit);

/** By word of mouth, written down at the bench. */
export const benchAgreementSchema = z.strictObject({
	number,
	jobRevision: number,
	contentSha256: z.string().regex(/^[0-9a-f]{64}$/),
	agreedName: z.string().trim().min(1).max(200),
	by,
	requestKey: z.uuid(),
});

/** By the customer, who has the address and nothing else. */
export const customerAgreementSchema = z.strictObject({
	token: z.string().max(100),
	jobRevision: number,
	contentSha256: z.string().regex(/^[0-9a-f]{64}$/),
	agreedName: z.string().trim().min(1).max(200),
	requestKey: z.uuid(),
});
