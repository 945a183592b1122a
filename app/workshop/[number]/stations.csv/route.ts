import { z } from "zod";
import { jobDownload } from "@/app/workshop/_parts/job-download";
import { stationsCsv } from "@/lib/documents/stations-csv";

/** The diameters at stations, for a spreadsheet. */
export const GET = jobDownload(
	z.strictObject({}),
	({ job: { number }, revision: { revision, content } }) => ({
		body: stationsCsv(content.build),
		type: "text/csv; charset=utf-8; header=present",
		fileName: `job-stations-${number}-${revision}.csv`,
	}),
);
