import "server-only";
import { createHash } from "node:crypto";
import type { NextRequest } from "next/server";
import { z } from "zod";
import {
	invalidRequest,
	type ProblemDetails,
} from "@/lib/forms/problem-details";
import { getSpecRevision } from "@/lib/records/specs/loaders";
import { contentOf, type SavedSpec, type SpecParams } from "./loaders";
import { publicAddress } from "./public-address";

export interface Download {
	readonly body: string | Uint8Array<ArrayBuffer>;
	readonly type: string;
	readonly fileName: string;
	/** Shown by the browser where it can; otherwise kept as a file. */
	readonly isShown?: boolean;
	/**
	 * Default true: the browser may keep it and asks each time whether it is still the one. False for
	 * what is written anew, byte for byte different, each time.
	 */
	readonly isKept?: boolean;
}

const whole = z.string().regex(/^[1-9]\d{0,8}$/);
const addressSchema = z.object({ number: whole, revision: whole });

/**
 * A route that answers with one file of a saved revision: 404 where there is none, 400 with problem
 * details for a query that is not as described.
 */
export function specDownload<Query extends z.ZodType>(
	querySchema: Query,
	make: (p: {
		spec: SavedSpec;
		query: z.output<Query>;
		origin: string;
		request: NextRequest;
	}) => Download | Promise<Download>,
): (request: NextRequest, context: SpecParams) => Promise<Response> {
	return async (request, { params }) => {
		const given = queryOf(request.nextUrl.searchParams);
		const query = querySchema.safeParse(given);
		if (!query.success)
			return problem(invalidRequest(query.error.issues, given));
		const origin = await publicAddress(request.headers);
		if (origin === null) return problem(NO_HOST);
		const address = addressSchema.safeParse(await params);
		const saved = address.success
			? await getSpecRevision(
					Number(address.data.number),
					Number(address.data.revision),
				)
			: null;
		if (saved === null) return problem(NOT_FOUND);
		const spec = { ...saved, content: contentOf(saved.content) };
		return answer(
			request,
			await make({ spec, query: query.data, origin, request }),
		);
	};
}

/** A name given twice becomes a list, which no schema here takes. */
export const queryOf = (
	searchParams: URLSearchParams,
): Record<string, unknown> =>
	Object.fromEntries(
		[...new Set(searchParams.keys())].map((name) => {
			const values = searchParams.getAll(name);
			return [name, values.length === 1 ? values[0] : values];
		}),
	);

export function answer(
	request: NextRequest,
	{ body, type, fileName, isShown = false, isKept = true }: Download,
): Response {
	const described = {
		"content-type": type,
		"content-disposition": `${isShown ? "inline" : "attachment"}; filename="${fileName}"`,
	};
	if (!isKept)
		return new Response(body, {
			headers: { ...described, "cache-control": "private, no-store" },
		});
	const etag = `"${createHash("sha256").update(body).digest("hex").slice(0, 32)}"`;
	const kept = { etag, "cache-control": "private, no-cache" };
	const known = request.headers
		.get("if-none-match")
		?.split(",")
		.map((one) => one.trim().replace(/^W\//, ""));
	if (known?.some((one) => one === etag || one === "*"))
		return new Response(null, { status: 304, headers: kept });
	return new Response(body, { headers: { ...described, ...kept } });
}

export const problem = (details: ProblemDetails): Response =>
	Response.json(details, {
		status: details.status,
		headers: {
			"content-type": "application/problem+json",
			"cache-control": "no-store",
		},
	});

export const NOT_FOUND: ProblemDetails = {
	type: "/problems/not-found",
	title: "There is no such spec revision",
	status: 404,
	detail: "No saved revision has this number.",
	errors: [],
};

export const NO_HOST: ProblemDetails = {
	type: "/problems/no-host",
	title: "The request does not name the host it is for",
	status: 400,
	detail: "Send a Host header with a host name and an optional port.",
	errors: [],
};
