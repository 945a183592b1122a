import { z } from "zod";
import { advise } from "@/lib/advice/advise";
import { type SpecContent, specFrom } from "@/lib/advice/spec";
import { answersSchema, readAnswers } from "@/lib/forms/answers";
import { must } from "@/lib/numerics/outcome";
import { canonicalJson } from "@/lib/records/canonical";
import type { DatabaseTransaction } from "@/lib/records/database";
import { searchTextOf } from "@/lib/records/jobs/data";
import { addEvent, stored } from "@/lib/records/jobs/edit";
import { takeNumber } from "@/lib/records/numbers";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import {
	buildFromSpec,
	type JobContent,
	withBillets,
} from "@/lib/workshop/job-content";
import { NO_EXTRAS } from "@/lib/workshop/job-extras";
import { jobPrice } from "@/lib/workshop/job-price";
import { startingQuote } from "@/lib/workshop/quote";
import jobs from "./jobs.json";

const jobsSchema = z.strictObject({
	about: z.string(),
	jobs: z.array(
		z.strictObject({
			id: z.string(),
			fittingId: z.string(),
			contact: z.string(),
			notes: z.string(),
			dueOn: z.iso.date().nullable(),
			by: z.string(),
			quote: z
				.strictObject({
					priceMinor: z.int(),
					validUntil: z.iso.date(),
					note: z.string(),
				})
				.nullable(),
			agreed: z.boolean(),
		}),
	),
});

/** A fitting of the invented club, as the seed has just stored it. */
export interface DemoFitting {
	readonly id: string;
	readonly answers: z.input<typeof answersSchema>;
	readonly player: { readonly id: string; readonly name: string };
	readonly at: Date;
}

export type DemoJob = z.output<typeof jobsSchema>["jobs"][number] & {
	readonly fitting: DemoFitting;
	readonly spec: SpecContent;
	readonly asked: JobContent;
	/** Null where nothing was quoted. */
	readonly quoted: JobContent | null;
};

const MINUTE_MS = 60_000;

/** The invented jobs with all their numbers worked out, before anything is stored. */
export function readDemoJobs(fittings: readonly DemoFitting[]): DemoJob[] {
	return jobsSchema.parse(jobs).jobs.map((job) => {
		const fitting = fittings.find(({ id }) => id === job.fittingId);
		if (fitting === undefined)
			throw new Error(`no ${job.fittingId} in the seed`);
		const { input } = readAnswers(answersSchema.parse(fitting.answers));
		const spec = must(specFrom(must(advise(input)), null));
		const build = withBillets(buildFromSpec(spec));
		const { prices } = DEFAULT_SETTINGS;
		const price = must(jobPrice({ prices, build, extras: NO_EXTRAS }));
		const asked: JobContent = {
			schemaVersion: 1,
			build,
			extras: NO_EXTRAS,
			price,
			quote: null,
			settingVersions: {},
		};
		const today = fitting.at.toISOString().slice(0, 10);
		return {
			...job,
			fitting,
			spec,
			asked,
			quoted: job.quote && {
				...asked,
				quote: { ...startingQuote({ price, prices, today }), ...job.quote },
			},
		};
	});
}

/** Stores an invented spec and the job that came of it, marked so, an hour after the fitting. */
export async function seedDemoJob(
	transaction: DatabaseTransaction,
	job: DemoJob,
): Promise<void> {
	const { id, fitting, by, quoted, asked } = job;
	const { player } = fitting;
	const minute = (count: number) =>
		new Date(fitting.at.getTime() + count * MINUTE_MS);
	const spec = await transaction.spec.create({
		data: {
			id: `${id}-spec`,
			fittingId: fitting.id,
			number: await takeNumber(transaction, "spec"),
			createdAt: minute(1),
			revisions: {
				create: {
					id: `${id}-spec-1`,
					revision: 1,
					content: JSON.parse(canonicalJson(job.spec)),
					contentSha256: stored(job.spec).contentSha256,
					reason: "",
					requestKey: `${id}-spec-1`,
					createdAt: minute(1),
				},
			},
		},
	});
	await transaction.fitting.update({
		where: { id: fitting.id },
		data: { finishedAt: minute(1), updatedAt: fitting.at },
	});
	const number = await takeNumber(transaction, "job");
	const state = job.agreed ? "on-the-bench" : quoted ? "quoted" : "asked";
	await transaction.job.create({
		data: {
			id,
			number,
			state,
			stateSince: minute(job.agreed ? 40 : 10),
			playerId: player.id,
			specRevisionId: `${spec.id}-1`,
			customerName: player.name,
			customerContact: job.contact,
			searchText: searchTextOf({
				number,
				customerName: player.name,
				content: asked,
			}),
			dueOn: job.dueOn,
			notes: job.notes,
			requestKey: id,
			isDemo: true,
			createdAt: minute(10),
			updatedAt: minute(40),
		},
	});
	const revision = (content: JobContent, count: number) =>
		transaction.jobRevision.create({
			data: {
				...stored(content),
				id: `${id}-${count}`,
				jobId: id,
				revision: count,
				reason: "",
				by,
				requestKey: `${id}-${count}`,
				createdAt: minute(10 * count),
			},
		});
	const event = (
		given: Omit<Parameters<typeof addEvent>[1], "jobId" | "requestKey">,
		count: number,
	) =>
		addEvent(transaction, {
			...given,
			jobId: id,
			requestKey: `${id}-event-${count}`,
			createdAt: minute(10 * count),
		});
	await revision(asked, 1);
	await event({ kind: "opened", toState: "asked", by }, 1);
	if (quoted === null) return;
	await revision(quoted, 2);
	await event(
		{
			kind: "quoted",
			fromState: "asked",
			toState: "quoted",
			by,
			facts: { revision: 2 },
		},
		2,
	);
	if (!job.agreed) return;
	await transaction.agreement.create({
		data: {
			id: `${id}-agreement`,
			jobRevisionId: `${id}-2`,
			contentSha256: stored(quoted).contentSha256,
			agreedName: player.name,
			via: "page",
			requestKey: `${id}-agreement`,
			agreedAt: minute(30),
		},
	});
	await event(
		{
			kind: "agreed",
			fromState: "quoted",
			toState: "agreed",
			by: player.name,
			facts: { revision: 2, via: "page" },
		},
		3,
	);
	await event(
		{ kind: "moved", fromState: "agreed", toState: "on-the-bench", by },
		4,
	);
}
