import { type CsvRecord, readCsv } from "@/lib/forms/csv-read";
import type { Refusal } from "@/lib/numerics/outcome";
import { currencyDigits } from "@/lib/price/currency";
import { WOOD_IDS, type WoodId } from "@/lib/reference/woods";
import { parseAmount } from "@/lib/units/amount";
import { parseNumber } from "@/lib/units/parse";
import { PRICE_PARTS, type PriceRow, type Prices } from "@/lib/workshop/prices";
import { checkedSetting } from "@/lib/workshop/settings-check";
import type { Stock, StockBillet, StockWood } from "@/lib/workshop/stock";
import type { FileProblem } from "./file";

export const PRICE_COLUMNS = [
	"part",
	"choice",
	"labour",
	"material",
	"currency",
] as const;

export const STOCK_COLUMNS = [
	"wood",
	"grade",
	"ringSpacingMm",
	"count",
	"label",
	"densityKgM3",
	"massG",
	"volumeCm3",
	"moisturePct",
	"statedKgM3",
	"statedSd",
] as const;

type TableRead<K extends "prices" | "stock", Content> =
	| { readonly ok: true; readonly entry: { kind: K; content: Content } }
	| { readonly ok: false; readonly problems: readonly FileProblem[] };

/** Lines of a table by the names of their columns; a text kept from running as a formula is itself again. */
class Table<Column extends string> {
	readonly problems: FileProblem[] = [];
	readonly rows: {
		readonly line: number;
		readonly at: Readonly<Record<Column, string>>;
	}[] = [];

	constructor(text: string, columns: readonly Column[]) {
		const read = readCsv(text);
		if (!read.ok) {
			this.tell(read.line, "", { code: "not-csv", value: null });
			return;
		}
		const [headings, ...records] = read.records;
		const places = this.#places(headings, columns);
		if (this.problems.length > 0 || headings === undefined) return;
		for (const { line, fields } of records) {
			if (fields.length !== headings.fields.length) {
				this.tell(line, "", {
					code: "column-count",
					value: fields.length,
					facts: { expected: headings.fields.length },
				});
				continue;
			}
			this.rows.push({
				line,
				at: Object.fromEntries(
					columns.map((column) => [
						column,
						(fields[places.get(column) ?? -1] ?? "")
							.replace(/^'(?=[=+\-@\t\r])/, "")
							.trim(),
					]),
				) as Record<Column, string>,
			});
		}
	}

	#places(
		headings: CsvRecord | undefined,
		columns: readonly Column[],
	): Map<string, number> {
		const places = new Map<string, number>();
		headings?.fields.forEach((heading, i) => {
			const column = columns.find(
				(one) => one.toLowerCase() === heading.trim().toLowerCase(),
			);
			if (column === undefined)
				this.tell(headings.line, heading, {
					code: "unknown-key",
					value: heading,
				});
			else places.set(column, i);
		});
		for (const column of columns)
			if (!places.has(column))
				this.tell(headings?.line ?? 1, column, {
					code: "no-column",
					value: column,
				});
		return places;
	}

	tell(line: number, field: string, refusal: Omit<Refusal, "field">): void {
		this.problems.push({ line, field, refusal: { ...refusal, field } });
	}

	/** A number of any size: its bounds are the setting's own. Empty is null. */
	number(line: number, field: string, text: string): number | null {
		if (text === "") return null;
		const read = parseNumber(text, {
			min: -Number.MAX_VALUE,
			max: Number.MAX_VALUE,
			field,
		});
		if (read.ok) return read.value;
		const { code, value } = read.refusal;
		this.tell(line, field, { code, value });
		return 0;
	}
}

/** The table of the price list. Its spread is not in it and stays. */
export function readPricesCsv(
	text: string,
	current: Prices,
): TableRead<"prices", Prices> {
	const table = new Table(text, PRICE_COLUMNS);
	const [first] = table.rows;
	const currency = (first?.at.currency ?? current.currency).toUpperCase();
	const digits = currencyDigits(currency) ?? 2;
	const rows = table.rows.map(({ line, at }): PriceRow => {
		if (at.currency.toUpperCase() !== currency)
			table.tell(line, "currency", { code: "mixed-rows", value: at.currency });
		const part = PRICE_PARTS.find((one) => one === at.part);
		if (part === undefined)
			table.tell(line, "part", {
				code: "wrong-shape",
				value: at.part,
				facts: { expected: PRICE_PARTS.join(", ") },
			});
		const amount = (name: "labour" | "material"): number => {
			if (at[name] === "") return 0;
			const read = parseAmount(at[name], digits);
			if (read.ok) return read.minor;
			table.tell(line, name, {
				code: read.code === "too-fine" ? "amount-too-fine" : read.code,
				value: at[name],
				facts: { digits },
			});
			return 0;
		};
		return {
			part: part ?? "base",
			choice: at.choice,
			labourMinor: amount("labour"),
			materialMinor: amount("material"),
		};
	});
	if (table.problems.length > 0) return { ok: false, problems: table.problems };
	const content: Prices = {
		basis: "workshop",
		currency,
		minorPerUnit: 10 ** digits,
		spreadFraction: current.spreadFraction,
		rows,
	};
	const checked = checkedSetting("prices", content);
	if (checked.ok) return { ok: true, entry: { kind: "prices", content } };
	return {
		ok: false,
		problems: checked.refusals.map((refusal) => {
			const [, place, name] =
				/^prices\.rows\.(\d+)(?:\.(\w+))?$/.exec(refusal.field) ?? [];
			return {
				line:
					place === undefined
						? null
						: (table.rows[Number(place)]?.line ?? null),
				field: (name ?? refusal.field.replace(/^prices\./, "")).replace(
					/Minor$/,
					"",
				),
				refusal,
			};
		}),
	};
}

