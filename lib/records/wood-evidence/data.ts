import "server-only";
import type { Prisma } from "@/generated/prisma/client";
import { WOODS, type WoodId } from "@/lib/reference/woods";

/** What one check said of one wood, and whether it counts. */
export interface EvidenceRecord {
	readonly id: string;
	readonly wood: WoodId;
	readonly kgM3: number;
	readonly sd: number;
	readonly by: string;
	readonly isDemo: boolean;
	readonly createdAt: Date;
	readonly withdrawnAt: Date | null;
	readonly withdrawnBy: string | null;
	readonly jobNumber: number | null;
	readonly checkId: string | null;
}

export const evidenceSelection = {
	id: true,
	wood: true,
	densityKgM3: true,
	sdKgM3: true,
	by: true,
	isDemo: true,
	createdAt: true,
	withdrawnAt: true,
	withdrawnBy: true,
	checkId: true,
	job: { select: { number: true } },
} as const satisfies Prisma.WoodEvidenceSelect;

type Row = Prisma.WoodEvidenceGetPayload<{ select: typeof evidenceSelection }>;

export function woodOf(text: string): WoodId {
	if (!Object.hasOwn(WOODS, text)) throw new Error(`no wood is ${text}`);
	return text as WoodId;
}

export const toEvidence = ({
	densityKgM3,
	sdKgM3,
	job,
	...row
}: Row): EvidenceRecord => ({
	...row,
	wood: woodOf(row.wood),
	kgM3: densityKgM3,
	sd: sdKgM3,
	jobNumber: job?.number ?? null,
});
