import "server-only";
import type { Prisma } from "@/generated/prisma/client";
import { type DatabaseTransaction, database } from "@/lib/records/database";
import {
	type EvidenceRecord,
	evidenceSelection,
	toEvidence,
	woodOf,
} from "@/lib/records/wood-evidence/data";
import type { WoodId } from "@/lib/reference/woods";
import type { EvidenceByWood } from "@/lib/workshop/stock";
import { type DensityReading, WOOD_PRIOR } from "@/lib/workshop/wood-evidence";

type Reader = Pick<DatabaseTransaction, "woodEvidence">;

/** What counts of each wood, newest first, as many as the band takes; without what one job said. */
export async function evidenceByWood(
	from: Reader = database(),
	{ notOfJobId }: { notOfJobId?: string } = {},
): Promise<EvidenceByWood> {
	const counted: Prisma.WoodEvidenceWhereInput = {
		withdrawnAt: null,
		...(notOfJobId === undefined
			? {}
			: { OR: [{ jobId: null }, { jobId: { not: notOfJobId } }] }),
	};
	const woods = await from.woodEvidence.groupBy({
		by: ["wood"],
		where: counted,
		orderBy: { wood: "asc" },
	});
	const found: Partial<Record<WoodId, readonly DensityReading[]>> = {};
	for (const { wood } of woods) {
		const rows = await from.woodEvidence.findMany({
			where: { wood, ...counted },
			orderBy: [{ createdAt: "desc" }, { id: "desc" }],
			take: WOOD_PRIOR.mostReadings,
			select: { densityKgM3: true, sdKgM3: true },
		});
		found[woodOf(wood)] = rows.map(({ densityKgM3, sdKgM3 }) => ({
			kgM3: densityKgM3,
			sd: sdKgM3,
		}));
	}
	return found;
}

/** Evidence of a wood, counting and withdrawn, newest first. */
export async function evidenceOfWood(
	wood: WoodId,
	limit: number,
): Promise<EvidenceRecord[]> {
	const rows = await database().woodEvidence.findMany({
		where: { wood },
		orderBy: [{ createdAt: "desc" }, { id: "desc" }],
		take: limit,
		select: evidenceSelection,
	});
	return rows.map(toEvidence);
}

/** Evidence that a job gave, counting and withdrawn, newest first. */
export async function evidenceOfJob(jobId: string): Promise<EvidenceRecord[]> {
	const rows = await database().woodEvidence.findMany({
		where: { jobId },
		orderBy: [{ createdAt: "desc" }, { id: "desc" }],
		select: evidenceSelection,
	});
	return rows.map(toEvidence);
}

export interface EvidenceCounts {
	readonly wood: WoodId;
	readonly counting: number;
	readonly withdrawn: number;
}

/** How much there is of each wood that has any. */
export async function countEvidence(): Promise<EvidenceCounts[]> {
	const all = await database().woodEvidence.groupBy({
		by: ["wood"],
		_count: { _all: true, withdrawnAt: true },
		orderBy: { wood: "asc" },
	});
	return all.map(({ wood, _count }) => ({
		wood: woodOf(wood),
		counting: _count._all - _count.withdrawnAt,
		withdrawn: _count.withdrawnAt,
	}));
}

/** Evidence of every wood, counting and withdrawn, newest first. */
export async function latestEvidence(limit: number): Promise<EvidenceRecord[]> {
	const rows = await database().woodEvidence.findMany({
		orderBy: [{ createdAt: "desc" }, { id: "desc" }],
		take: limit,
		select: evidenceSelection,
	});
	return rows.map(toEvidence);
}
