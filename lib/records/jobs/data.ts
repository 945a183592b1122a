import "server-only";
import { z } from "zod";
import type { Prisma } from "@/generated/prisma/client";
import { searchable } from "@/lib/records/search";
import { WOODS } from "@/lib/reference/woods";
import type { BuildContent, JobContent } from "@/lib/workshop/job-content";
import {
	isJobEventKind,
	type JobEventFacts,
	type JobEventKind,
} from "@/lib/workshop/job-event";
import {
	isJobState,
	type JobState,
	WAITING_FOR,
	type WaitingFor,
} from "@/lib/workshop/job-state";

export const customerNameSchema = z.string().trim().min(1).max(200);
export const customerContactSchema = z.string().trim().max(400);
/** Who did it, as they call themselves. */
export const bySchema = z.string().trim().min(1).max(120);
export const noteSchema = z.string().trim().max(2000);
export const isoDateSchema = z.iso.date();

/** A job as the queue shows it. */
export interface JobSummary {
	readonly id: string;
	readonly number: number;
	readonly state: JobState;
	readonly stateSince: Date;
	/** What it waits for and until when, while it waits. */
	readonly waiting: Waiting | null;
	readonly customerName: string;
	/** ISO date. */
	readonly dueOn: string | null;
	readonly isDemo: boolean;
	/** Of the job itself: raised with each edit. */
	readonly revision: number;
	readonly updatedAt: Date;
	readonly latest: JobRevisionRecord;
	/** Whether the customer agreed to what the latest revision says. */
	readonly isAgreed: boolean;
}

export interface Waiting {
	readonly for: WaitingFor;
	/** ISO date. */
	readonly expectedOn: string;
}

export interface JobRevisionRecord {
	readonly id: string;
	readonly revision: number;
	readonly content: JobContent;
	readonly contentSha256: string;
	readonly reason: string;
	readonly by: string;
	readonly createdAt: Date;
	readonly agreement: AgreementRecord | null;
}

export interface AgreementRecord {
	readonly agreedName: string;
	readonly via: "page" | "bench";
	readonly contentSha256: string;
	readonly agreedAt: Date;
}

export interface JobEventRecord {
	readonly id: string;
	readonly kind: JobEventKind;
	readonly fromState: JobState | null;
	readonly toState: JobState | null;
	readonly by: string;
	readonly note: string;
	readonly facts: JobEventFacts;
	readonly createdAt: Date;
}

export interface JobRecord extends JobSummary {
	readonly customerContact: string;
	readonly consentAt: Date | null;
	readonly notes: string;
	readonly createdAt: Date;
	readonly player: { readonly id: string; readonly name: string } | null;
	/** The saved spec it came from. */
	readonly spec: {
		readonly number: number;
		readonly revision: number;
		readonly fittingNumber: number;
	} | null;
	readonly onlineCueId: string | null;
	/** Latest first. */
	readonly revisions: readonly JobRevisionRecord[];
	/** What the bench builds by: the latest revision with an agreement; null before there is one. */
	readonly agreed: JobRevisionRecord | null;
	/** Latest first. */
	readonly events: readonly JobEventRecord[];
}

const agreementSelection = {
	agreedName: true,
	via: true,
	contentSha256: true,
	agreedAt: true,
} as const satisfies Prisma.AgreementSelect;

export const revisionSelection = {
	id: true,
	revision: true,
	content: true,
	contentSha256: true,
	reason: true,
	by: true,
	createdAt: true,
	agreement: { select: agreementSelection },
} as const satisfies Prisma.JobRevisionSelect;

const summaryFields = {
	id: true,
	number: true,
	state: true,
	stateSince: true,
	customerName: true,
	dueOn: true,
	isDemo: true,
	revision: true,
	updatedAt: true,
} as const satisfies Prisma.JobSelect;

/** Without the contents, which are read for the latest revisions alone. */
export const jobRowSelection = {
	...summaryFields,
	revisions: {
		select: {
			id: true,
			revision: true,
			contentSha256: true,
			agreement: { select: { contentSha256: true } },
		},
		orderBy: { revision: "desc" },
	},
} as const satisfies Prisma.JobSelect;

export type JobRow = Prisma.JobGetPayload<{ select: typeof jobRowSelection }>;

