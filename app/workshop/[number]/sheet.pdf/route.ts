import { readerOfRequest } from "@/app/_ui/preferences/loaders";
import { jobDownload } from "@/app/workshop/_parts/job-download";
import { sheetFrame } from "@/app/workshop/_parts/job-sheet";
import { jobCode } from "@/lib/documents/job-code";
import { sheetPdf } from "@/lib/documents/sheet-pdf";
import { sheetQuerySchema } from "@/lib/forms/sheet-query";
import { inSystem } from "@/lib/words/reader";

/** The sheet of a job's latest revision, for the bench's printer. */
export const GET = jobDownload(
	sheetQuerySchema,
	async ({ job, query, origin, request }) => {
		const chosen = await readerOfRequest(request);
		const reader = inSystem(chosen, query.units ?? chosen.system);
		const { head, header, build } = await sheetFrame(job, reader, origin);
		const pdf = await sheetPdf({
			head,
			isInvented: job.isDemo,
			build,
			reader,
			code: jobCode(`${origin}/workshop/${job.number}`),
			paper: query.paper ?? header.paper,
		});
		return {
			body: new Uint8Array(pdf),
			type: "application/pdf",
			fileName: `job-sheet-${job.number}.pdf`,
			isShown: true,
			isKept: false,
		};
	},
);
