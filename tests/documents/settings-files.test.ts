import Ajv from "ajv/dist/2020";
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import {
	pricesCsv,
	settingsJson,
	settingsJsonSchema,
	stockCsv,
} from "@/lib/documents/settings-files";
import { readSettingsFile } from "@/lib/forms/settings/file";
import { fileProblemText } from "@/lib/present/setting-refusal-words";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import {
	SETTING_KINDS,
	type SettingKind,
	settingOf,
} from "@/lib/workshop/settings";
import type { Stock } from "@/lib/workshop/stock";
import { METRIC, reading } from "../support/readers";

const stock: Stock = {
	basis: "workshop",
	woods: [
		{
			wood: "white-ash",
			grade: 'A, "select"',
			ringSpacingMm: 1.5,
			count: 7,
			billets: [
				{ label: "=7", moisturePct: 9.5, densityKgM3: 661.25 },
				{
					label: "line\nbreak",
					moisturePct: null,
					massG: 1450,
					volumeCm3: 2133.3,
				},
			],
			stated: { kgM3: 660, sd: 20 },
		},
		{
			wood: "gaboon-ebony",
			grade: "",
			ringSpacingMm: null,
			count: 0,
			billets: [],
			stated: { kgM3: 1010, sd: 35 },
		},
		{
			wood: "olive",
			grade: "",
			ringSpacingMm: null,
			count: 3,
			billets: [],
			stated: null,
		},
	],
};
const settings = { ...DEFAULT_SETTINGS, stock };
const file = (
	change: (all: Record<SettingKind, unknown>) => void = () => {},
) => {
	const all = Object.fromEntries(
		SETTING_KINDS.map((kind) => [
			kind,
			[
				{
					validFrom: "2026-01-01",
					content: JSON.parse(JSON.stringify(settingOf(settings, kind))),
				},
			],
		]),
	) as Record<SettingKind, unknown>;
	change(all);
	return settingsJson({
		settings: all as never,
		origin: "http://localhost",
		exportedOn: "2026-05-03",
	});
};
const read = (text: string) => readSettingsFile(text, DEFAULT_SETTINGS);
/** What is wrong with a file, as one would read it. */
const wrong = (text: string, to = METRIC) => {
	const got = read(text);
	if (got.ok) throw new Error("the file was taken");
	return got.problems.map((problem) => fileProblemText(problem, to));
};
/** Line, from 1, of the first or a later place of a text in a file. */
const lineOf = (text: string, part: string, from = 0) =>
	text.slice(0, text.indexOf(part, from)).split("\n").length;

describe("the JSON file", () => {
	test("is read back as it was written", () => {
		expect(read(file())).toEqual({
			ok: true,
			entries: SETTING_KINDS.map((kind) => ({
				kind,
				validFrom: "2026-01-01",
				content: settingOf(settings, kind),
			})),
		});
	});

	test("is of the published schema, by a validator that knows nothing of the project", () => {
		const validate = new Ajv({ strict: true, strictTypes: false }).compile(
			settingsJsonSchema(),
		);
		expect(validate(JSON.parse(file())), JSON.stringify(validate.errors)).toBe(
			true,
		);
		const misspelt = JSON.parse(file());
		misspelt.settings.prices[0].content.rows[0].part = "bass";
		expect(validate(misspelt)).toBe(false);
	});

	test("tells line, field, value and bound of a figure out of its range", () => {
		const text = file((all) => {
			const [{ content }] = all.prices as [
				{ content: { rows: { labourMinor: number }[] } },
			];
			const row = content.rows[2];
			if (row) row.labourMinor = 6_000_000;
		});
		expect(wrong(text)).toEqual([
			`Line ${lineOf(text, "6000000")}, settings.prices.0.content.rows.2.labourMinor: 60\u202f000.00\u00a0GBP is outside 0.00\u00a0GBP to 50\u202f000.00\u00a0GBP.`,
		]);
		expect(wrong(text, reading("metric", "de"))[0]).toMatch(/^Zeile \d+, /);
	});

	test.each<[string, (text: string) => string, RegExp]>([
		[
			"a wood that is not known",
			(text) => text.replace('"indian-rosewood"', '"unobtainium"'),
			/^Line \d+, settings\.catalogue\.0\.content\.buttWoods\.0\.id: “unobtainium” is not what is expected here: white-ash, /,
		],
		[
			"a name that is not known",
			(text) => text.replace('"paper"', '"papier"'),
			/^Line \d+, settings\.header\.0\.content\.(paper: This is missing|papier: “papier” is not a name)/,
		],
		[
			"a text where a number belongs",
			(text) => text.replace('"cuesPerWeek": 2', '"cuesPerWeek": "two"'),
			/^Line \d+, settings\.lead-times\.0\.content\.cuesPerWeek: “two” is not what is expected here: number\.$/,
		],
		[
			"a day that does not exist",
			(text) => text.replace("2026-01-01", "2026-02-30"),
			/^Line \d+, settings\.header\.0\.validFrom: “2026-02-30” is not a date/,
		],
		[
			"half a billet",
			(text) => text.replace(/,\s*"volumeCm3": 2133.3/, ""),
			/^Line \d+, settings\.stock\.0\.content\.woods\.0\.billets\.1\./,
		],
		[
			"another kind of file",
			(text) => text.replace('"workshop-settings"', '"cue-spec"'),
			/^Line 3, format: This is not a file of workshop settings of version 1\.$/,
		],
		[
			"a later version of it",
			(text) => text.replace('"formatVersion": 1', '"formatVersion": 2'),
			/^Line 4, formatVersion: This is not a file/,
		],
		[
			"what is no JSON",
			(text) => text.replace('"paper": "a4",', '"paper": "a4"'),
			/^Line \d+: This cannot be read as JSON: "units/,
		],
	])("refuses %s", (_, change, expected) => {
		const text = change(file());
		expect(text).not.toBe(file());
		expect(wrong(text)[0]).toMatch(expected);
	});

	test("is refused whole when it is far too large", () => {
		expect(wrong(`{${" ".repeat(1_000_001)}}`)).toEqual([
			"The file has 1\u202f000\u202f003 characters; at most 1\u202f000\u202f000 are read.",
		]);
	});
});

