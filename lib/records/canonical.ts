import "server-only";
import { createHash } from "node:crypto";

/**
 * JSON with the members of every object in the order of their names, so that equal content has equal
 * text. Throws where JSON would silently lose something: NaN, an infinity, a function, a lone undefined.
 */
export function canonicalJson(value: unknown, path = "content"): string {
	if (value === null || typeof value === "string" || typeof value === "boolean")
		return JSON.stringify(value);
	if (typeof value === "number") {
		if (!Number.isFinite(value))
			throw new TypeError(`${path} is ${value}, which JSON cannot hold`);
		return JSON.stringify(value);
	}
	if (Array.isArray(value))
		return `[${value.map((item, i) => canonicalJson(item, `${path}[${i}]`)).join(",")}]`;
	if (typeof value === "object" && isPlain(value)) {
		const members = Object.entries(value)
			.filter(([, member]) => member !== undefined)
			.sort(([a], [b]) => (a < b ? -1 : 1))
			.map(
				([name, member]) =>
					`${JSON.stringify(name)}:${canonicalJson(member, `${path}.${name}`)}`,
			);
		return `{${members.join(",")}}`;
	}
	throw new TypeError(`${path} is a ${typeof value}, which JSON cannot hold`);
}

function isPlain(value: object): boolean {
	const prototype: unknown = Object.getPrototypeOf(value);
	return prototype === Object.prototype || prototype === null;
}

/** SHA-256 of the canonical JSON, in hexadecimal. */
export const contentSha256 = (content: unknown): string =>
	createHash("sha256").update(canonicalJson(content)).digest("hex");
