import { describe, expect, test } from "vitest";
import { catalogueForm, readCatalogue } from "@/lib/forms/settings/catalogue";
import type { FormProblem } from "@/lib/forms/settings/form";
import { headerForm, readHeader } from "@/lib/forms/settings/header";
import { leadTimesForm, readLeadTimes } from "@/lib/forms/settings/lead-times";
import { pricesForm, readPrices } from "@/lib/forms/settings/prices";
import { NEW_BILLET, readStock, stockForm } from "@/lib/forms/settings/stock";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import type { Stock } from "@/lib/workshop/stock";

const { header, catalogue, prices, leadTimes } = DEFAULT_SETTINGS;
const workshop = { basis: "workshop" } as const;
const SYSTEMS = ["metric", "trade"] as const;

/** What is wrong, as path, code, value and bounds. */
const wrong = (
	read: { ok: true } | { ok: false; problems: readonly FormProblem[] },
) =>
	read.ok
		? []
		: read.problems.map(({ path, refusal: { code, value, min, max } }) => [
				path,
				code,
				value,
				min,
				max,
			]);

const stock: Stock = {
	...workshop,
	woods: [
		{
			wood: "white-ash",
			grade: "A",
			ringSpacingMm: 1.5,
			count: 7,
			billets: [
				{ label: "7", moisturePct: 9.5, densityKgM3: 661.25 },
				{ label: "", moisturePct: null, massG: 1450, volumeCm3: 2133.3 },
			],
			stated: null,
		},
		{
			wood: "gaboon-ebony",
			grade: "",
			ringSpacingMm: null,
			count: 0,
			billets: [],
			stated: { kgM3: 1010, sd: 35 },
		},
	],
};

describe.each(
	SYSTEMS.flatMap((system) =>
		([".", ","] as const).map((mark) => [system, mark] as const),
	),
)(
	"opened and saved without a change, in %s units with a decimal %s",
	(system, mark) => {
		test("the header stays", () => {
			const own = {
				...header,
				...workshop,
				name: "Bench",
				lines: ["1 Yard", "Town"],
				publicAddress: "https://cues.example",
				language: "de",
				followsDevice: false,
			} as const;
			for (const one of [header, own])
				expect(readHeader(headerForm(one), system)).toEqual({
					ok: true,
					content: { ...one, ...workshop },
				});
		});
		test("the catalogue stays, in its order", () => {
			expect(
				readCatalogue(catalogueForm(catalogue, mark), system, catalogue),
			).toEqual({
				ok: true,
				content: { ...catalogue, ...workshop },
			});
		});
		test("the stock stays", () => {
			expect(readStock(stockForm(stock, mark), system)).toEqual({
				ok: true,
				content: stock,
			});
		});
		test("the price list stays, to the last minor unit", () => {
			const odd = {
				...prices,
				spreadFraction: 0.07,
				rows: prices.rows.map((row, i) => ({
					...row,
					labourMinor: 1009 * i + 1,
				})),
			};
			for (const [currency, minorPerUnit] of [
				["GBP", 100],
				["JPY", 1],
				["KWD", 1000],
			] as const)
				expect(
					readPrices(
						pricesForm({ ...odd, currency, minorPerUnit }, catalogue, mark),
						system,
					),
				).toEqual({
					ok: true,
					content: { ...odd, ...workshop, currency, minorPerUnit },
				});
		});
		test("the lead times stay", () => {
			const own = {
				...leadTimes,
				...workshop,
				closed: [{ from: "2026-08-03", to: "2026-08-14", note: "holiday" }],
			};
			expect(readLeadTimes(leadTimesForm(own, mark), system)).toEqual({
				ok: true,
				content: own,
			});
		});
	},
);

