import { z } from "zod";
import type { FitQuestion } from "@/lib/advice/answer-fit";
import type { CueRequest } from "@/lib/cue/design";
import { WOODS, type WoodId } from "@/lib/reference/woods";
import { BOUNDS } from "./bounds";
import { CHOICES } from "./choices";
import {
	fittingInputSchema,
	playerSchema,
	stanceSchema,
} from "./fitting-input";
import { rackCueSchema, sessionSchema, targetSchema } from "./trial";

const WOOD_NAMES = Object.keys(WOODS) as [WoodId, ...WoodId[]];

const quantity = ({ min, max }: { min: number; max: number }) =>
	z.number().min(min).max(max);

/** Any finite length or angle: the model's own limits are told by its refusal, with field and bound. */
const finite = z.number();
const wood = z.enum(WOOD_NAMES);
const veneers = z
	.array(z.strictObject({ wood, thicknessMm: finite }))
	.max(6)
	.optional();
const flat = {
	pointFromButtMm: finite.optional(),
	coreHalfWidthMm: finite.optional(),
	planeAngleDeg: finite.optional(),
	veneers,
};

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
	/** A workshop's own billet densities. */
	densities: z
		.partialRecord(wood, z.strictObject({ kgM3: finite, sd: finite }))
		.optional(),
	/** Diameters at free stations between tip and butt, instead of the named shape. */
	freeTaper: z
		.array(z.strictObject({ stationMm: finite, diameterMm: finite }))
		.max(40)
		.optional(),
	splicing: z
		.strictObject({
			points: z.strictObject(flat).optional(),
			pointsBetween: z.strictObject({ ...flat, wood }).optional(),
			frontWedge: z
				.strictObject({ ...flat, wood, faceAngleDeg: finite.optional() })
				.optional(),
			allRound: z
				.strictObject({
					...flat,
					wood,
					count: z.number().int(),
					faceAngleDeg: finite.optional(),
				})
				.optional(),
		})
		.optional(),
	fittings: z
		.strictObject({
			tipHeightMm: finite.optional(),
			domeRadiusMm: finite.optional(),
			ferruleLengthMm: finite.optional(),
			ferruleWallMm: finite.optional(),
			jointFromButtMm: finite.optional(),
			jointMetal: z.enum(["brass", "stainless-steel", "aluminium"]).optional(),
			endPieceMm: finite.optional(),
			buttEndRadiusMm: finite.optional(),
		})
		.optional(),
}) satisfies z.ZodType<CueRequest, unknown>;

/** Body of `POST /api/v1/fit`. */
export const fitBodySchema = z.strictObject({
	player: playerSchema.prefault({}),
	stance: stanceSchema.prefault({}),
	/** The cue whose closure is asked for; what is left out follows from the rest. */
	cue: z
		.strictObject({
			lengthMm: quantity(BOUNDS.cueLengthMm).optional(),
			tipDiameterMm: quantity(BOUNDS.tipDiameterMm).optional(),
			buttDiameterMm: quantity(BOUNDS.buttDiameterMm).optional(),
		})
		.optional(),
	/** Asks for a junior's outlook; the date of birth is used for nothing else. */
	growth: z
		.strictObject({ onDate: z.iso.date(), bornOn: z.iso.date().optional() })
		.optional(),
}) satisfies z.ZodType<FitQuestion, unknown>;

/** Body of `POST /api/v1/advice`. */
export const adviceBodySchema = fittingInputSchema;

/** What one question about trials may hold; a body is limited besides. */
const MOST_RACK_CUES = 40;
const MOST_SESSIONS = 40;

/** Body of `POST /api/v1/trial`. */
export const trialBodySchema = z.strictObject({
	rack: z.array(rackCueSchema).max(MOST_RACK_CUES),
	sessions: z.array(sessionSchema).max(MOST_SESSIONS).default([]),
	target: targetSchema.prefault({}),
});
