import type { NextRequest } from "next/server";
import { readerOfRequest } from "@/app/_ui/preferences/loaders";
import {
	answer,
	NOT_FOUND,
	problem,
	queryOf,
} from "@/app/specs/_parts/download";
import { summaryPdf } from "@/lib/documents/summary-pdf";
import { invalidRequest } from "@/lib/forms/problem-details";
import { sheetQuerySchema } from "@/lib/forms/sheet-query";
import { currentSettings } from "@/lib/records/settings/loaders";
import { inSystem } from "@/lib/words/reader";
import { summaryOf } from "../../_parts/summary";

/** The player's summary for the printer or the mail. */
export async function GET(
	request: NextRequest,
	{ params }: { params: Promise<{ number: string }> },
): Promise<Response> {
	const given = queryOf(request.nextUrl.searchParams);
	const query = sheetQuerySchema.safeParse(given);
	if (!query.success) return problem(invalidRequest(query.error.issues, given));
	const chosen = await readerOfRequest(request);
	const reader = inSystem(chosen, query.data.units ?? chosen.system);
	const { number } = await params;
	const summary = await summaryOf(number, reader);
	const words = {
		title: reader.say("summary.refused"),
		detail: reader.say("summary.none"),
	};
	if (summary === null) return problem({ ...NOT_FOUND, ...words });
	if (!summary.ok)
		return problem({
			type: "/problems/no-summary",
			status: 409,
			title: words.title,
			detail: summary.messages.join(" "),
			errors: [],
		});
	const { header } = await currentSettings();
	const pdf = await summaryPdf({
		head: summary.head,
		view: summary.view,
		isInvented: summary.fitting.isDemo,
		reader,
		paper: query.data.paper ?? header.paper,
	});
	return answer(request, {
		body: new Uint8Array(pdf),
		type: "application/pdf",
		fileName: `summary-${number}.pdf`,
		isShown: true,
		isKept: false,
	});
}
