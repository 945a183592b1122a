import { originOf } from "@/app/specs/_parts/job-address";
import { settingsJson } from "@/lib/documents/settings-files";
import { settingsToExport, today } from "@/lib/records/settings/loaders";
import { attachment } from "../../_parts/attachment";

/** All settings in one file, to be brought in elsewhere. */
export async function GET(request: Request): Promise<Response> {
	const exportedOn = today();
	return attachment({
		body: settingsJson({
			settings: await settingsToExport(exportedOn),
			origin: originOf(request.headers) ?? "",
			exportedOn,
		}),
		type: "application/json; charset=utf-8",
		fileName: `workshop-settings-${exportedOn}.json`,
	});
}
