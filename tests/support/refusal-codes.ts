import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** Typed texts and request bodies have problems of their own, worded elsewhere. */
const NOT_REFUSALS = ["forms", "units", "present"];

/** Text with comments blanked, strings kept, of the same length. */
const withoutComments = (text: string): string =>
	text.replace(
		/("(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`)|\/\*[\s\S]*?\*\/|\/\/[^\n]*/g,
		(all, string: string | undefined) =>
			string === undefined ? all.replace(/[^\n]/g, " ") : all,
	);

/** The body of the innermost braces around a place, with everything nested deeper blanked. */
function ownLevel(text: string, at: number): string {
	let open = at;
	for (let depth = 0; open >= 0; open--) {
		if (text[open] === "}") depth++;
		if (text[open] === "{" && depth-- === 0) break;
	}
	let level = "";
	let depth = 0;
	for (let i = open + 1; i < text.length; i++) {
		const sign = text[i] as string;
		if (depth === 0 && sign === "}") return level;
		if ("}])".includes(sign)) depth--;
		level += depth === 0 ? sign : " ";
		if ("{[(".includes(sign)) depth++;
	}
	throw new RangeError(`unclosed braces at ${at}`);
}

export interface FoundCode {
	readonly code: string;
	readonly file: string;
}

/**
 * Every refusal code written in the source: the strings of a `code` that stands beside a `field`, which
 * no caution, reason or typed problem has, and no `kind` that says it is something else than refused. Codes that come from nowhere to be seen are given as written.
 */
export function refusalCodesIn(file: string, source: string): FoundCode[] {
	const text = withoutComments(source);
	return [...text.matchAll(/[{,;]\s*(?:readonly )?code\s*:\s*/g)].flatMap(
		(match) => {
			const level = ownLevel(
				text,
				match.index + 1 - Number(match[0][0] !== "{"),
			);
			if (!/(^|[,;\s])field\b\s*[:,}]?/.test(level)) return [];
			const kind = /(?:^|[,;\s])kind\s*:\s*"([a-z-]+)"/.exec(level)?.[1];
			if (kind !== undefined && kind !== "refused") return [];
			const written =
				/(?:^|[,;\s])code\s*:\s*([^,;]*)/.exec(level)?.[1]?.trim() ?? "";
			const named = [...written.matchAll(/"([a-z-]+)"/g)].map(
				([, code]) => code as string,
			);
			if (named.length > 0) return named.map((code) => ({ code, file }));
			return /^(string|\w+\.code)$/.test(written)
				? []
				: [{ code: `not a string: ${written}`, file }];
		},
	);
}

/** The refusal codes of everything under a folder. */
export function refusalCodes(folder: string): FoundCode[] {
	return readdirSync(folder, { recursive: true, encoding: "utf8" })
		.filter((name) => /\.tsx?$/.test(name))
		.filter((name) => !NOT_REFUSALS.includes(name.split("/")[0] as string))
		.flatMap((name) =>
			refusalCodesIn(name, readFileSync(join(folder, name), "utf8")),
		);
}
