import "server-only";
import { z } from "zod";
import type { Prisma } from "@/generated/prisma/client";
import type { Refusal } from "@/lib/numerics/outcome";
import { canonicalJson, contentSha256 } from "@/lib/records/canonical";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";
import {
	bySchema,
	customerContactSchema,
	customerNameSchema,
	isoDateSchema,
	type JobRecord,
	jobSelection,
	noteSchema,
	searchTextOf,
	toJob,
} from "@/lib/records/jobs/data";
import { takeNumber } from "@/lib/records/numbers";
import { carriedOut, once } from "@/lib/records/once";
import { today } from "@/lib/records/settings/loaders";
import {
	type JobContent,
	type Quote,
	withBillets,
} from "@/lib/workshop/job-content";
import type { JobEventFacts, JobEventKind } from "@/lib/workshop/job-event";
import {
	agreeRefusal,
	type JobStanding,
	moveRefusals,
	revisionRefusals,
	stateAfterRevision,
} from "@/lib/workshop/job-rules";
import type { JobState, WaitingFor } from "@/lib/workshop/job-state";

/** The job as it stands after an edit; refused; or edited by someone else since it was read (null: gone). */
export type JobSaved =
	| { readonly ok: true; readonly job: JobRecord }
	| { readonly ok: false; readonly refusals: readonly Refusal[] }
	| { readonly ok: false; readonly conflict: JobRecord | null };

const contentSchema = z.record(z.string(), z.json());
const stored = (content: JobContent) => ({
	content: contentSchema.parse(JSON.parse(canonicalJson(content))),
	contentSha256: contentSha256(content),
});

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

/** With the billets to pick, worked out before any transaction: it takes its time. */
const withPicks = (content: JobContent): JobContent =>
	content.build.billets.length > 0
		? content
		: { ...content, build: withBillets(content.build) };

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
	return read(transaction, { id });
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
 * Moves a job by hand. Refused as lib/workshop/job-rules.ts says.
 */
