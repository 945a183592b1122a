import "server-only";
import { type JobSheetStanding, jobSheetHead } from "@/lib/present/sheet-head";
import { benchRevision, type JobRecord } from "@/lib/records/jobs/data";
import { currentSettings } from "@/lib/records/settings/loaders";
import type { Reader } from "@/lib/words/reader";

/** The name of the paper's revision in the address that its code says. */
export const PAPER_PARAM = "sheet";

/**
 * What stands on a job's sheet, on screen and on paper: the revision the bench builds by. `origin` is null
 * where no host is known.
 */
export async function sheetFrame(
	job: JobRecord,
	reader: Reader,
	origin: string | null,
) {
	const { header, stock } = await currentSettings();
	const { number } = job;
	const { revision, content, createdAt, contentSha256 } = benchRevision(job);
	const { build, extras } = content;
	const agreement = job.revisions.find(
		(one) => one.agreement?.contentSha256 === contentSha256,
	)?.agreement;
	return {
		build,
		atHand: { extras, stock },
		header,
		head: jobSheetHead(
			{
				number,
				revision,
				customerName: job.customerName || reader.say("job.erased"),
				dueOn: job.dueOn,
				writtenAt: createdAt,
				agreed: agreement
					? {
							name: agreement.agreedName || reader.say("job.erased"),
							at: agreement.agreedAt,
						}
					: null,
				standing: standingOf(job),
				modelVersion: build.modelVersion,
				workshop: header,
			},
			reader,
		),
		address:
			origin === null
				? null
				: `${origin}/workshop/${number}?${PAPER_PARAM}=${revision}`,
	};
}

function standingOf({
	state,
	agreed,
	isAgreed,
	latest,
}: JobRecord): JobSheetStanding {
	if (state === "cancelled") return { may: "not", because: "cancelled" };
	if (agreed === null) return { may: "not", because: "not-agreed" };
	return isAgreed
		? { may: "build" }
		: { may: "ask", laterRevision: latest.revision };
}
