import "server-only";
import { z } from "zod";
import type { Prisma } from "@/generated/prisma/client";
import type { TakenWish } from "@/lib/forms/taken-wishes";

/**
 * Answers as stored: field name to the text as typed, or a list of texts. Which names there are is
 * for lib/forms to say; stored answers outlive a renamed field.
 */
export const storedAnswersSchema = z.record(
	z.string(),
	z.union([z.string(), z.array(z.string())]),
);

export type StoredAnswers = z.infer<typeof storedAnswersSchema>;

/** Answers as given to a save: a field left out, or undefined, is stored as not there. */
export type GivenAnswers = Readonly<
	Record<string, string | readonly string[] | undefined>
>;

export interface FittingSummary {
	readonly id: string;
	readonly number: number;
	readonly player: { readonly id: string; readonly name: string };
	readonly isDemo: boolean;
	readonly revision: number;
	readonly createdAt: Date;
	readonly updatedAt: Date;
	/** When its first spec was saved. */
	readonly finishedAt: Date | null;
	readonly spec: {
		readonly number: number;
		readonly latestRevision: number;
	} | null;
}

export interface FittingRecord extends FittingSummary {
	readonly answers: StoredAnswers;
	/** Wishes that trials gave and that were not put back, latest first. */
	readonly takenWishes: readonly TakenWish[];
	/** The earlier fitting whose answers this one began with. */
	readonly basedOn: { readonly id: string; readonly number: number } | null;
}

export const fittingSelection = {
	id: true,
	number: true,
	isDemo: true,
	revision: true,
	createdAt: true,
	updatedAt: true,
	finishedAt: true,
	player: { select: { id: true, name: true } },
	spec: {
		select: {
			number: true,
			revisions: {
				select: { revision: true },
				orderBy: { revision: "desc" },
				take: 1,
			},
		},
	},
} as const satisfies Prisma.FittingSelect;

export const openFittingSelection = {
	...fittingSelection,
	answers: true,
	basedOn: { select: { id: true, number: true } },
	trialWishes: {
		select: { field: true, after: true, offer: true },
		where: { revertedAt: null },
		orderBy: [{ appliedAt: "desc" }, { id: "desc" }],
	},
} as const satisfies Prisma.FittingSelect;

type SummaryRow = Prisma.FittingGetPayload<{ select: typeof fittingSelection }>;
type OpenRow = Prisma.FittingGetPayload<{
	select: typeof openFittingSelection;
}>;

export const toSummary = ({ spec, ...row }: SummaryRow): FittingSummary => ({
	...row,
	spec: spec && {
		number: spec.number,
		latestRevision: spec.revisions[0]?.revision ?? 0,
	},
});

/** Of an offer as it was kept: what the advice needs of it. */
const offerSchema = z.object({
	sd: z.number().positive(),
	because: z.object({
		sessions: z.number().int(),
		shots: z.number().int(),
	}),
});

export const toFitting = ({
	answers,
	basedOn,
	trialWishes,
	...row
}: OpenRow): FittingRecord => ({
	...toSummary(row),
	answers: storedAnswersSchema.parse(answers),
	takenWishes: trialWishes.map(({ field, after, offer }) => {
		const { sd, because } = offerSchema.parse(offer);
		return { field, after, sd, ...because };
	}),
	basedOn,
});
