import { z } from "zod";
import { specJson } from "@/lib/documents/spec-json";
import { jobAddress } from "../../../_parts/job-address";
import { specDownload } from "../../../_parts/spec-download";

/** Everything that was saved, for another program; its schema is /api/v1/spec.schema.json. */
export const GET = specDownload(z.strictObject({}), ({ spec, origin }) => {
	const { number, revision, fitting, createdAt, contentSha256, content } = spec;
	return {
		body: specJson({
			origin,
			address: jobAddress({ origin, number, revision }),
			number,
			revision,
			fittingNumber: fitting.number,
			savedAt: createdAt,
			isInvented: fitting.isDemo,
			contentSha256,
			content,
		}),
		type: "application/json",
		fileName: `spec-${number}-${revision}.json`,
	};
});
