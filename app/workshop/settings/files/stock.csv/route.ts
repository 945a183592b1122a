import { stockCsv } from "@/lib/documents/settings-files";
import { currentSettings, today } from "@/lib/records/settings/loaders";
import { attachment } from "../../_parts/attachment";

/** The woods at hand as a table. */
export async function GET(): Promise<Response> {
	const { stock } = await currentSettings();
	return attachment({
		body: stockCsv(stock),
		type: "text/csv; charset=utf-8; header=present",
		fileName: `woods-${today()}.csv`,
	});
}
