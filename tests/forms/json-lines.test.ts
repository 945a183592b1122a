import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readJsonLines } from "@/lib/forms/json-lines";

const TEXT = `{
	"a": 1,
	"b": [
		{ "c": "x" },

		{ "c": null }
	]
}`;

describe("lines", () => {
	test.each([
		[[], 1],
		[["a"], 2],
		[["b"], 3],
		[["b", 0, "c"], 4],
		[["b", 1, "c"], 6],
		[["b", 1, "not there"], 6],
		[["not there"], 1],
	] as const)("%j stands in line %d", (path, line) => {
		const read = readJsonLines(TEXT);
		expect(read.ok && read.lineAt(path)).toBe(line);
	});

	test.each([
		['{\n\t"a": 1,\n}', 3],
		['{\n"a" 1}', 2],
		["[1,\n2,\n3", 3],
		["", 1],
		["{}\n\nx", 3],
		['{\n"a": "no\nend"}', 2],
		["[01]", 1],
		["nul", 1],
	])("%j is no JSON in line %d", (text, line) => {
		expect(readJsonLines(text)).toMatchObject({ ok: false, line });
	});
});

describe("against the runtime's own JSON reader", () => {
	test("what it writes is read the same, and every value has a line of its own", () => {
		fc.assert(
			fc.property(fc.jsonValue(), (value) => {
				const text = JSON.stringify(value, null, 1);
				expect(readJsonLines(text)).toMatchObject({
					ok: true,
					value: JSON.parse(text),
				});
			}),
		);
	});

	test("text is JSON to both or to neither", () => {
		const pieces = fc.array(
			fc.constantFrom(
				...["{", "}", "[", "]", ":", ",", '"a"', '"\\u00e4"', '"\\x"'],
				...["1", "-1.5e3", "01", "true", "nul", " ", "\n", "\t"],
			),
			{ maxLength: 12 },
		);
		const isJson = (text: string) => {
			try {
				JSON.parse(text);
				return true;
			} catch {
				return false;
			}
		};
		fc.assert(
			fc.property(
				fc.oneof(
					pieces.map((all) => all.join("")),
					fc.string({ maxLength: 12 }),
				),
				(text) => {
					expect(readJsonLines(text).ok).toBe(isJson(text));
				},
			),
			{ numRuns: 3000 },
		);
	});
});
