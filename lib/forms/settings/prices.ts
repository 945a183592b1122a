import { currencyDigits } from "@/lib/price/currency";
import { amountText } from "@/lib/units/amount";
import type { UnitSystem } from "@/lib/units/quantity";
import { SETTING_LIMITS } from "@/lib/workshop/checks";
import {
	PRICE_PARTS,
	type PricePart,
	type PriceRow,
	type Prices,
} from "@/lib/workshop/prices";
import { CHOICES_OF } from "@/lib/workshop/prices-check";
import type { WorkshopCatalogue } from "@/lib/workshop/settings";
import { FieldReader, type FormRead, numberText, readForm } from "./form";

export interface PriceRowForm {
	readonly part: PricePart;
	readonly choice: string;
	/** Both empty: the list has no amount for it. */
	readonly labour: string;
	readonly material: string;
}

export interface PricesForm {
	readonly currency: string;
	/** Percent. */
	readonly spread: string;
	readonly rows: PriceRowForm[];
}

/**
 * A row for everything that can be asked for: what the list prices, what the catalogue offers, and for
 * woods all there are, so that none has to be looked up elsewhere. `mark`: the reader's decimal mark.
 */
export function pricesForm(
	prices: Prices,
	{ tips, cases }: Pick<WorkshopCatalogue, "tips" | "cases">,
	mark = ".",
): PricesForm {
	const digits = currencyDigits(prices.currency) ?? 2;
	const own: Partial<Record<PricePart, readonly string[]>> = {
		tip: tips.map(({ name }) => name),
		case: cases.map(({ name }) => name),
	};
	// Three digits behind a comma would read as thousands too: there a point stands for every reader.
	const text = (minor: number) =>
		amountText(minor, digits).replace(".", digits === 3 ? "." : mark);
	return {
		currency: prices.currency,
		spread: percentText(prices.spreadFraction, mark),
		rows: PRICE_PARTS.flatMap((part) => {
			const listed = prices.rows.filter((row) => row.part === part);
			const offered = CHOICES_OF[part] ?? own[part] ?? [];
			const choices = new Set([
				...listed.map(({ choice }) => choice),
				...offered,
			]);
			return [...choices].map((choice): PriceRowForm => {
				const row = listed.find((one) => one.choice === choice);
				return {
					part,
					choice,
					labour: row ? text(row.labourMinor) : "",
					material: row ? text(row.materialMinor) : "",
				};
			});
		}),
	};
}

/** Percent without the traces of binary fractions: 0.07 is "7". */
const percentText = (fraction: number, mark: string): string =>
	numberText(Number((100 * fraction).toPrecision(12)), mark);

export function readPrices(
	form: PricesForm,
	system: UnitSystem,
): FormRead<"prices"> {
	const fields = new FieldReader(system);
	const digits = currencyDigits(form.currency) ?? 2;
	const rows: PriceRow[] = [];
	/** Where each row of the list stands in the form. */
	const places: number[] = [];
	form.rows.forEach((row, i) => {
		if (row.labour.trim() === "" && row.material.trim() === "") return;
		const amount = (name: "labour" | "material") =>
			row[name].trim() === ""
				? 0
				: fields.amountMinor(`rows.${i}.${name}`, row[name], digits);
		places.push(i);
		rows.push({
			part: row.part,
			choice: row.choice,
			labourMinor: amount("labour"),
			materialMinor: amount("material"),
		});
	});
	const [least, most] = SETTING_LIMITS.spreadFraction;
	const spreadFraction =
		fields.number("spread", form.spread, [100 * least, 100 * most]) / 100;
	return readForm({
		kind: "prices",
		fields,
		content: {
			basis: "workshop",
			currency: form.currency,
			minorPerUnit: 10 ** digits,
			spreadFraction,
			rows,
		},
		pathOf: (field) =>
			field
				.replace(/^spreadFraction$/, "spread")
				.replace(
					/^rows\.(\d+)/,
					(_, place) => `rows.${places[Number(place)] ?? place}`,
				)
				.replace(/Minor$/, ""),
	});
}
