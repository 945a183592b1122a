import type { CitationId } from "./citations";
import type { SourcedConstant, Standing } from "./estimate";

/** A published constant, unless `standing` says otherwise. */
export const sourced = (p: {
	value: number;
	unit: string;
	sd?: number;
	standing?: Standing;
	source: CitationId;
	locator: string;
	fromMemory?: boolean;
}): SourcedConstant => ({
	value: p.value,
	unit: p.unit,
	sd: p.sd ?? 0,
	standing: p.standing ?? "published",
	source: p.source,
	locator: p.locator,
	fromMemory: p.fromMemory ?? false,
});

/** A figure of the trade or of this project without a published source. */
export const customary = (p: {
	value: number;
	unit: string;
	sd?: number;
	locator: string;
}): SourcedConstant =>
	sourced({
		...p,
		standing: "common-practice",
		source: "common-practice",
		fromMemory: true,
	});
