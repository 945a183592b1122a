import "server-only";
import type { NextRequest } from "next/server";
import { z } from "zod";
import { getSpecRevision } from "@/lib/records/specs/loaders";
import { type Download, download, NOT_FOUND } from "./download";
import { contentOf, type SavedSpec } from "./loaders";

const whole = z.string().regex(/^[1-9]\d{0,8}$/);
const addressSchema = z.object({ number: whole, revision: whole });

async function find(address: unknown): Promise<{ spec: SavedSpec } | null> {
	const read = addressSchema.safeParse(address);
	const saved = read.success
		? await getSpecRevision(
				Number(read.data.number),
				Number(read.data.revision),
			)
		: null;
	return saved && { spec: { ...saved, content: contentOf(saved.content) } };
}

/** A route that answers with one file of a saved revision; 404 where there is none. */
export const specDownload = <Query extends z.ZodType>(
	query: Query,
	make: (p: {
		spec: SavedSpec;
		query: z.output<Query>;
		origin: string;
		request: NextRequest;
	}) => Download | Promise<Download>,
) =>
	download<Query, { number: string; revision: string }, { spec: SavedSpec }>({
		query,
		find,
		missing: NOT_FOUND,
		make,
	});
