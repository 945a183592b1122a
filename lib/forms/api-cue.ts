import { z } from "zod";
import { GRAIN_LIMITS } from "@/lib/cue/grain";
import { cueRequestSchema } from "./api-requests";
import { BOUNDS } from "./bounds";
import { CHOICES } from "./choices";

const within = ([min, max]: readonly [number, number]) =>
	z.number().min(min).max(max);
const quantity = ({ min, max }: { min: number; max: number }) =>
	z.number().min(min).max(max);

const seasonSchema = z.strictObject({
	name: z.string().max(40),
	air: z.strictObject({
		temperatureC: within([-5, 60]),
		relativeHumidityPct: within([5, 95]),
	}),
});

/** Body of `POST /api/v1/cue`: one cue, and what else is wanted to be known of it. */
export const cueBodySchema = z.strictObject({
	cue: cueRequestSchema,
	gameId: z.enum(CHOICES.game).default("snooker"),
	wantedMassG: quantity(BOUNDS.cueMassG).optional(),
	wantedBalanceFromButtMm: quantity(BOUNDS.balanceFromButtMm).optional(),
	gripFromButtMm: within([10, 600]).default(105),
	/** The real cue on the scale and on the finger, with what is in it as described: gives its densities. */
	measured: z
		.strictObject({
			massG: quantity(BOUNDS.cueMassG),
			balanceFromButtMm: quantity(BOUNDS.balanceFromButtMm),
		})
		.optional(),
	seasons: z.array(seasonSchema).min(1).max(12).optional(),
	grain: z
		.strictObject({
			ringSpacingMm: within(GRAIN_LIMITS.ringSpacingMm),
			tiltDeg: within(GRAIN_LIMITS.tiltDeg).default(0),
			phaseShare: within([0, 1]).optional(),
		})
		.optional(),
});

/** Body of `POST /api/v1/shot`: a cue's weight and end on a game's ball, or a whole cue. */
export const shotBodySchema = z.strictObject({
	cue: cueRequestSchema,
	gameId: z.enum(CHOICES.game).default("snooker"),
	cueMassG: quantity(BOUNDS.cueMassG).optional(),
	bodyMassKg: within([15, 250]).optional(),
	sex: z.enum(CHOICES.sex).optional(),
	domeRadiusMm: within([4, 25]).optional(),
	restitutionRatio: within([0.3, 1]).optional(),
	cueSpeedMPerS: within([0.1, 15]).optional(),
});
