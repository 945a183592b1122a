import type { NextRequest } from "next/server";
import { readerOfRequest } from "@/app/_ui/preferences/loaders";
import { PAPERS, type PaperId } from "@/lib/documents/gauge-layout";
import { renderRingGauge } from "@/lib/documents/gauge-pdf";
import { currentSettings } from "@/lib/records/settings/loaders";

const isPaper = (text: string): text is PaperId => Object.hasOwn(PAPERS, text);

/** The printed ring gauge: `?paper=a4` or `?paper=letter`, by default as the workshop has set it. */
export async function GET(request: NextRequest): Promise<Response> {
	const paper =
		new URL(request.url).searchParams.get("paper") ??
		(await currentSettings()).header.paper;
	if (!isPaper(paper))
		return new Response(
			`paper: got ${JSON.stringify(paper.slice(0, 40))}; it can be ${Object.keys(PAPERS).join(" or ")}\n`,
			{ status: 400, headers: { "content-type": "text/plain; charset=utf-8" } },
		);
	return new Response(
		await renderRingGauge(paper, await readerOfRequest(request)),
		{
			headers: {
				"content-type": "application/pdf",
				"content-disposition": `inline; filename="ring-gauge-${paper}.pdf"`,
			},
		},
	);
}
