import "server-only";
import type { Refusal } from "@/lib/numerics/outcome";
import { contentSha256 } from "@/lib/records/canonical";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";
import {
	bySchema,
	customerNameSchema,
	type JobRecord,
	jobSelection,
	noteSchema,
	searchTextOf,
	toJob,
} from "@/lib/records/jobs/data";
import {
	addEvent,
	type Edited,
	editJob,
	type JobEdit,
	type JobSaved,
	readJob,
	standingOf,
	stored,
} from "@/lib/records/jobs/edit";
import { carriedOut, once } from "@/lib/records/once";
import { today } from "@/lib/records/settings/loaders";
import {
	type JobContent,
	type Quote,
	withPicks,
} from "@/lib/workshop/job-content";
import {
	agreeRefusal,
	revisionRefusals,
	stateAfterRevision,
} from "@/lib/workshop/job-rules";

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
	return editJob("write-job-revision", given, (transaction, job) =>
		revisionIn(transaction, job, {
			content: change(job.latest.content),
			by,
			reason,
			requestKey: given.requestKey,
		}),
	);
}

/** The next revision inside a caller's edit, and what it changes in the job. */
export async function revisionIn(
	transaction: DatabaseTransaction,
	job: JobRecord,
	{
		content,
		by,
		reason,
		requestKey,
	}: { content: JobContent; by: string; reason: string; requestKey: string },
): Promise<Edited> {
	const refusals = revisionRefusals(job, content, today());
	if (refusals.length > 0) return { refusals };
	const data = stored(content);
	if (data.contentSha256 === job.latest.contentSha256) return { change: null };
	const revision = job.latest.revision + 1;
	await transaction.jobRevision.create({
		data: {
			...data,
			jobId: job.id,
			revision,
			reason,
			by,
			requestKey,
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
			...(state === job.state ? {} : { fromState: job.state, toState: state }),
		},
	};
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
		return { ok: true, job: await readJob(transaction, { id: job.id }) };
	});
}
