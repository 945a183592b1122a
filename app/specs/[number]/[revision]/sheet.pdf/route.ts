import { readerOfRequest } from "@/app/_ui/preferences/loaders";
import { jobCode } from "@/lib/documents/job-code";
import { sheetPdf } from "@/lib/documents/sheet-pdf";
import { sheetQuerySchema } from "@/lib/forms/sheet-query";
import { sheetHead } from "@/lib/present/sheet-head";
import { currentSettings } from "@/lib/records/settings/loaders";
import { inSystem } from "@/lib/words/reader";
import { buildFromSpec, withBillets } from "@/lib/workshop/job-content";
import { NO_EXTRAS } from "@/lib/workshop/job-extras";
import { jobAddress } from "../../../_parts/job-address";
import { specDownload } from "../../../_parts/spec-download";

/** The job sheet of a saved revision, for the bench's printer. */
export const GET = specDownload(
	sheetQuerySchema,
	async ({ spec, query, origin, request }) => {
		const { number, revision, latestRevision, fitting, content, createdAt } =
			spec;
		const chosen = await readerOfRequest(request);
		const { header, stock } = await currentSettings();
		const reader = inSystem(chosen, query.units ?? chosen.system);
		const pdf = await sheetPdf({
			head: sheetHead(
				{
					number,
					revision,
					latestRevision,
					fittingNumber: fitting.number,
					playerName: fitting.player.name,
					savedAt: createdAt,
					modelVersion: content.modelVersion,
					workshop: header,
				},
				reader,
			),
			isInvented: fitting.isDemo,
			build: withBillets(buildFromSpec(content)),
			atHand: { extras: NO_EXTRAS, stock },
			reader,
			code: jobCode(jobAddress({ origin, number, revision })),
			paper: query.paper ?? header.paper,
		});
		return {
			body: new Uint8Array(pdf),
			type: "application/pdf",
			fileName: `job-sheet-${number}-${revision}.pdf`,
			isShown: true,
			isKept: false,
		};
	},
);