describe("what is typed", () => {
	test("counts in the units it names, or in the reader's", () => {
		const form = catalogueForm(catalogue);
		const read = (height: string, system: "metric" | "trade") => {
			const got = readCatalogue(
				{ ...form, tips: [{ name: "Layered", height }] },
				system,
				catalogue,
			);
			return got.ok ? got.content.tips[0]?.heightMm : got;
		};
		expect(read("5", "metric")).toBe(5);
		expect(read("3/16", "trade")).toBeCloseTo(4.7625, 9);
		expect(read("5,5 mm", "trade")).toBe(5.5);
	});

	test("a wood without amounts is not in the list; one amount alone is", () => {
		const form = pricesForm(prices, catalogue);
		const read = readPrices(
			{
				...form,
				rows: form.rows.map((row) =>
					row.part === "butt-wood"
						? {
								...row,
								labour: "",
								material: row.choice === "olive" ? "35,5" : "",
							}
						: row,
				),
			},
			"metric",
		);
		expect(
			read.ok && read.content.rows.filter(({ part }) => part === "butt-wood"),
		).toEqual([
			{
				part: "butt-wood",
				choice: "olive",
				labourMinor: 0,
				materialMinor: 3550,
			},
		]);
	});

	test("amounts follow the currency's digits", () => {
		const form = pricesForm(prices, catalogue);
		const yen = readPrices({ ...form, currency: "JPY" }, "metric");
		expect(wrong(yen)[0]).toEqual([
			"rows.0.labour",
			"amount-too-fine",
			"126.00",
			undefined,
			undefined,
		]);
		const whole = readPrices(
			{
				...form,
				currency: "JPY",
				rows: form.rows.map((row) => ({
					...row,
					labour: row.labour && "2000",
					material: "",
				})),
			},
			"metric",
		);
		expect(whole.ok && whole.content).toMatchObject({
			currency: "JPY",
			minorPerUnit: 1,
		});
	});

	test("a billet nobody filled in is none; a single closed day needs no end", () => {
		const form = stockForm(stock);
		const [ash] = form.woods;
		if (!ash) throw new Error("no ash");
		const read = readStock(
			{ woods: [{ ...ash, billets: [...ash.billets, NEW_BILLET] }] },
			"metric",
		);
		expect(read.ok && read.content.woods[0]?.billets).toHaveLength(2);
		const closed = readLeadTimes(
			{
				...leadTimesForm(leadTimes),
				closed: [{ from: "2026-12-24", to: "", note: "" }],
			},
			"metric",
		);
		expect(closed.ok && closed.content.closed).toEqual([
			{ from: "2026-12-24", to: "2026-12-24", note: "" },
		]);
	});
});

