import "server-only";
import type { Prisma } from "@/generated/prisma/client";

/** A saved revision without its content. */
export interface SpecRevisionSummary {
	readonly number: number;
	readonly revision: number;
	readonly reason: string;
	readonly contentSha256: string;
	readonly createdAt: Date;
}

export interface SpecRevisionRecord extends SpecRevisionSummary {
	readonly id: string;
	/** As saved. Its shape is the caller's to know, by its own schema version. */
	readonly content: unknown;
	readonly latestRevision: number;
	readonly fitting: {
		readonly id: string;
		readonly number: number;
		readonly isDemo: boolean;
		readonly player: { readonly id: string; readonly name: string };
	};
}

export const revisionSelection = {
	revision: true,
	reason: true,
	contentSha256: true,
	createdAt: true,
} as const satisfies Prisma.SpecRevisionSelect;
