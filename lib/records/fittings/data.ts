import "server-only";
import { z } from "zod";
import type { Prisma } from "@/generated/prisma/client";

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

export const toFitting = ({
	answers,
	basedOn,
	...row
}: OpenRow): FittingRecord => ({
	...toSummary(row),
	answers: storedAnswersSchema.parse(answers),
	basedOn,
});
