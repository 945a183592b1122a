import { z } from "zod";
import { jobDownload } from "@/app/workshop/_parts/job-download";
import { profileDxf } from "@/lib/documents/profile-dxf";

/** The turned outline at full size, for a drawing program or a lathe. */
export const GET = jobDownload(
	z.strictObject({}),
	({ job: { number }, revision: { revision, content } }) => ({
		body: profileDxf({
			title: `JOB ${number} REVISION ${revision}`,
			build: content.build,
		}),
		type: "image/vnd.dxf",
		fileName: `job-profile-${number}-${revision}.dxf`,
	}),
);
