import "server-only";
import { z } from "zod";
import type { Prisma } from "@/generated/prisma/client";
import type { Refusal } from "@/lib/numerics/outcome";
import { canonicalJson, contentSha256 } from "@/lib/records/canonical";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";
import { type JobRecord, jobSelection, toJob } from "@/lib/records/jobs/data";
import { carriedOut, once } from "@/lib/records/once";
import type { JobEventFacts, JobEventKind } from "@/lib/workshop/job-event";
import type { JobStanding } from "@/lib/workshop/job-rules";
import type { JobState } from "@/lib/workshop/job-state";

/** The job as it stands after an edit; refused; or edited by someone else since it was read (null: gone). */
export type JobSaved =
	| { readonly ok: true; readonly job: JobRecord }
	| { readonly ok: false; readonly refusals: readonly Refusal[] }
	| { readonly ok: false; readonly conflict: JobRecord | null };

const contentSchema = z.record(z.string(), z.json());
/** Content as it is stored, and the checksum of it. */
export const stored = (content: object) => ({
	content: contentSchema.parse(JSON.parse(canonicalJson(content))),
	contentSha256: contentSha256(content),
});

export interface JobEdit {
	readonly number: number;
	/** Of the job, as it was read. */
	readonly revision: number;
	readonly requestKey: string;
}

export type Edited =
	| { readonly refusals: readonly Refusal[] }
	/** Null: there is nothing to change. */
	| { readonly change: null }
	| {
			readonly change: Prisma.JobUpdateManyMutationInput;
			readonly event: Omit<NewEvent, "jobId" | "requestKey">;
	  };

/**
 * One edit of a job on the revision it was read at, with its line in the history, once for each
 * request key: the same request again gives the job as it stands by then.
 */
export async function editJob(
	kind: Parameters<typeof once>[1]["kind"],
	{ number, revision, requestKey }: JobEdit,
	make: (
		transaction: DatabaseTransaction,
		job: JobRecord,
	) => Edited | Promise<Edited>,
): Promise<JobSaved> {
	return inTransaction(async (transaction): Promise<JobSaved> => {
		const row = await transaction.job.findUnique({
			where: { number },
			select: jobSelection,
		});
		if (row === null) return { ok: false, conflict: null };
		const job = toJob(row);
		if ((await carriedOut(transaction, { key: requestKey, kind })) !== null)
			return { ok: true, job };
		if (job.revision !== revision) return { ok: false, conflict: job };
		const edited = await make(transaction, job);
		if ("refusals" in edited) return { ok: false, refusals: edited.refusals };
		if (edited.change === null) return { ok: true, job };
		await once(transaction, { key: requestKey, kind }, async () => {
			await transaction.job.update({
				where: { id: job.id },
				data: { ...edited.change, revision: { increment: 1 } },
			});
			await addEvent(transaction, {
				...edited.event,
				jobId: job.id,
				requestKey,
			});
			return job.id;
		});
		return { ok: true, job: await readJob(transaction, { id: job.id }) };
	});
}

export interface NewEvent {
	readonly jobId: string;
	readonly kind: JobEventKind;
	readonly fromState?: JobState;
	readonly toState?: JobState;
	readonly by: string;
	readonly note?: string;
	readonly facts?: JobEventFacts;
	readonly requestKey: string;
	/** Now, unless it is told of another time. */
	readonly createdAt?: Date;
}

/** Adds a line to a job's history, inside the caller's transaction. */
export async function addEvent(
	transaction: DatabaseTransaction,
	{ facts, ...event }: NewEvent,
): Promise<void> {
	await transaction.jobEvent.create({
		data: {
			...event,
			...(facts === undefined
				? {}
				: { facts: JSON.parse(canonicalJson(facts)) }),
		},
	});
}

export async function readJob(
	transaction: DatabaseTransaction,
	where: { id: string },
): Promise<JobRecord> {
	return toJob(
		await transaction.job.findUniqueOrThrow({ where, select: jobSelection }),
	);
}

/** What the rules of a job look at. */
export const standingOf = (job: JobRecord): JobStanding => ({
	state: job.state,
	isAgreed: job.isAgreed,
	latestRevision: job.latest.revision,
	quote: job.latest.content.quote,
});
