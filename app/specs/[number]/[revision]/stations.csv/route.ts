import { z } from "zod";
import { stationsCsv } from "@/lib/documents/stations-csv";
import { buildFromSpec } from "@/lib/workshop/job-content";
import { specDownload } from "../../../_parts/spec-download";

/** The diameters at stations, for a spreadsheet. */
export const GET = specDownload(z.strictObject({}), ({ spec }) => ({
	body: stationsCsv(buildFromSpec(spec.content)),
	type: "text/csv; charset=utf-8; header=present",
	fileName: `stations-${spec.number}-${spec.revision}.csv`,
}));
