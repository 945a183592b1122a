import { z } from "zod";
import {
	SETTINGS_FORMAT,
	SETTINGS_FORMAT_VERSION,
	type SettingsFile,
	settingsFileSchema,
} from "@/lib/forms/settings/file";
import { PRICE_COLUMNS, STOCK_COLUMNS } from "@/lib/forms/settings/tables";
import { digitsOf } from "@/lib/present/money";
import { amountText } from "@/lib/units/amount";
import type { Prices } from "@/lib/workshop/prices";
import type { Stock, StockBillet } from "@/lib/workshop/stock";
import { csvText } from "./csv";

/** Where the app publishes the schema. */
export const SETTINGS_SCHEMA_PATH = "/api/v1/settings.schema.json";

/** All settings as one JSON text. */
export const settingsJson = (p: {
	settings: SettingsFile["settings"];
	origin: string;
	exportedOn: string;
}): string =>
	`${JSON.stringify(
		{
			$schema: p.origin + SETTINGS_SCHEMA_PATH,
			format: SETTINGS_FORMAT,
			formatVersion: SETTINGS_FORMAT_VERSION,
			exportedOn: p.exportedOn,
			settings: p.settings,
		} satisfies SettingsFile,
		null,
		"\t",
	)}\n`;

/** The JSON Schema, draft 2020-12, of that file, as it is read back. */
export const settingsJsonSchema = (): object => ({
	...z.toJSONSchema(settingsFileSchema, {
		target: "draft-2020-12",
		io: "input",
	}),
	$id: `urn:cue-fitting-advisor:settings:${SETTINGS_FORMAT_VERSION}`,
	title: "The settings of a workshop",
	description:
		"Of each kind the version in force and those that follow, first to last. Lengths in mm, masses in g, densities in kg/m³, amounts in whole minor units of the currency, days as ISO dates. What has to agree with what beyond the shape is told when the file is read.",
});

/** The price list as a table, amounts as plain decimals of whole units. */
export function pricesCsv(prices: Prices): string {
	const digits = digitsOf(prices);
	return csvText(
		PRICE_COLUMNS,
		prices.rows.map(({ part, choice, labourMinor, materialMinor }) => [
			part,
			choice,
			amountText(labourMinor, digits),
			amountText(materialMinor, digits),
			prices.currency,
		]),
	);
}

/** The woods at hand as a table, a line a billet; a wood without one has a line of its own. */
export const stockCsv = ({ woods }: Stock): string =>
	csvText(
		STOCK_COLUMNS,
		woods.flatMap(({ wood, grade, ringSpacingMm, count, billets, stated }) => {
			const line = (billet: StockBillet | null) => [
				wood,
				grade,
				text(ringSpacingMm),
				text(count),
				billet?.label ?? "",
				...(billet === null
					? ["", "", ""]
					: "densityKgM3" in billet
						? [text(billet.densityKgM3), "", ""]
						: ["", text(billet.massG), text(billet.volumeCm3)]),
				text(billet?.moisturePct ?? null),
				text(stated?.kgM3 ?? null),
				text(stated?.sd ?? null),
			];
			return billets.length === 0 ? [line(null)] : billets.map(line);
		}),
	);

const text = (value: number | null): string =>
	value === null ? "" : String(value);
