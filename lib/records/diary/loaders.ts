import "server-only";
import type { DiaryEntry } from "@/lib/present/timeline-view";
import { database } from "@/lib/records/database";
import { cueFiguresSchema } from "@/lib/records/diary/data";
import {
	type StoredAnswers,
	storedAnswersSchema,
} from "@/lib/records/fittings/data";
import { stateOf } from "@/lib/records/jobs/data";
import { cursorAt, readCursor, rowsWanted } from "@/lib/records/page";

interface Place {
	readonly at: string;
	readonly id: string;
}

const startOf = (isoDay: string): string => `${isoDay}T00:00:00.000Z`;

const newestFirst = (a: Place, b: Place): number =>
	a.at === b.at
		? Number(b.id > a.id) - Number(b.id < a.id)
		: a.at < b.at
			? 1
			: -1;

/** Rows older than a place, of a kind that is placed by the moment it was created. */
const createdBefore = (place: Place | null) => {
	if (place === null) return {};
	const createdAt = new Date(place.at);
	return {
		OR: [{ createdAt: { lt: createdAt } }, { createdAt, id: { lt: place.id } }],
	};
};

/** Rows older than a place, of a kind that is placed at the start of the day in a field of its own. */
function dayBefore<Field extends string>(field: Field, place: Place | null) {
	if (place === null) return {};
	const day = place.at.slice(0, 10);
	const under = (end: string) =>
		({ [field]: { lt: end } }) as Record<Field, { lt: string }>;
	const that = { [field]: day } as Record<Field, string>;
	return place.at === startOf(day)
		? { OR: [under(day), { ...that, id: { lt: place.id } }] }
		: under(dayAfter(day));
}

const dayAfter = (day: string): string =>
	new Date(Date.parse(startOf(day)) + 86_400_000).toISOString().slice(0, 10);

/**
 * All that happened to a player, newest first: fittings, spec revisions, cues, jobs, trials and the
 * notes that stand. Each kind is read along its own index no further than a page; `next` continues.
 */
export async function listDiary(request: {
	playerId: string;
	limit?: number;
	after?: string;
}): Promise<{ entries: DiaryEntry[]; next: string | null }> {
	const { playerId } = request;
	const limit = rowsWanted(request.limit);
	const from = request.after === undefined ? null : placeAt(request.after);
	const take = limit + 1;
	const older = createdBefore(from);
	const newest = [{ createdAt: "desc" }, { id: "desc" }] as const;
	const fittings = await database().fitting.findMany({
		where: { playerId, AND: [older] },
		orderBy: [...newest],
		take,
		select: {
			id: true,
			createdAt: true,
			number: true,
			isDemo: true,
			spec: { select: { id: true } },
			basedOn: { select: { number: true } },
		},
	});
	const specs = await database().specRevision.findMany({
		where: { spec: { fitting: { playerId } }, AND: [older] },
		orderBy: [...newest],
		take,
		select: {
			id: true,
			createdAt: true,
			revision: true,
			reason: true,
			spec: {
				select: {
					number: true,
					fitting: { select: { number: true, isDemo: true } },
				},
			},
		},
	});
	const jobs = await database().job.findMany({
		where: { playerId, AND: [older] },
		orderBy: [...newest],
		take,
		select: {
			id: true,
			createdAt: true,
			number: true,
			state: true,
			isDemo: true,
		},
	});
	const trials = await database().trial.findMany({
		where: { playerId, AND: [older] },
		orderBy: [...newest],
		take,
		select: {
			id: true,
			createdAt: true,
			number: true,
			endedAt: true,
			isDemo: true,
		},
	});
	const cues = await database().playerCue.findMany({
		where: { playerId, AND: [dayBefore("since", from)] },
		orderBy: [{ since: "desc" }, { id: "desc" }],
		take,
		select: {
			id: true,
			since: true,
			name: true,
			content: true,
			asideAt: true,
			isDemo: true,
			job: { select: { number: true } },
		},
	});
	const notes = await database().playerNote.findMany({
		where: {
			playerId,
			withdrawnAt: null,
			AND: [dayBefore("writtenOn", from)],
		},
		orderBy: [{ writtenOn: "desc" }, { id: "desc" }],
		take,
		select: { id: true, writtenOn: true, text: true, isDemo: true },
	});
	const entries: DiaryEntry[] = [
		...fittings.map(
			({ createdAt, spec, basedOn, ...row }): DiaryEntry => ({
				kind: "fitting",
				at: createdAt.toISOString(),
				hasSpec: spec !== null,
				basedOnNumber: basedOn?.number ?? null,
				...row,
			}),
		),
		...specs.map(
			({ createdAt, spec, ...row }): DiaryEntry => ({
				kind: "spec",
				at: createdAt.toISOString(),
				number: spec.number,
				fittingNumber: spec.fitting.number,
				isDemo: spec.fitting.isDemo,
				...row,
			}),
		),
		...jobs.map(
			({ createdAt, state, ...row }): DiaryEntry => ({
				kind: "job",
				at: createdAt.toISOString(),
				state: stateOf(state),
				...row,
			}),
		),
		...trials.map(
			({ createdAt, endedAt, ...row }): DiaryEntry => ({
				kind: "trial",
				at: createdAt.toISOString(),
				hasEnded: endedAt !== null,
				...row,
			}),
		),
		...cues.map(({ since, content, job, ...row }): DiaryEntry => {
			const { lengthMm, massG } = cueFiguresSchema.parse(content);
			return {
				kind: "cue",
				at: startOf(since),
				lengthMm,
				massG,
				jobNumber: job?.number ?? null,
				...row,
			};
		}),
		...notes.map(
			({ writtenOn, ...row }): DiaryEntry => ({
				kind: "note",
				at: startOf(writtenOn),
				...row,
			}),
		),
	].sort(newestFirst);
	const page = entries.slice(0, limit);
	const last = page.at(-1);
	return {
		entries: page,
		next: last && entries.length > limit ? cursorAt(last.at, last.id) : null,
	};
}

/** Throws a RangeError for text that no page gave out. */
function placeAt(after: string): Place {
	const { value, id } = readCursor(after);
	if (
		Number.isNaN(Date.parse(value)) ||
		new Date(value).toISOString() !== value
	)
		throw new RangeError(`after is not the end of a page: ${after}`);
	return { at: value, id };
}

/** The fitting last begun, with its answers; null before the first. */
export async function latestFittingOf(playerId: string): Promise<{
	id: string;
	number: number;
	createdAt: Date;
	answers: StoredAnswers;
} | null> {
	const row = await database().fitting.findFirst({
		where: { playerId },
		orderBy: { number: "desc" },
		select: { id: true, number: true, createdAt: true, answers: true },
	});
	return row && { ...row, answers: storedAnswersSchema.parse(row.answers) };
}

/** What of a player can be compared, newest first: each fitting with the revisions of its spec. */
export async function listComparable(playerId: string): Promise<
	{
		number: number;
		createdAt: Date;
		specs: { number: number; revision: number; createdAt: Date }[];
	}[]
> {
	const rows = await database().fitting.findMany({
		where: { playerId },
		orderBy: { number: "desc" },
		select: {
			number: true,
			createdAt: true,
			spec: {
				select: {
					number: true,
					revisions: {
						select: { revision: true, createdAt: true },
						orderBy: { revision: "desc" },
					},
				},
			},
		},
	});
	return rows.map(({ spec, ...fitting }) => ({
		...fitting,
		specs:
			spec?.revisions.map((revision) => ({
				number: spec.number,
				...revision,
			})) ?? [],
	}));
}
