import { z } from "zod";
import { BOUNDS } from "./bounds";
import {
	CHOICES,
	fittingInputSchema,
	playerSchema,
	stanceSchema,
} from "./fitting-input";

const quantity = ({ min, max }: { min: number; max: number }) =>
	z.number().min(min).max(max);

/** A cue to be built, before any weight is added. */
export const cueRequestSchema = z.strictObject({
	lengthMm: quantity(BOUNDS.cueLengthMm),
	buttDiameterMm: quantity(BOUNDS.buttDiameterMm),
	tipDiameterMm: quantity(BOUNDS.tipDiameterMm),
	taperShape: z.enum(CHOICES.taperShape).default("even"),
	shaftWood: z.enum(CHOICES.shaftWood),
	buttWood: z.enum(CHOICES.buttWood),
	splice: z.enum(CHOICES.splice).default("hand-four-point"),
	layout: z.enum(CHOICES.layout).default("three-quarter"),
	ferruleMetal: z.enum(CHOICES.ferruleMetal).default("brass"),
});

/** Body of `POST /api/v1/cue`. */
export const cueBodySchema = z.strictObject({
	cue: cueRequestSchema,
	gameId: z.enum(CHOICES.game).default("snooker"),
	wantedMassG: quantity(BOUNDS.cueMassG).optional(),
});

/** Body of `POST /api/v1/fit`. */
export const fitBodySchema = z.strictObject({
	player: playerSchema.prefault({}),
	stance: stanceSchema.prefault({}),
});

/** Body of `POST /api/v1/advice`. */
export const adviceBodySchema = fittingInputSchema;
