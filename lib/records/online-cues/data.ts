import "server-only";
import type { Prisma } from "@/generated/prisma/client";
import type { OnlineAnswers } from "@/lib/forms/online-cue";
import { onlineAnswersSchema } from "@/lib/forms/online-cue-schema";

/** A cue as a customer put it together and kept it. */
export interface OnlineCueRecord {
	readonly id: string;
	readonly answers: OnlineAnswers;
	/** Raised by one with each edit; an edit names the one it was made on. */
	readonly revision: number;
	readonly isDemo: boolean;
	readonly updatedAt: Date;
	/** Jobs it was sent to the workshop as, latest first. */
	readonly jobs: readonly { readonly number: number; readonly sentAt: Date }[];
}

export const onlineCueSelection = {
	id: true,
	choices: true,
	revision: true,
	isDemo: true,
	updatedAt: true,
	jobs: {
		select: { number: true, createdAt: true },
		orderBy: { number: "desc" },
	},
} as const satisfies Prisma.OnlineCueSelect;

type Row = Prisma.OnlineCueGetPayload<{ select: typeof onlineCueSelection }>;

export const toOnlineCue = ({
	choices,
	jobs,
	...row
}: Row): OnlineCueRecord => ({
	...row,
	answers: onlineAnswersSchema.parse(choices),
	jobs: jobs.map(({ number, createdAt }) => ({ number, sentAt: createdAt })),
});

/** A link to a cue opens it so long. This project's judgement: long enough to save up for one. */
const LINK_DAYS = 180;

export const linkExpiry = (now: Date): Date =>
	new Date(now.getTime() + LINK_DAYS * 86_400_000);
