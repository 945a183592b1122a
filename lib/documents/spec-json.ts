import type { SpecContent } from "@/lib/advice/spec";
import { SPEC_FORMAT_VERSION, SPEC_SCHEMA_PATH } from "./spec-schema";

/** A saved revision, and the app's address that it was fetched under. */
export interface SpecExport {
	readonly origin: string;
	readonly address: string;
	readonly number: number;
	readonly revision: number;
	readonly fittingNumber: number;
	readonly savedAt: Date;
	readonly isInvented: boolean;
	readonly contentSha256: string;
	readonly content: SpecContent;
}

/** A saved revision for other programs, by the schema of spec-schema.ts. Holds no name of a person. */
export function specJson({
	origin,
	savedAt,
	content,
	...spec
}: SpecExport): string {
	return `${JSON.stringify(
		{
			$schema: `${origin}${SPEC_SCHEMA_PATH}`,
			format: "cue-spec",
			formatVersion: SPEC_FORMAT_VERSION,
			...spec,
			savedAt: savedAt.toISOString(),
			spec: content,
		},
		null,
		"\t",
	)}\n`;
}
