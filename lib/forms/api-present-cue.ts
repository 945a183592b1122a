import { z } from "zod";
import { WOODS, type WoodId } from "@/lib/reference/woods";
import { CHOICES } from "./choices";

const finite = z.number();
const wood = z.enum(Object.keys(WOODS) as [WoodId, ...WoodId[]]);

/** Readings of a cue in use; their own bounds are told by the model's refusals. */
const readingSchema = z.strictObject({
	lengthMm: finite,
	massG: finite,
	balanceFromButtMm: finite,
	tipDiameterMm: finite,
	diameters: z
		.array(z.strictObject({ fromButtMm: finite, diameterMm: finite }))
		.max(12),
	shaftWood: wood.optional(),
	buttWood: wood.optional(),
	splice: z.enum(CHOICES.splice).optional(),
	layout: z.enum(CHOICES.layout).optional(),
	gripFromButtMm: finite,
});

/** Body of `POST /api/v1/present-cue`: a cue as read, and what should become different. */
export const presentCueBodySchema = z.strictObject({
	reading: readingSchema,
	change: z
		.strictObject({
			lengthMm: finite.optional(),
			buttDiameterMm: finite.optional(),
			tipDiameterMm: finite.optional(),
			massG: finite.optional(),
		})
		.optional(),
});
