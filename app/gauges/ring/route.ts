import { PAPERS, type PaperId } from "@/lib/documents/gauge-layout";
import { renderRingGauge } from "@/lib/documents/gauge-pdf";

const isPaper = (text: string): text is PaperId => Object.hasOwn(PAPERS, text);

/** The printed ring gauge: `?paper=a4` (the default) or `?paper=letter`. */
export async function GET(request: Request): Promise<Response> {
	const paper = new URL(request.url).searchParams.get("paper") ?? "a4";
	if (!isPaper(paper))
		return new Response(
			`paper: got ${JSON.stringify(paper.slice(0, 40))}; it can be ${Object.keys(PAPERS).join(" or ")}\n`,
			{ status: 400, headers: { "content-type": "text/plain; charset=utf-8" } },
		);
	return new Response(await renderRingGauge(paper), {
		headers: {
			"content-type": "application/pdf",
			"content-disposition": `inline; filename="ring-gauge-${paper}.pdf"`,
		},
	});
}
