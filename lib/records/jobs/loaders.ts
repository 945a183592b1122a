import "server-only";
import type { Prisma } from "@/generated/prisma/client";
import { database } from "@/lib/records/database";
import {
	isAgreedIn,
	type JobRecord,
	type JobRow,
	type JobSummary,
	jobRowSelection,
	jobSelection,
	revisionSelection,
	stateOf,
	toJob,
	toRevision,
	waitingOf,
} from "@/lib/records/jobs/data";
import { cursorAt, readCursor, rowsWanted } from "@/lib/records/page";
import { searchParts } from "@/lib/records/search";
import type { DueFilter } from "@/lib/workshop/due-filter";
import {
	JOB_STATES,
	type JobState,
	OPEN_STATES,
} from "@/lib/workshop/job-state";
import { addDays } from "@/lib/workshop/working-days";

export async function getJob(number: number): Promise<JobRecord | null> {
	const row = await database().job.findUnique({
		where: { number },
		select: jobSelection,
	});
	return row && toJob(row);
}

export async function getJobById(id: string): Promise<JobRecord | null> {
	const row = await database().job.findUnique({
		where: { id },
		select: jobSelection,
	});
	return row && toJob(row);
}

export interface JobFilter {
	/** Open ones unless told. */
	readonly states?: readonly JobState[];
	readonly due?: DueFilter;
	/** Parts of number, customer or woods, in any order. */
	readonly search?: string;
}

/** Where a job stands in the queue: what the queue is ordered by. */
interface Place {
	readonly dueOn: string | null;
	readonly id: string;
}

/**
 * Jobs in the order they fall due, those without a day last; where closed ones are among them, latest
 * due first. `next` continues the list. Each state is read along its index of due days and stops at
 * the rows wanted, so that the cost does not grow with the jobs that are done; a search looks through
 * the jobs of the states asked for.
 */
export async function listJobs(
	request: JobFilter & {
		readonly today: string;
		readonly limit?: number;
		readonly after?: string;
	},
): Promise<{ jobs: JobSummary[]; next: string | null }> {
	const limit = rowsWanted(request.limit);
	const rows = await rowsFrom(request, {
		from: request.after === undefined ? null : placeAt(request.after),
		isBackwards: false,
		take: limit + 1,
	});
	const page = rows.slice(0, limit);
	const last = page.at(-1);
	return {
		jobs: await toSummaries(page),
		next:
			last && rows.length > limit ? cursorAt(last.dueOn ?? "", last.id) : null,
	};
}

/** The number of the job next to one in the queue as it is filtered; null at its end. */
export async function neighbourJob(
	number: number,
	request: JobFilter & {
		readonly today: string;
		readonly direction: "next" | "previous";
	},
): Promise<number | null> {
	const from = await database().job.findUnique({
		where: { number },
		select: { id: true, dueOn: true },
	});
	if (from === null) return null;
	const [row] = await rowsFrom(request, {
		from,
		isBackwards: request.direction === "previous",
		take: 1,
	});
	return row?.number ?? null;
}

/** More jobs than this in one state are told as "so many or more". */
export const MOST_COUNTED = 1000;

export interface JobCounts {
	readonly byState: Readonly<Record<JobState, number>>;
	/** Open ones due before today. */
	readonly overdue: number;
}

/** How many jobs stand where, each counted up to MOST_COUNTED. */
export async function countJobs(today: string): Promise<JobCounts> {
	const byState = {} as Record<JobState, number>;
	for (const state of JOB_STATES)
		byState[state] = await database().job.count({
			where: { state },
			take: MOST_COUNTED,
		});
	let overdue = 0;
	for (const state of OPEN_STATES)
		overdue += await database().job.count({
			where: { state, dueOn: { lt: today } },
			take: MOST_COUNTED,
		});
	return { byState, overdue };
}

/** Cues asked for and not yet begun, for the lead time. */
export async function countAhead(): Promise<number> {
	return database().job.count({
		where: { state: { in: ["agreed", "on-the-bench", "waiting"] } },
	});
}

function placeAt(after: string): Place {
	const { value, id } = readCursor(after);
	return { dueOn: value === "" ? null : value, id };
}