export async function moveJob({
	to,
	waitingFor,
	expectedOn,
	...given
}: JobMove): Promise<JobSaved> {
	const by = bySchema.parse(given.by);
	const note = noteSchema.parse(given.note ?? "");
	return edit("move-job", given, (_, job) => {
		const refusals = moveRefusals(
			standingOf(job),
			{ to, waitingFor, expectedOn },
			today(),
		);
		if (refusals.length > 0) return { refusals };
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
	return edit("set-job-due", given, () => ({
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
	return edit("note-job", given, () => ({
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
	return edit("change-job-customer", given, (_, job) => ({
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

/**
 * Writes a quote: the latest revision with a price as the next one. Refused as lib/workshop/quote.ts
 * and job-rules.ts say.
 */
export async function writeQuote({
	quote,
	...given
}: JobEdit & { quote: Quote; by: string; reason?: string }): Promise<JobSaved> {
	return writeRevision({
		...given,
		change: (latest) => ({ ...latest, quote }),
	});
}

/**
 * Writes a change as the next revision. Content equal to the latest is the latest again. From the
 * first quote on a change has a quote too, and the customer must agree to it: an agreed job is quoted
 * once more, a job on the bench stays there and cannot be finished before. What was agreed to before,
 * word for word, needs no second agreement.
 */
export async function newRevision({
	content,
	...given
}: JobEdit & {
	content: JobContent;
	by: string;
	reason: string;
}): Promise<JobSaved> {
	const next = withPicks(content);
	return writeRevision({ ...given, change: () => next });
}

async function writeRevision({
	change,
	...given
}: JobEdit & {
	by: string;
	reason?: string;
	change: (latest: JobContent) => JobContent;
}): Promise<JobSaved> {
	const by = bySchema.parse(given.by);
	const reason = noteSchema.parse(given.reason ?? "");
	return edit("write-job-revision", given, async (transaction, job) => {
		const content = change(job.latest.content);
		const refusals = revisionRefusals(job, content, today());
		if (refusals.length > 0) return { refusals };
		const data = stored(content);
		if (data.contentSha256 === job.latest.contentSha256)
			return { change: null };
		const revision = job.latest.revision + 1;
		await transaction.jobRevision.create({
			data: {
				...data,
				jobId: job.id,
				revision,
				reason,
				by,
				requestKey: given.requestKey,
			},
		});
		const isOnlyQuote =
			contentSha256({ ...content, quote: null }) ===
			contentSha256({ ...job.latest.content, quote: null });
		const wasAgreed = job.revisions.some(
			({ agreement }) => agreement?.contentSha256 === data.contentSha256,
		);
		const state = stateAfterRevision(job.state, content, wasAgreed);
		return {
			change: {
				...(state === job.state ? {} : { state, stateSince: new Date() }),
				searchText: searchTextOf({
					number: job.number,
					customerName: job.customerName,
					content,
				}),
			},
			event: {
				kind: isOnlyQuote && content.quote !== null ? "quoted" : "changed",
				by,
				note: reason,
				facts: { revision },
				...(state === job.state
					? {}
					: { fromState: job.state, toState: state }),
			},
		};
	});
}

export interface NewAgreement {
	readonly number: number;
	/** What the customer saw. */
	readonly jobRevision: number;
	readonly contentSha256: string;
	readonly agreedName: string;
	readonly via: "page" | "bench";
	/** Who wrote it down, where it was by word of mouth. */
	readonly by?: string;
	readonly requestKey: string;
}

export type Agreed =
	| { readonly ok: true; readonly job: JobRecord }
	| { readonly ok: false; readonly refusals: readonly Refusal[] };

/**
 * Writes down that the customer agrees to a quote, once: agreeing again to the same is the first
 * agreement. Refused as lib/workshop/job-rules.ts says; throws where there is no such job.
 */
export async function agree(given: NewAgreement): Promise<Agreed> {
	const agreedName = customerNameSchema.parse(given.agreedName);
	const by = bySchema.parse(given.by ?? agreedName);
	return inTransaction(async (transaction): Promise<Agreed> => {
		const row = await transaction.job.findUnique({
			where: { number: given.number },
			select: jobSelection,
		});
		if (row === null) throw new Error(`there is no job ${given.number}`);
		const job = toJob(row);
		const { latest } = job;
		const request = { key: given.requestKey, kind: "agree-job" } as const;
		if ((await carriedOut(transaction, request)) !== null)
			return { ok: true, job };
		const isSame =
			latest.revision === given.jobRevision &&
			latest.contentSha256 === given.contentSha256;
		if (isSame && job.isAgreed) return { ok: true, job };
		const refusal = agreeRefusal(standingOf(job), isSame, today());
		if (refusal) return { ok: false, refusals: [refusal] };
		await once(transaction, request, async () => {
			const made = await transaction.agreement.create({
				data: {
					jobRevisionId: latest.id,
					contentSha256: latest.contentSha256,
					agreedName,
					via: given.via,
					requestKey: given.requestKey,
				},
			});
			const isMove = job.state === "quoted";
			await addEvent(transaction, {
				jobId: job.id,
				kind: "agreed",
				by,
				facts: { revision: latest.revision, via: given.via },
				requestKey: given.requestKey,
				...(isMove ? { fromState: "quoted", toState: "agreed" } : {}),
			});
			await transaction.job.update({
				where: { id: job.id },
				data: {
					revision: { increment: 1 },
					...(isMove ? { state: "agreed", stateSince: new Date() } : {}),
				},
			});
			return made.id;
		});
		return { ok: true, job: await read(transaction, { id: job.id }) };
	});
}

const standingOf = (job: JobRecord): JobStanding => ({
	state: job.state,
	isAgreed: job.isAgreed,
	latestRevision: job.latest.revision,
	quote: job.latest.content.quote,
});

interface JobEdit {
	readonly number: number;
	/** Of the job, as it was read. */
	readonly revision: number;
	readonly requestKey: string;
}

type Edited =
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
async function edit(
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
		return { ok: true, job: await read(transaction, { id: job.id }) };
	});
}

interface NewEvent {
	readonly jobId: string;
	readonly kind: JobEventKind;
	readonly fromState?: JobState;
	readonly toState?: JobState;
	readonly by: string;
	readonly note?: string;
	readonly facts?: JobEventFacts;
	readonly requestKey: string;
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

async function read(
	transaction: DatabaseTransaction,
	where: { id: string },
): Promise<JobRecord> {
	return toJob(
		await transaction.job.findUniqueOrThrow({ where, select: jobSelection }),
	);
}