export const jobSelection = {
	...summaryFields,
	customerContact: true,
	consentAt: true,
	notes: true,
	createdAt: true,
	onlineCueId: true,
	player: { select: { id: true, name: true } },
	specRevision: {
		select: {
			revision: true,
			spec: {
				select: { number: true, fitting: { select: { number: true } } },
			},
		},
	},
	revisions: { select: revisionSelection, orderBy: { revision: "desc" } },
	events: { orderBy: [{ createdAt: "desc" }, { id: "desc" }] },
} as const satisfies Prisma.JobSelect;

export type OpenJobRow = Prisma.JobGetPayload<{ select: typeof jobSelection }>;

type RevisionRow = Prisma.JobRevisionGetPayload<{
	select: typeof revisionSelection;
}>;

/** Content is ours, written once and frozen: only its version needs telling. */
export function contentOf(content: unknown): JobContent {
	const { schemaVersion } = content as Partial<JobContent>;
	if (schemaVersion !== 1)
		throw new Error(
			`job content of version ${String(schemaVersion)} is not known here`,
		);
	return content as JobContent;
}

export const toRevision = ({
	content,
	agreement,
	...row
}: RevisionRow): JobRevisionRecord => ({
	...row,
	content: contentOf(content),
	agreement: agreement && {
		...agreement,
		via: agreement.via === "bench" ? "bench" : "page",
	},
});

export function stateOf(text: string): JobState {
	if (!isJobState(text)) throw new Error(`a job cannot be ${text}`);
	return text;
}

interface EventRow {
	readonly id: string;
	readonly kind: string;
	readonly fromState: string | null;
	readonly toState: string | null;
	readonly by: string;
	readonly note: string;
	readonly facts: unknown;
	readonly createdAt: Date;
}

export function toEvent(row: EventRow): JobEventRecord {
	const { id, kind, by, note, createdAt } = row;
	if (!isJobEventKind(kind)) throw new Error(`no event is of kind ${kind}`);
	return {
		id,
		kind,
		by,
		note,
		createdAt,
		fromState: row.fromState === null ? null : stateOf(row.fromState),
		toState: row.toState === null ? null : stateOf(row.toState),
		facts: (row.facts ?? {}) as JobEventFacts,
	};
}

const waitingSchema = z.object({
	waitingFor: z.enum(WAITING_FOR),
	expectedOn: isoDateSchema,
});

/** The wait that the move into it wrote down. */
export function waitingOf(facts: unknown): Waiting {
	const { waitingFor, expectedOn } = waitingSchema.parse(facts);
	return { for: waitingFor, expectedOn };
}

/** Agreed is what was agreed to, word for word, whichever revision says it. */
export const isAgreedIn = (
	revisions: readonly {
		readonly contentSha256: string;
		readonly agreement: { readonly contentSha256: string } | null;
	}[],
	contentSha256: string,
): boolean =>
	revisions.some(({ agreement }) => agreement?.contentSha256 === contentSha256);

export function toJob({
	specRevision,
	revisions: rows,
	events: eventRows,
	...row
}: OpenJobRow): JobRecord {
	const revisions = rows.map(toRevision);
	const [latest] = revisions;
	if (latest === undefined) throw new Error(`job ${row.number} holds nothing`);
	const events = eventRows.map(toEvent);
	const state = stateOf(row.state);
	return {
		...row,
		state,
		waiting:
			state === "waiting"
				? waitingOf(events.find(({ toState }) => toState === state)?.facts)
				: null,
		spec: specRevision && {
			number: specRevision.spec.number,
			revision: specRevision.revision,
			fittingNumber: specRevision.spec.fitting.number,
		},
		latest,
		isAgreed: isAgreedIn(revisions, latest.contentSha256),
		revisions,
		agreed:
			revisions.find(({ contentSha256 }) =>
				isAgreedIn(revisions, contentSha256),
			) ?? null,
		events,
	};
}

/** What the bench builds by: what was agreed to last, and what was asked for before there is such. */
export const benchRevision = ({
	agreed,
	latest,
}: Pick<JobRecord, "agreed" | "latest">): JobRevisionRecord => agreed ?? latest;

export const benchBuild = (
	job: Pick<JobRecord, "agreed" | "latest">,
): BuildContent => benchRevision(job).content.build;

/** What a job is found by: its number, its customer and the woods in it. */
export function searchTextOf(p: {
	number: number;
	customerName: string;
	content: JobContent;
}): string {
	const { request, design } = p.content.build;
	const woods = new Set([
		request.shaftWood,
		request.buttWood,
		...design.splice.cuts.map(({ wood }) => wood),
	]);
	return searchable(
		[
			p.number,
			p.customerName,
			...[...woods].map((wood) => WOODS[wood].name),
		].join(" "),
	);
}
