import type { Reader } from "@/lib/words/reader";
import type { SettingContents, SettingKind } from "@/lib/workshop/settings";
import { catalogueRows } from "./setting-rows/catalogue";
import { headerRows } from "./setting-rows/header";
import { leadTimeRows } from "./setting-rows/lead-times";
import { priceRows } from "./setting-rows/prices";
import type { SettingRow } from "./setting-rows/row";
import { stockRows } from "./setting-rows/stock";

const ROWS: {
	readonly [K in SettingKind]: (
		content: SettingContents[K],
		reader: Reader,
	) => SettingRow[];
} = {
	header: headerRows,
	catalogue: catalogueRows,
	stock: stockRows,
	prices: priceRows,
	"lead-times": leadTimeRows,
};

/** All that a setting says, a row a statement, in a reader's words. */
export const settingRows = <K extends SettingKind>(
	kind: K,
	content: SettingContents[K],
	reader: Reader,
): SettingRow[] => ROWS[kind](content, reader);

/** A statement that differs; null where one of the two does not make it. */
export interface SettingChange {
	readonly key: string;
	readonly label: string;
	readonly before: string | null;
	readonly after: string | null;
}

/** What differs between two versions of a setting, in the order of the later one, what is gone last. */
export function settingChanges<K extends SettingKind>(
	kind: K,
	{ before, after }: { before: SettingContents[K]; after: SettingContents[K] },
	reader: Reader,
): SettingChange[] {
	const earlier = new Map(
		settingRows(kind, before, reader).map((row) => [row.key, row]),
	);
	const later = settingRows(kind, after, reader);
	const keys = new Set(later.map(({ key }) => key));
	return [
		...later.flatMap(({ key, label, value }) => {
			const was = earlier.get(key)?.value ?? null;
			return was === value ? [] : [{ key, label, before: was, after: value }];
		}),
		...[...earlier.values()].flatMap(({ key, label, value }) =>
			keys.has(key) ? [] : [{ key, label, before: value, after: null }],
		),
	];
}
