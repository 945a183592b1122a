import "server-only";
import { jobCode } from "@/lib/documents/job-code";
import { jobSheetHead } from "@/lib/present/sheet-head";
import type { JobRecord } from "@/lib/records/jobs/data";
import { currentSettings } from "@/lib/records/settings/loaders";
import type { Reader } from "@/lib/words/reader";

/** What stands round a job's sheet, on screen and on paper. `origin` is null where no host is known. */
export async function sheetFrame(
	job: JobRecord,
	reader: Reader,
	origin: string | null,
) {
	const { header } = await currentSettings();
	const { latest, number } = job;
	const { build } = latest.content;
	return {
		build,
		header,
		head: jobSheetHead(
			{
				number,
				revision: latest.revision,
				customerName: job.customerName || reader.say("job.erased"),
				writtenAt: latest.createdAt,
				modelVersion: build.modelVersion,
				isAgreed: job.isAgreed,
				workshop: header,
			},
			reader,
		),
		code: origin === null ? null : jobCode(`${origin}/workshop/${number}`),
	};
}
