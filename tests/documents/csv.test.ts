import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { csvField, csvText } from "@/lib/documents/csv";

/** Read back by a general-purpose reader of RFC 4180. */
const read = (text: string): string[][] =>
	parse(text, { record_delimiter: "\r\n" });

const FORMULA = /^[=+\-@\t\r]/;

describe("CSV", () => {
	test("any table comes back field by field", () => {
		const field = fc.string({ unit: "grapheme", maxLength: 12 });
		fc.assert(
			fc.property(
				fc.integer({ min: 1, max: 4 }).chain((width) =>
					fc.tuple(
						// A record of one empty field is an empty line, which readers skip.
						fc.array(
							field.filter((text) => width > 1 || text !== ""),
							{
								minLength: width,
								maxLength: width,
							},
						),
						fc.array(
							fc.array(
								field.filter((text) => width > 1 || text !== ""),
								{
									minLength: width,
									maxLength: width,
								},
							),
							{ maxLength: 4 },
						),
					),
				),
				([headings, records]) => {
					const shown = (text: string) =>
						FORMULA.test(text) ? `'${text}` : text;
					expect(read(csvText(headings, records))).toEqual(
						[headings, ...records].map((record) => record.map(shown)),
					);
				},
			),
		);
	});
	test.each([
		"=1+1",
		"+1",
		"-1",
		"@SUM(A1)",
		"\t=1",
		"\r=1",
		'=HYPERLINK("x","y")',
	])("%j is text to a spreadsheet", (text) => {
		const [[field = ""] = []] = read(`${csvField(text)}\r\n`);
		expect(field).toBe(`'${text}`);
	});
	test("a comma, a quote and a line end are quoted as RFC 4180 section 2 says", () => {
		expect(csvField('a "b", c')).toBe('"a ""b"", c"');
		expect(csvField("a\nb")).toBe('"a\nb"');
		expect(csvField("plain")).toBe("plain");
	});
	test("a record that does not fill its headings is refused", () => {
		expect(() => csvText(["a", "b"], [["1"]])).toThrow(/record 0 has 1/);
	});
});
