import type { z } from "zod";
import {
	invalidRequest,
	type ProblemDetails,
	refused,
} from "@/lib/forms/problem-details";
import type { Outcome } from "@/lib/numerics/outcome";
import { readLimited } from "./read-limited";

/** Far above any sensible request; keeps a flood of text out of the parser. */
const MAX_BODY_BYTES = 64 * 1024;

const problem = (details: ProblemDetails): Response =>
	Response.json(details, {
		status: details.status,
		headers: { "content-type": "application/problem+json" },
	});

const unreadable = (
	status: number,
	slug: string,
	title: string,
	detail: string,
): Response =>
	problem({ type: `/problems/${slug}`, title, status, detail, errors: [] });

/** A JSON computation: body through the schema, computation, result or RFC 9457 problem. */
export function endpoint<Schema extends z.ZodType, Result>(
	schema: Schema,
	compute: (
		input: z.output<Schema>,
	) => Outcome<Result> | Promise<Outcome<Result>>,
): (request: Request) => Promise<Response> {
	return async (request) => {
		const text = await readLimited(request, MAX_BODY_BYTES);
		if (text === null)
			return unreadable(
				413,
				"too-large",
				"The request is too large",
				`At most ${MAX_BODY_BYTES} bytes are read.`,
			);
		let body: unknown;
		try {
			body = JSON.parse(text);
		} catch {
			return unreadable(
				400,
				"not-json",
				"The request is not JSON",
				"Send one JSON object with content-type application/json.",
			);
		}
		const parsed = schema.safeParse(body);
		if (!parsed.success)
			return problem(invalidRequest(parsed.error.issues, body));
		const outcome = await compute(parsed.data);
		return outcome.ok
			? Response.json(outcome.value)
			: problem(refused(outcome.refusals));
	};
}
