import Ajv2020 from "ajv/dist/2020";

/**
 * The same schema with every object closed: what it does not describe is an error. The search is told
 * in outline only and stays open.
 */
export function closed(node: unknown): unknown {
	if (Array.isArray(node)) return node.map(closed);
	if (typeof node !== "object" || node === null) return node;
	const parts = Object.fromEntries(
		Object.entries(node).map(([name, value]) => [
			name,
			name === "search" ? value : closed(value),
		]),
	);
	return typeof parts.properties === "object" && parts.type === "object"
		? { ...parts, additionalProperties: false }
		: parts;
}

/** What a validator found wrong, one line each. */
export const told = (validate: ReturnType<typeof validator>): string[] =>
	(validate.errors ?? []).map(
		({ instancePath, params }) => `${instancePath} ${JSON.stringify(params)}`,
	);

/** A general-purpose validator of JSON Schema, draft 2020-12, in its strict mode. */
export const validator = (of: unknown) =>
	new Ajv2020({
		strict: true,
		allowUnionTypes: true,
		allErrors: true,
	}).compile(JSON.parse(JSON.stringify(of)));
