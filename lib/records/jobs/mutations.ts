import "server-only";
import { checksOf } from "@/lib/records/checks/loaders";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";
import {
	benchBuild,
	bySchema,
	customerContactSchema,
	customerNameSchema,
	isoDateSchema,
	type JobRecord,
	noteSchema,
	searchTextOf,
} from "@/lib/records/jobs/data";
import {
	addEvent,
	editJob,
	type JobEdit,
	type JobSaved,
	readJob,
	standingOf,
	stored,
} from "@/lib/records/jobs/edit";
import { takeNumber } from "@/lib/records/numbers";
import { once } from "@/lib/records/once";
import { handOver } from "@/lib/records/player-cues/mutations";
import { today } from "@/lib/records/settings/loaders";
import { checkRefusals } from "@/lib/workshop/check";
import { type JobContent, withPicks } from "@/lib/workshop/job-content";
import { moveRefusals } from "@/lib/workshop/job-rules";
import type { JobState, WaitingFor } from "@/lib/workshop/job-state";

export interface NewJob {
	readonly requestKey: string;
	readonly from:
		| { readonly specRevisionId: string }
		| { readonly onlineCueId: string };
	readonly customerName: string;
	readonly customerContact?: string;
	/** When the customer agreed that the contact is kept; null where the bench wrote it down. */
	readonly consentAt?: Date | null;
	readonly content: JobContent;
	readonly by: string;
	/** ISO date. */
	readonly dueOn?: string | null;
	readonly notes?: string;
}

/**
 * Opens a job from a saved spec or from a cue put together online, once for each request key. It gets
 * the next number, which no other job ever has. Throws where what it comes from is not there.
 */
export async function openJob(given: NewJob): Promise<JobRecord> {
	const content = withPicks(given.content);
	return inTransaction((transaction) =>
		openJobIn(transaction, { ...given, content }),
	);
}

/** The same inside a caller's transaction, with the billets to pick already in the build. */
export async function openJobIn(
	transaction: DatabaseTransaction,
	{ requestKey, from, consentAt = null, ...given }: NewJob,
): Promise<JobRecord> {
	const by = bySchema.parse(given.by);
	const customerName = customerNameSchema.parse(given.customerName);
	const { content } = given;
	const fields = {
		customerName,
		customerContact: customerContactSchema.parse(given.customerContact ?? ""),
		consentAt,
		dueOn: isoDateSchema.nullable().parse(given.dueOn ?? null),
		notes: noteSchema.parse(given.notes ?? ""),
	};
	const id = await once(
		transaction,
		{ key: requestKey, kind: "open-job" },
		async () => {
			const source = await sourceOf(transaction, from);
			const number = await takeNumber(transaction, "job");
			const job = await transaction.job.create({
				data: {
					...fields,
					...source,
					number,
					requestKey,
					state: "asked",
					searchText: searchTextOf({ number, customerName, content }),
				},
			});
			await transaction.jobRevision.create({
				data: {
					...stored(content),
					jobId: job.id,
					revision: 1,
					reason: "",
					by,
					requestKey,
				},
			});
			await addEvent(transaction, {
				jobId: job.id,
				kind: "opened",
				toState: "asked",
				by,
				requestKey,
			});
			return job.id;
		},
	);
	return readJob(transaction, { id });
}

async function sourceOf(
	transaction: DatabaseTransaction,
	from: NewJob["from"],
) {
	if ("onlineCueId" in from) {
		const cue = await transaction.onlineCue.findUnique({
			where: { id: from.onlineCueId },
		});
		if (cue === null)
			throw new Error(`there is no online cue ${from.onlineCueId}`);
		return { onlineCueId: cue.id, isDemo: cue.isDemo };
	}
	const revision = await transaction.specRevision.findUnique({
		where: { id: from.specRevisionId },
		select: {
			id: true,
			spec: {
				select: { fitting: { select: { playerId: true, isDemo: true } } },
			},
		},
	});
	if (revision === null)
		throw new Error(`there is no spec revision ${from.specRevisionId}`);
	return { specRevisionId: revision.id, ...revision.spec.fitting };
}

export interface JobMove {
	readonly number: number;
	/** Of the job, as it was read. */
	readonly revision: number;
	readonly to: JobState;
	readonly by: string;
	readonly note?: string;
	/** Wanted where it goes to wait. */
	readonly waitingFor?: WaitingFor;
	/** ISO date when the wait should be over. */
	readonly expectedOn?: string;
	readonly requestKey: string;
}

/**
 * Moves a job by hand. Refused as lib/workshop/job-rules.ts says, and for a cue out of tolerance as
 * check.ts says. Handing over makes the cue its player's own.
 */
export async function moveJob({
	to,
	waitingFor,
	expectedOn,
	...given
}: JobMove): Promise<JobSaved> {
	const by = bySchema.parse(given.by);
	const note = noteSchema.parse(given.note ?? "");
	return editJob("move-job", given, async (transaction, job) => {
		const checks = await checksOf(job.id, transaction);
		const refusals = [
			...moveRefusals(standingOf(job), { to, waitingFor, expectedOn }, today()),
			...checkRefusals({ to, build: benchBuild(job), checks }),
		];
		if (refusals.length > 0) return { refusals };
		if (to === "handed-over") await handOver(transaction, { job, checks });
		return {
			change: { state: to, stateSince: new Date() },
			event: {
				kind: "moved",
				fromState: job.state,
				toState: to,
				by,
				note,
				facts: to === "waiting" ? { waitingFor, expectedOn } : {},
			},
		};
	});
}

/** Sets or takes away the day a job is due. */
export async function setDue({
	dueOn,
	...given
}: JobEdit & { dueOn: string | null; by: string }): Promise<JobSaved> {
	const by = bySchema.parse(given.by);
	const due = isoDateSchema.nullable().parse(dueOn);
	return editJob("set-job-due", given, () => ({
		change: { dueOn: due },
		event: { kind: "due-set", by, facts: { dueOn: due } },
	}));
}

/** Writes a line into the job's history, beside the notes that stand at its top. */
export async function addJobNote({
	note,
	...given
}: JobEdit & { note: string; by: string }): Promise<JobSaved> {
	const by = bySchema.parse(given.by);
	const text = noteSchema.min(1).parse(note);
	return editJob("note-job", given, () => ({
		change: {},
		event: { kind: "noted", by, note: text },
	}));
}

/** Changes who the cue is for and how they are reached. */
export async function changeCustomer({
	customerName,
	customerContact,
	notes,
	...given
}: JobEdit & {
	customerName: string;
	customerContact: string;
	notes: string;
	by: string;
}): Promise<JobSaved> {
	const by = bySchema.parse(given.by);
	const fields = {
		customerName: customerNameSchema.parse(customerName),
		customerContact: customerContactSchema.parse(customerContact),
		notes: noteSchema.parse(notes),
	};
	return editJob("change-job-customer", given, (_, job) => ({
		change: {
			...fields,
			searchText: searchTextOf({
				number: job.number,
				customerName: fields.customerName,
				content: job.latest.content,
			}),
		},
		event: { kind: "customer-changed", by },
	}));
}
