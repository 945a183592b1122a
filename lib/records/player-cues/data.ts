import "server-only";
import { z } from "zod";
import type { Prisma } from "@/generated/prisma/client";
import type { CueDesign } from "@/lib/cue/design";
import { WORKSHOP_CHOICES } from "@/lib/forms/workshop-offer";
import {
	PLAYER_CUE_FIGURES,
	type PlayerCueContent,
} from "@/lib/workshop/player-cue";

const { wood, splice, layout } = WORKSHOP_CHOICES;
const figure = z.number().positive().nullable();

/** A cue as stored; its design is ours, written once, and only told to be one. */
export const playerCueContentSchema = z.strictObject({
	schemaVersion: z.literal(1),
	origin: z.enum(["as-built", "noted"]),
	lengthMm: figure,
	massG: figure,
	buttDiameterMm: figure,
	tipDiameterMm: figure,
	balanceFromButtMm: figure,
	diameterAt300Mm: figure,
	diameterAt700Mm: figure,
	measured: z.array(z.enum(PLAYER_CUE_FIGURES)),
	shaftWood: wood.nullable(),
	buttWood: wood.nullable(),
	splice: splice.nullable(),
	layout: layout.nullable(),
	design: z
		.custom<CueDesign>(
			(value) => typeof value === "object" && value !== null,
			"no design",
		)
		.nullable(),
}) satisfies z.ZodType<PlayerCueContent>;

export interface PlayerCueRecord {
	readonly id: string;
	readonly playerId: string;
	readonly name: string;
	readonly content: PlayerCueContent;
	/** The job it was built in; null where it was not built here. */
	readonly jobNumber: number | null;
	/** ISO date it came into the player's hands. */
	readonly since: string;
	readonly isDemo: boolean;
	readonly createdAt: Date;
	readonly asideAt: Date | null;
}

export const playerCueSelection = {
	id: true,
	playerId: true,
	name: true,
	content: true,
	since: true,
	isDemo: true,
	createdAt: true,
	asideAt: true,
	job: { select: { number: true } },
} as const satisfies Prisma.PlayerCueSelect;

type Row = Prisma.PlayerCueGetPayload<{ select: typeof playerCueSelection }>;

export const toPlayerCue = ({
	content,
	job,
	...row
}: Row): PlayerCueRecord => ({
	...row,
	content: playerCueContentSchema.parse(content),
	jobNumber: job?.number ?? null,
});