describe("what is wrong is told at its field, with value and bound", () => {
	test("header", () => {
		const form = headerForm(header);
		expect(
			wrong(
				readHeader(
					{
						...form,
						name: "x".repeat(121),
						lines: `good\n${"y".repeat(121)}`,
						publicAddress: "cues.example",
					},
					"metric",
				),
			),
		).toEqual([
			["name", "text-length", 121, 0, 120],
			["lines", "text-length", 121, 1, 120],
			["publicAddress", "not-an-address", "cues.example", undefined, undefined],
		]);
	});

	test("catalogue", () => {
		const form = catalogueForm(catalogue);
		const { ranges } = form;
		expect(
			wrong(
				readCatalogue(
					{
						...form,
						tips: [
							{ name: "Leather", height: "50 mm" },
							{ name: " ", height: "" },
						],
						endPieces: [{ length: "long" }],
						ranges: {
							...ranges,
							lengthMm: { ...ranges.lengthMm, low: "30 cm" },
						},
					},
					"metric",
					catalogue,
				),
			),
		).toEqual([
			["tips.0.height", "out-of-range", 50, 1, 12],
			["tips.1.name", "text-length", 0, 1, 60],
			["tips.1.height", "empty", null, 1, 12],
			["endPieces.0.length", "not-a-number", "long", 50, 400],
			["ranges.lengthMm.low", "out-of-range", 300, 700, 1700],
		]);
		expect(
			wrong(
				readCatalogue(
					{
						...form,
						games: {
							...form.games,
							snooker: {
								...form.games.snooker,
								shaftWoods: { offered: [], usual: "" },
							},
						},
						tips: [...form.tips, ...form.tips.slice(0, 1)],
						ranges: {
							...ranges,
							buttDiameterMm: { low: "30 mm", high: "25 mm" },
						},
					},
					"metric",
					catalogue,
				),
			).map(([path, code]) => [path, code]),
		).toEqual([
			["games.snooker.shaftWoods.offered", "nothing-offered"],
			["ranges.buttDiameterMm.low", "out-of-range"],
			["tips.2.name", "listed-twice"],
		]);
	});

	test("stock", () => {
		const [ash, ebony] = stockForm(stock).woods;
		if (!ash || !ebony) throw new Error("no woods");
		expect(
			wrong(
				readStock(
					{
						woods: [
							{
								...ash,
								rings: "40 mm",
								count: "1.5",
								billets: [
									{ ...NEW_BILLET, density: "200" },
									{ ...NEW_BILLET, mass: "1450" },
									{
										...NEW_BILLET,
										mass: "heavy",
										volume: "2100",
										moisture: "60",
									},
								],
							},
							{ ...ebony, statedSd: "" },
						],
					},
					"metric",
				),
			),
		).toEqual([
			["woods.0.billets.0.density", "out-of-range", 200, 300, 1500],
			[
				"woods.0.billets.1.volume",
				"density-or-both",
				null,
				undefined,
				undefined,
			],
			["woods.0.billets.2.moisture", "out-of-range", 60, 4, 25],
			["woods.0.billets.2.mass", "not-a-number", "heavy", 5, 50_000],
			["woods.0.rings", "out-of-range", 40, 0.2, 20],
			["woods.1.statedSd", "both-or-neither", null, undefined, undefined],
		]);
		const dense = readStock(
			{
				woods: [
					{
						...ash,
						billets: [
							NEW_BILLET,
							{ ...NEW_BILLET, mass: "5000 g", volume: "2000 cm³" },
						],
					},
					ash,
				],
			},
			"metric",
		);
		expect(wrong(dense)).toEqual([
			["woods.1.grade", "listed-twice", "white-ash A", undefined, undefined],
			["woods.0.billets.1.density", "out-of-range", 2500, 300, 1500],
		]);
	});

	test("prices", () => {
		const form = pricesForm(prices, catalogue);
		const put = (part: string, choice: string, labour: string) => ({
			...form,
			rows: form.rows.map((row) =>
				row.part === part && row.choice === choice ? { ...row, labour } : row,
			),
		});
		const place = form.rows.findIndex(({ choice }) => choice === "bubinga");
		expect(
			wrong(readPrices(put("butt-wood", "bubinga", "dear"), "metric")),
		).toEqual([
			[`rows.${place}.labour`, "not-a-number", "dear", undefined, undefined],
		]);
		// A row before it is left out of the list; the refusal stands at its own row all the same.
		const without = put("butt-wood", "bubinga", "60000");
		expect(
			wrong(
				readPrices(
					{
						...without,
						spread: "10",
						rows: without.rows.map((row) =>
							row.choice === "white-ash"
								? { ...row, labour: "", material: "" }
								: row,
						),
					},
					"metric",
				),
			),
		).toEqual([
			[`rows.${place}.labour`, "out-of-range", 6_000_000, 0, 5_000_000],
		]);
		expect(wrong(readPrices({ ...form, spread: "130" }, "metric"))).toEqual([
			["spread", "out-of-range", 130, 0, 100],
		]);
	});

	test("lead times", () => {
		const form = leadTimesForm(leadTimes);
		expect(
			wrong(
				readLeadTimes(
					{
						...form,
						cuesPerWeek: "0",
						spliceDays: { ...form.spliceDays, plain: "-1" },
						buttWoods: [
							{ wood: "olive", days: "3" },
							{ wood: "olive", days: "4" },
						],
					},
					"metric",
				),
			),
		).toEqual([
			["buttWoods.1.wood", "listed-twice", "olive", undefined, undefined],
			["cuesPerWeek", "out-of-range", 0, 0.1, 500],
			["spliceDays.plain", "out-of-range", -1, 0, 260],
		]);
		expect(
			wrong(
				readLeadTimes(
					{
						...form,
						openWeekdays: [],
						closed: [{ from: "2026-08-14", to: "2026-08-03", note: "" }],
					},
					"metric",
				),
			).map(([path, code]) => [path, code]),
		).toEqual([
			["openWeekdays", "too-few"],
			["closed.0.to", "dates-crossed"],
		]);
	});
});
