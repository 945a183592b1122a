import "server-only";
import { z } from "zod";
import type { Prisma } from "@/generated/prisma/client";
import { BENCH_STAGES, type BenchStage } from "@/lib/build/as-built";
import { WOOD_IDS } from "@/lib/reference/woods";
import {
	CHECK_DECISIONS,
	type CheckContent,
	type CheckDecision,
	type DecidedCheck,
} from "@/lib/workshop/check";

const reading = z.number();
const predicted = z.strictObject({
	expected: z.number(),
	sd: z.number(),
	measured: z.number(),
});

/** What a check holds; which numbers make sense is for lib/workshop/check-rules.ts to say. */
export const checkContentSchema = z.strictObject({
	schemaVersion: z.literal(1),
	figures: z.strictObject({
		lengthMm: reading.optional(),
		massG: reading.optional(),
		balanceFromButtMm: reading.optional(),
		buttDiameterMm: reading.optional(),
		tipDiameterMm: reading.optional(),
		metalMassG: reading.optional(),
		stations: z
			.array(z.strictObject({ stationMm: reading, diameterMm: reading }))
			.max(200)
			.optional(),
	}),
	billets: z
		.array(
			z.strictObject({
				wood: z.enum(WOOD_IDS),
				massG: reading,
				lengthMm: reading,
				widthMm: reading,
				thicknessMm: reading,
				moisturePct: reading.nullable(),
			}),
		)
		.max(WOOD_IDS.length)
		.refine(
			(billets) =>
				new Set(billets.map(({ wood }) => wood)).size === billets.length,
			"two billets of one wood",
		),
	typed: z.record(z.string().max(80), z.string().max(80)),
	note: z.string().trim().max(2000),
	predicted: z.strictObject({ mass: predicted, balance: predicted }).nullable(),
}) satisfies z.ZodType<CheckContent>;

export const stageSchema = z.enum(BENCH_STAGES);
export const decisionSchema = z.enum(CHECK_DECISIONS);

/** What was last decided of a check. */
export interface DecisionRecord {
	readonly decision: CheckDecision;
	readonly by: string;
	readonly note: string;
	readonly at: Date;
}

export interface CheckRecord extends DecidedCheck {
	readonly by: string;
	readonly createdAt: Date;
	readonly decided: DecisionRecord | null;
}

export const checkSelection = {
	id: true,
	stage: true,
	readings: true,
	by: true,
	createdAt: true,
} as const satisfies Prisma.JobCheckSelect;

type Row = Prisma.JobCheckGetPayload<{ select: typeof checkSelection }>;

const decidedSchema = z.object({
	checkId: z.string(),
	decision: decisionSchema,
});

/** A check with the latest of its decisions; events come latest first. */
export function toCheck(
	{ stage, readings, ...row }: Row,
	events: readonly {
		readonly kind: string;
		readonly facts: unknown;
		readonly by: string;
		readonly note: string;
		readonly createdAt: Date;
	}[],
): CheckRecord {
	const event = events.find(
		({ kind, facts }) =>
			kind === "decided" && decidedSchema.parse(facts).checkId === row.id,
	);
	const decision =
		event === undefined ? null : decidedSchema.parse(event.facts).decision;
	return {
		...row,
		stage: stageSchema.parse(stage) satisfies BenchStage,
		content: checkContentSchema.parse(readings),
		decision,
		decided:
			event === undefined || decision === null
				? null
				: { decision, by: event.by, note: event.note, at: event.createdAt },
	};
}
