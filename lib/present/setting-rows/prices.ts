import { formatPercent } from "@/lib/present/figures";
import { currencyName, formatAmount } from "@/lib/present/money";
import { priceRowName } from "@/lib/present/setting-names";
import type { Reader } from "@/lib/words/reader";
import { amountMinor, type Prices } from "@/lib/workshop/prices";
import type { SettingRow } from "./row";

/** Currency, spread, and an amount a row: together, and labour and material apart. */
export const priceRows = (prices: Prices, reader: Reader): SettingRow[] => {
	const { say } = reader;
	return [
		{
			key: "currency",
			label: say("settings.prices.currency"),
			value: currencyName(prices.currency, reader),
		},
		{
			key: "spread",
			label: say("settings.prices.spread"),
			value: formatPercent(prices.spreadFraction, reader, 1),
		},
		...prices.rows.map((row) => {
			const amount = (minor: number) => formatAmount(minor, prices, reader);
			return {
				key: `${row.part} ${row.choice}`,
				label: priceRowName(row, reader),
				value: say("settings.prices.split", {
					total: amount(amountMinor(row)),
					labour: amount(row.labourMinor),
					material: amount(row.materialMinor),
				}),
			};
		}),
	];
};
