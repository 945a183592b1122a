import { z } from "zod";
import { jobDownload } from "@/app/workshop/_parts/job-download";
import { jobJson } from "@/lib/documents/job-json";

/** What the bench builds by, for another program; its schema is /api/v1/job.schema.json. */
export const GET = jobDownload(
	z.strictObject({}),
	({ job, revision, origin }) => {
		const { number, state, dueOn, isDemo, revisions } = job;
		const { contentSha256, content, createdAt } = revision;
		const agreement = revisions.find(
			(one) => one.agreement?.contentSha256 === contentSha256,
		)?.agreement;
		return {
			body: jobJson({
				origin,
				address: `${origin}/workshop/${number}`,
				number,
				revision: revision.revision,
				state,
				dueOn,
				writtenAt: createdAt,
				agreedAt: agreement?.agreedAt ?? null,
				isInvented: isDemo,
				contentSha256,
				content,
			}),
			type: "application/json",
			fileName: `job-${number}-${revision.revision}.json`,
		};
	},
);
