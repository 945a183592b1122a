import { pricesCsv } from "@/lib/documents/settings-files";
import { currentSettings, today } from "@/lib/records/settings/loaders";
import { attachment } from "../../_parts/attachment";

/** The price list in force as a table. */
export async function GET(): Promise<Response> {
	const { prices } = await currentSettings();
	return attachment({
		body: pricesCsv(prices),
		type: "text/csv; charset=utf-8; header=present",
		fileName: `price-list-${today()}.csv`,
	});
}
