import type { JobContent } from "@/lib/workshop/job-content";
import type { JobState } from "@/lib/workshop/job-state";
import { JOB_FORMAT_VERSION, JOB_SCHEMA_PATH } from "./job-schema";

/** A revision of a job, and the app's address that it was fetched under. */
export interface JobExport {
	readonly origin: string;
	readonly address: string;
	readonly number: number;
	readonly revision: number;
	readonly state: JobState;
	/** ISO date. */
	readonly dueOn: string | null;
	readonly writtenAt: Date;
	readonly agreedAt: Date | null;
	readonly isInvented: boolean;
	readonly contentSha256: string;
	readonly content: JobContent;
}

/** A job for other programs, by the schema of job-schema.ts. Holds no name of a person. */
export function jobJson({
	origin,
	writtenAt,
	agreedAt,
	content,
	...job
}: JobExport): string {
	return `${JSON.stringify(
		{
			$schema: `${origin}${JOB_SCHEMA_PATH}`,
			format: "cue-job",
			formatVersion: JOB_FORMAT_VERSION,
			...job,
			writtenAt: writtenAt.toISOString(),
			agreedAt: agreedAt?.toISOString() ?? null,
			job: content,
		},
		null,
		"\t",
	)}\n`;
}
