import { z } from "zod";
import { profileDxf } from "@/lib/documents/profile-dxf";
import { buildFromSpec } from "@/lib/workshop/job-content";
import { specDownload } from "../../../_parts/spec-download";

/** The turned outline at full size, for a drawing program or a lathe. */
export const GET = specDownload(z.strictObject({}), ({ spec }) => ({
	body: profileDxf({
		title: `SPEC ${spec.number} REVISION ${spec.revision}`,
		build: buildFromSpec(spec.content),
	}),
	type: "image/vnd.dxf",
	fileName: `profile-${spec.number}-${spec.revision}.dxf`,
}));
