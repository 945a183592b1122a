import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { csvText } from "@/lib/documents/csv";
import { readCsv } from "@/lib/forms/csv-read";

const fieldsOf = (text: string) => {
	const read = readCsv(text);
	return read.ok ? read.records.map(({ fields }) => fields) : null;
};

describe("RFC 4180", () => {
	test.each([
		["aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", 2, "section 2.1"],
		["aaa,bbb,ccc\r\nzzz,yyy,xxx", 2, "section 2.2, no end of line at the end"],
		['"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx', 2, "section 2.6"],
		['"aaa","b""bb","ccc"', 1, "section 2.7"],
	])("%j has %d records (%s)", (text, count) => {
		expect(fieldsOf(text)).toHaveLength(count);
		expect(fieldsOf(text)).toEqual(parse(text));
	});
});

describe("against csv-parse", () => {
	const field = fc.oneof(
		fc.string(),
		fc.constantFrom('"', ",", "\r\n", "\n", "a,b", 'say "so"', ";"),
	);
	const table = fc.integer({ min: 2, max: 4 }).chain((columns) =>
		fc.array(fc.array(field, { minLength: columns, maxLength: columns }), {
			minLength: 1,
			maxLength: 5,
		}),
	);

	test("what is written is read alike", () => {
		fc.assert(
			fc.property(table, (records) => {
				const headings = (records[0] ?? []).map((_, i) => `column ${i}`);
				const text = csvText(headings, records);
				expect(fieldsOf(text)).toEqual(
					parse(text, { skip_empty_lines: false }),
				);
			}),
		);
	});

	test("with a semicolon too", () => {
		const text = 'part;labour\r\n"a;b";"1,50"\r\n\r\nc;2\r\n';
		expect(fieldsOf(text)).toEqual(
			parse(text, { delimiter: ";", skip_empty_lines: true }),
		);
		expect(readCsv(text)).toMatchObject({ separator: ";" });
	});
});

test("lines are those of the file, past line ends inside quotes and empty lines", () => {
	const read = readCsv('\ufeffa,b\n"x\ny",1\n\nz,2\n');
	expect(read.ok && read.records.map(({ line }) => line)).toEqual([1, 2, 5]);
});

test.each([
	['a,b\n"x,1\ny,2', 2],
	['a,b\nx,1\ny"y,2', 3],
	['a,b\n"x"y,1', 2],
])("%j is refused in line %d", (text, line) => {
	expect(readCsv(text)).toEqual({ ok: false, line });
});
