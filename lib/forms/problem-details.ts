import type { z } from "zod";
import type { Refusal } from "@/lib/numerics/outcome";

/** One thing wrong with a request, in the words of RFC 9457's extension members. */
export interface ProblemItem {
	/** JSON Pointer (RFC 6901) to the value in the request, where there is one. */
	readonly pointer?: string;
	readonly field: string;
	readonly code: string;
	readonly value: unknown;
	readonly min?: number;
	readonly max?: number;
	readonly facts?: Readonly<Record<string, number | string>>;
}

/** RFC 9457 problem details. `type` is a relative reference resolved against the document's address. */
export interface ProblemDetails {
	readonly type: string;
	readonly title: string;
	readonly status: number;
	readonly detail: string;
	readonly errors: readonly ProblemItem[];
}

const pointerOf = (path: readonly PropertyKey[]): string =>
	path
		.map((key) => `/${String(key).replaceAll("~", "~0").replaceAll("/", "~1")}`)
		.join("");

const valueAt = (body: unknown, path: readonly PropertyKey[]): unknown => {
	let value = body;
	for (const key of path) {
		if (typeof value !== "object" || value === null) return null;
		value = (value as Record<PropertyKey, unknown>)[key];
	}
	return value ?? null;
};

const numeric = (bound: unknown): number | undefined =>
	typeof bound === "number" || typeof bound === "bigint"
		? Number(bound)
		: undefined;

function itemOf(issue: z.core.$ZodIssue, body: unknown): ProblemItem {
	const base = {
		pointer: pointerOf(issue.path),
		field: issue.path.map(String).join("."),
		code: issue.code as string,
		value: valueAt(body, issue.path),
	};
	switch (issue.code) {
		case "too_small":
			return { ...base, code: "out-of-range", min: numeric(issue.minimum) };
		case "too_big":
			return { ...base, code: "out-of-range", max: numeric(issue.maximum) };
		case "unrecognized_keys":
			return {
				...base,
				code: "unknown-field",
				facts: { fields: issue.keys.join(", ") },
			};
		case "invalid_value":
			return {
				...base,
				code: "not-a-choice",
				facts: { choices: issue.values.join(", ") },
			};
		case "invalid_type":
			return {
				...base,
				code: "wrong-type",
				facts: { expected: issue.expected },
			};
		default:
			return base;
	}
}

const sentence = (items: readonly ProblemItem[]): string =>
	items
		.map(({ field, code, value, min, max, facts }) => {
			const bounds = [
				min === undefined ? "" : `at least ${min}`,
				max === undefined ? "" : `at most ${max}`,
			]
				.filter(Boolean)
				.join(" and ");
			const told = Object.entries(facts ?? {})
				.map(([name, fact]) => `${name} ${fact}`)
				.join(", ");
			return `${field || "body"}: ${code}, got ${JSON.stringify(value)?.slice(0, 80) ?? "nothing"}${bounds && `, allowed ${bounds}`}${told && ` (${told})`}`;
		})
		.join("; ");

/** The request does not have the described shape. */
export function invalidRequest(
	issues: readonly z.core.$ZodIssue[],
	body: unknown,
): ProblemDetails {
	const errors = issues.map((issue) => itemOf(issue, body));
	return {
		type: "/problems/invalid-request",
		title: "The request does not have the described form",
		status: 400,
		detail: sentence(errors),
		errors,
	};
}

/** The request is well formed but a model cannot answer it. */
export function refused(refusals: readonly Refusal[]): ProblemDetails {
	return {
		type: "/problems/refused",
		title: "No model here can answer this",
		status: 422,
		detail: sentence(refusals),
		errors: refusals,
	};
}
