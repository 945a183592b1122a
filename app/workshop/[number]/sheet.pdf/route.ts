import { readerOfRequest } from "@/app/_ui/preferences/loaders";
import { jobDownload } from "@/app/workshop/_parts/job-download";
import { sheetFrame } from "@/app/workshop/_parts/job-sheet";
import { jobCode } from "@/lib/documents/job-code";
import { sheetPdf } from "@/lib/documents/sheet-pdf";
import { sheetQuerySchema } from "@/lib/forms/sheet-query";
import { inSystem } from "@/lib/words/reader";

/** The sheet of what the bench builds by, for its printer. */
export const GET = jobDownload(
	sheetQuerySchema,
	async ({ job, revision, query, origin, request }) => {
		const chosen = await readerOfRequest(request);
		const reader = inSystem(chosen, query.units ?? chosen.system);
		const { header, address, ...sheet } = await sheetFrame(job, reader, origin);
		const pdf = await sheetPdf({
			...sheet,
			isInvented: job.isDemo,
			reader,
			code: jobCode(address ?? origin),
			paper: query.paper ?? header.paper,
		});
		return {
			body: new Uint8Array(pdf),
			type: "application/pdf",
			fileName: `job-sheet-${job.number}-${revision.revision}.pdf`,
			isShown: true,
			isKept: false,
		};
	},
);