describe("the price list as a table", () => {
	const csv = pricesCsv(settings.prices);

	test("holds every row, by csv-parse, amounts as decimals", () => {
		const records: Record<string, string>[] = parse(csv, { columns: true });
		expect(records).toHaveLength(settings.prices.rows.length);
		expect(records[0]).toEqual({
			part: "base",
			choice: "",
			labour: "126.00",
			material: "14.00",
			currency: "GBP",
		});
	});

	test("is read back to the minor unit", () => {
		expect(read(csv)).toEqual({
			ok: true,
			entries: [
				{
					kind: "prices",
					validFrom: null,
					content: { ...settings.prices, basis: "workshop" },
				},
			],
		});
	});

	test("is read as a spreadsheet with a decimal comma writes it", () => {
		const german = csv
			.replaceAll(",", ";")
			.replace(/;(\d+)\.(\d\d)/g, ";$1,$2");
		expect(german).toContain("base;;126,00;14,00;GBP");
		expect(read(`\ufeff${german}`)).toEqual(read(csv));
	});

	test.each([
		[
			"an amount that is none",
			(text: string) => text.replace("126.00", "dear"),
			"Line 2, labour: “dear” cannot be read as a number.",
		],
		[
			"a fraction of a penny",
			(text: string) => text.replace("126.00", "126.005"),
			"Line 2, labour: “126.005” has more digits behind the point than the currency, which has 2.",
		],
		[
			"an amount out of its range",
			(text: string) => text.replace("126.00", "60000"),
			"Line 2, labour: 60\u202f000.00\u00a0GBP is outside 0.00\u00a0GBP to 50\u202f000.00\u00a0GBP.",
		],
		[
			"a wood nobody knows",
			(text: string) => text.replace("butt-wood,zebrano", "butt-wood,zebra"),
			/^Line \d+, choice: “zebra” is no choice here \(Butt wood\)\.$/,
		],
		[
			"another currency half way",
			(text: string) => text.replace("14.00,GBP", "14.00,EUR"),
			/^Line 3, currency: “GBP” differs from the line before/,
		],
		[
			"a splice without a price",
			(text: string) => text.replace(/splice,plain,.*\r\n/, ""),
			"rows: The price list needs an amount for: Plain butt, no splice.",
		],
		[
			"a line with a field too many",
			(text: string) => text.replace("14.00,GBP", "14.00,GBP,x"),
			"Line 2: This line has 6 fields, the headings have 5.",
		],
		[
			"a column left out",
			(text: string) => text.replace("labour", "labor"),
			"Line 1, labor: “labor” is not a name that is known here.",
		],
		[
			"a row twice",
			(text: string) => `${text}base,,1.00,1.00,GBP\r\n`,
			/^Line \d+, rows\.\d+: “base” is listed twice\.$/,
		],
	])("refuses %s with its line", (_, change, expected) => {
		const text = change(csv);
		expect(text).not.toBe(csv);
		const [first] = wrong(text);
		if (typeof expected === "string") expect(first).toBe(expected);
		else expect(first).toMatch(expected);
	});
});

describe("the woods at hand as a table", () => {
	const csv = stockCsv(stock);

	test("is read back, billets, quotes, line breaks and all", () => {
		expect(read(csv)).toEqual({
			ok: true,
			entries: [{ kind: "stock", validFrom: null, content: stock }],
		});
		expect(parse(csv, { columns: true })).toHaveLength(4);
	});

	test("an empty stock is an empty table", () => {
		const empty = { basis: "workshop", woods: [] } as const;
		expect(read(stockCsv(empty))).toMatchObject({
			ok: true,
			entries: [{ content: empty }],
		});
	});

	test.each([
		[
			"a density out of its range",
			(text: string) => text.replace("661.25", "2661.25"),
			/^Line 2, densityKgM3: 2722 kg\/m³ is outside 300 kg\/m³ to 1500 kg\/m³\.$/,
		],
		[
			"a billet with weight alone",
			(text: string) => text.replace("2133.3", ""),
			/^Line 3, volumeCm3: Give the density, or both weight and volume\.$/,
		],
		[
			"a wood nobody knows",
			(text: string) => text.replace("olive", "oliva"),
			/^Line 6, wood: “oliva” is not what is expected here: white-ash, /,
		],
		[
			"lines of one entry that differ",
			(text: string) => text.replace(",1.5,7,'=7", ",1.5,8,'=7"),
			/^Line 3, count: “7” differs from the line before/,
		],
		[
			"an open quote",
			(text: string) => text.replace('break"', "break"),
			/^Line 3: A quote is opened and never closed/,
		],
	])("refuses %s with its line", (_, change, expected) => {
		const text = change(csv);
		expect(text).not.toBe(csv);
		expect(wrong(text)[0]?.replaceAll("\u00a0", " ")).toMatch(expected);
	});
});