async function rowsFrom(
	filter: JobFilter & { readonly today: string },
	walk: { from: Place | null; isBackwards: boolean; take: number },
): Promise<JobRow[]> {
	const states = filter.states ?? OPEN_STATES;
	const isSoonestFirst = states.every((state) => OPEN_STATES.includes(state));
	const isRising = isSoonestFirst !== walk.isBackwards;
	const { from } = walk;
	const stretches: Stretch[] = (
		walk.isBackwards ? [false, true] : [true, false]
	)
		// Behind the place that the walk starts from lies nothing of the stretch before it.
		.filter((isDated) =>
			from === null || (from.dueOn !== null) === isDated
				? true
				: isDated === walk.isBackwards,
		)
		.map((isDated) => ({
			isDated,
			from: from !== null && (from.dueOn !== null) === isDated ? from : null,
			isRising,
		}));
	const found: JobRow[] = [];
	for (const stretch of stretches) {
		const missing = walk.take - found.length;
		if (missing <= 0) break;
		const rows: JobRow[] = [];
		for (const state of new Set(states))
			rows.push(...(await rowsOf(state, filter, stretch, missing)));
		found.push(...rows.sort(inOrder(isRising)).slice(0, missing));
	}
	return found;
}

interface Stretch {
	readonly isDated: boolean;
	/** Set where the walk starts inside this stretch. */
	readonly from: Place | null;
	readonly isRising: boolean;
}

function rowsOf(
	state: JobState,
	{ due, search = "", today }: JobFilter & { readonly today: string },
	{ isDated, from, isRising }: Stretch,
	take: number,
): Promise<JobRow[]> {
	const beyond = isRising ? "gt" : "lt";
	const order = isRising ? "asc" : "desc";
	const conditions: Prisma.JobWhereInput[] = [
		isDated ? { dueOn: { not: null } } : { dueOn: null },
		...searchParts(search).map((part) => ({ searchText: { contains: part } })),
	];
	if (due === "overdue") conditions.push({ dueOn: { lt: today } });
	if (due === "week")
		conditions.push({ dueOn: { gte: today, lt: addDays(today, 7) } });
	if (due === "none") conditions.push({ dueOn: null });
	if (from !== null && !isDated) conditions.push({ id: { [beyond]: from.id } });
	if (from?.dueOn && isDated)
		conditions.push(
			// Said twice: this part the index can seek by.
			{ dueOn: { [isRising ? "gte" : "lte"]: from.dueOn } },
			{
				OR: [
					{ dueOn: { [beyond]: from.dueOn } },
					{ dueOn: from.dueOn, id: { [beyond]: from.id } },
				],
			},
		);
	return database().job.findMany({
		where: { state, AND: conditions },
		orderBy: [...(isDated ? [{ dueOn: order } as const] : []), { id: order }],
		take,
		select: jobRowSelection,
	});
}

const inOrder =
	(isRising: boolean) =>
	(a: Place, b: Place): number => {
		const rising =
			(a.dueOn ?? "") === (b.dueOn ?? "")
				? Number(a.id > b.id) - Number(a.id < b.id)
				: (a.dueOn ?? "") > (b.dueOn ?? "")
					? 1
					: -1;
		return isRising ? rising : -rising;
	};

async function toSummaries(rows: readonly JobRow[]): Promise<JobSummary[]> {
	const latest = await database().jobRevision.findMany({
		where: {
			id: { in: rows.flatMap(({ revisions: [one] }) => (one ? [one.id] : [])) },
		},
		select: revisionSelection,
	});
	const waits = await database().jobEvent.findMany({
		where: {
			jobId: {
				in: rows.filter(({ state }) => state === "waiting").map(({ id }) => id),
			},
			toState: "waiting",
		},
		orderBy: [{ createdAt: "desc" }, { id: "desc" }],
		select: { jobId: true, facts: true },
	});
	return rows.map(({ revisions, ...row }) => {
		const found = latest.find(({ id }) => id === revisions[0]?.id);
		if (found === undefined) throw new Error(`job ${row.number} holds nothing`);
		const revision = toRevision(found);
		const state = stateOf(row.state);
		return {
			...row,
			state,
			waiting:
				state === "waiting"
					? waitingOf(waits.find(({ jobId }) => jobId === row.id)?.facts)
					: null,
			latest: revision,
			isAgreed: isAgreedIn(revisions, revision.contentSha256),
		};
	});
}

/** The jobs opened from any revision of a spec, newest first. */
export async function jobsOfSpec(
	specNumber: number,
): Promise<{ number: number; state: JobState }[]> {
	const rows = await database().job.findMany({
		where: { specRevision: { spec: { number: specNumber } } },
		select: { number: true, state: true },
		orderBy: { number: "desc" },
		take: 50,
	});
	return rows.map(({ number, state }) => ({ number, state: stateOf(state) }));
}
