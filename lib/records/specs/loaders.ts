import "server-only";
import { database } from "@/lib/records/database";
import {
	revisionSelection,
	type SpecRevisionRecord,
	type SpecRevisionSummary,
} from "@/lib/records/specs/data";

/** One revision as it was saved; the latest where none is named. */
export async function getSpecRevision(
	number: number,
	revision?: number,
): Promise<SpecRevisionRecord | null> {
	const spec = await database().spec.findUnique({
		where: { number },
		select: {
			fitting: {
				select: {
					id: true,
					number: true,
					isDemo: true,
					player: { select: { id: true, name: true } },
				},
			},
			revisions: {
				select: { ...revisionSelection, id: true, content: true },
				...(revision === undefined ? {} : { where: { revision } }),
				orderBy: { revision: "desc" },
				take: 1,
			},
			_count: { select: { revisions: true } },
		},
	});
	const saved = spec?.revisions[0];
	if (!saved) return null;
	// Revisions are numbered 1, 2, 3, … and none is ever deleted.
	return {
		...saved,
		number,
		fitting: spec.fitting,
		latestRevision: spec._count.revisions,
	};
}

/** All revisions of a spec, latest first; empty where there is no such spec. */
export async function listRevisions(
	number: number,
): Promise<SpecRevisionSummary[]> {
	const rows = await database().specRevision.findMany({
		where: { spec: { number } },
		select: revisionSelection,
		orderBy: { revision: "desc" },
	});
	return rows.map((row) => ({ ...row, number }));
}

/** What a request of this key saved, whatever was saved since; null where none came. */
export async function specSavedBy(
	requestKey: string,
): Promise<{ number: number; revision: number } | null> {
	const applied = await database().appliedRequest.findUnique({
		where: { key: requestKey, kind: "save-spec" },
	});
	const saved =
		applied &&
		(await database().specRevision.findUnique({
			where: { id: applied.resultId },
			select: { revision: true, spec: { select: { number: true } } },
		}));
	return saved && { number: saved.spec.number, revision: saved.revision };
}