/** The table of the woods at hand: a line a billet, the entry's own columns alike on each of its lines. */
export function readStockCsv(text: string): TableRead<"stock", Stock> {
	const table = new Table(text, STOCK_COLUMNS);
	interface Entry {
		readonly first: (typeof table.rows)[number];
		readonly lines: number[];
		readonly billets: StockBillet[];
	}
	const entries = new Map<string, Entry>();
	for (const row of table.rows) {
		const { line, at } = row;
		const key = `${at.wood} ${at.grade}`;
		const entry = entries.get(key) ?? { first: row, lines: [], billets: [] };
		entries.set(key, entry);
		for (const name of [
			"ringSpacingMm",
			"count",
			"statedKgM3",
			"statedSd",
		] as const)
			if (at[name] !== entry.first.at[name])
				table.tell(line, name, { code: "mixed-rows", value: at[name] });
		const billet = billetOf(table, row);
		if (billet !== null) {
			entry.billets.push(billet);
			entry.lines.push(line);
		}
	}
	const woods = [...entries.values()].map(({ first, billets }): StockWood => {
		const { line, at } = first;
		const wood = WOOD_IDS.find((id) => id === at.wood);
		if (wood === undefined)
			table.tell(line, "wood", {
				code: "wrong-shape",
				value: at.wood,
				facts: { expected: WOOD_IDS.join(", ") },
			});
		const number = (name: keyof typeof at) =>
			table.number(line, name, at[name]);
		const kgM3 = number("statedKgM3");
		const sd = number("statedSd");
		if ((kgM3 === null) !== (sd === null))
			table.tell(line, kgM3 === null ? "statedKgM3" : "statedSd", {
				code: "both-or-neither",
				value: null,
			});
		return {
			wood: wood ?? (WOOD_IDS[0] as WoodId),
			grade: at.grade,
			ringSpacingMm: number("ringSpacingMm"),
			count: number("count") ?? billets.length,
			billets,
			stated: kgM3 === null || sd === null ? null : { kgM3, sd },
		};
	});
	if (table.problems.length > 0) return { ok: false, problems: table.problems };
	const content: Stock = { basis: "workshop", woods };
	const checked = checkedSetting("stock", content);
	if (checked.ok) return { ok: true, entry: { kind: "stock", content } };
	const all = [...entries.values()];
	return {
		ok: false,
		problems: checked.refusals.map((refusal) => {
			const [, place, billet] =
				/^stock\.woods\.(\d+)(?:\.billets\.(\d+))?/.exec(refusal.field) ?? [];
			const entry = all[Number(place)];
			return {
				line:
					(billet === undefined
						? entry?.first.line
						: entry?.lines[Number(billet)]) ?? null,
				field: refusal.field.split(".").at(-1) ?? refusal.field,
				refusal,
			};
		}),
	};
}

function billetOf(
	table: Table<(typeof STOCK_COLUMNS)[number]>,
	{ line, at }: (typeof table.rows)[number],
): StockBillet | null {
	const { label } = at;
	const number = (
		name: "densityKgM3" | "massG" | "volumeCm3" | "moisturePct",
	) => table.number(line, name, at[name]);
	const densityKgM3 = number("densityKgM3");
	const massG = number("massG");
	const volumeCm3 = number("volumeCm3");
	const moisturePct = number("moisturePct");
	if (densityKgM3 !== null) return { label, moisturePct, densityKgM3 };
	if (massG !== null && volumeCm3 !== null)
		return { label, moisturePct, massG, volumeCm3 };
	if (massG === null && volumeCm3 === null && moisturePct === null && !label)
		return null;
	table.tell(line, massG === null ? "massG" : "volumeCm3", {
		code: "density-or-both",
		value: null,
	});
	return null;
}
