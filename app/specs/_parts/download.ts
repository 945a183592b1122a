import "server-only";
import { createHash } from "node:crypto";
import type { NextRequest } from "next/server";
import type { z } from "zod";
import {
	invalidRequest,
	type ProblemDetails,
} from "@/lib/forms/problem-details";
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

/**
 * A route that answers with one file of what an address names: the problem given as `missing` where
 * there is nothing, 400 with problem details for a query that is not as described.
 */
export function download<
	Query extends z.ZodType,
	Address,
	Found extends object,
>({
	query: querySchema,
	find,
	missing,
	make,
}: {
	query: Query;
	find: (address: Address) => Promise<Found | null>;
	missing: ProblemDetails;
	make: (
		p: Found & {
			query: z.output<Query>;
			origin: string;
			request: NextRequest;
		},
	) => Download | Promise<Download>;
}): (
	request: NextRequest,
	context: { readonly params: Promise<Address> },
) => Promise<Response> {
	return async (request, { params }) => {
		const given = queryOf(request.nextUrl.searchParams);
		const query = querySchema.safeParse(given);
		if (!query.success)
			return problem(invalidRequest(query.error.issues, given));
		const origin = await publicAddress(request.headers);
		if (origin === null) return problem(NO_HOST);
		const found = await find(await params);
		return found === null
			? problem(missing)
			: answer(
					request,
					await make({ ...found, query: query.data, origin, request }),
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
