import "server-only";
import type { NextRequest } from "next/server";
import type { z } from "zod";
import {
	type Download,
	download,
	NOT_FOUND,
} from "@/app/specs/_parts/download";
import {
	benchRevision,
	type JobRecord,
	type JobRevisionRecord,
} from "@/lib/records/jobs/data";
import { getJob } from "@/lib/records/jobs/loaders";
import { WHOLE } from "./loaders";

interface JobFile {
	readonly job: JobRecord;
	/** What the bench builds by. */
	readonly revision: JobRevisionRecord;
}

async function find({ number }: { number: string }): Promise<JobFile | null> {
	const job = WHOLE.test(number) ? await getJob(Number(number)) : null;
	return job && { job, revision: benchRevision(job) };
}

/** A route that answers with one file of what the bench builds by; 404 where there is no such job. */
export const jobDownload = <Query extends z.ZodType>(
	query: Query,
	make: (
		p: JobFile & {
			query: z.output<Query>;
			origin: string;
			request: NextRequest;
		},
	) => Download | Promise<Download>,
) =>
	download<Query, { number: string }, JobFile>({
		query,
		find,
		missing: {
			...NOT_FOUND,
			title: "There is no such job",
			detail: "No job has this number.",
		},
		make,
	});
