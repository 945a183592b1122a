import "server-only";
import { z } from "zod";

/** How many rows a list gives unless told, and at most. */
export const PAGE_ROWS = { usual: 50, max: 200 } as const;

export interface ListRequest {
	/** Parts of the player's name, in any order. */
	readonly search?: string;
	/** Rows wanted, 1 to 200. */
	readonly limit?: number;
	/** The `next` of the page before. */
	readonly after?: string;
}

const cursorSchema = z.tuple([z.string(), z.string()]);

/** Where a page ended: the value it is ordered by, and the row's id for ties. */
export const cursorAt = (value: string, id: string): string =>
	Buffer.from(JSON.stringify([value, id])).toString("base64url");

/** Throws a RangeError for text that no list gave out. */
export function readCursor(after: string): { value: string; id: string } {
	try {
		const [value, id] = cursorSchema.parse(
			JSON.parse(Buffer.from(after, "base64url").toString("utf8")),
		);
		return { value, id };
	} catch (cause) {
		throw new RangeError(`after is not the end of a page: ${after}`, { cause });
	}
}

export function rowsWanted(limit: number | undefined): number {
	const rows = limit ?? PAGE_ROWS.usual;
	if (!Number.isInteger(rows) || rows < 1 || rows > PAGE_ROWS.max)
		throw new RangeError(
			`limit must be 1 to ${PAGE_ROWS.max} rows, got ${rows}`,
		);
	return rows;
}
