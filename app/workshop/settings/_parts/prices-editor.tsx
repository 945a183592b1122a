"use client";

import { memo } from "react";
import { type Control, useController, useWatch } from "react-hook-form";
import { useReader } from "@/app/_ui/preferences/reader";
import { Columns, Section, Stack } from "@/app/_ui/section";
import {
	type PriceRowForm,
	type PricesForm,
	pricesForm,
	readPrices,
} from "@/lib/forms/settings/prices";
import { decimalMark } from "@/lib/present/figure-patterns";
import { formatAmount } from "@/lib/present/money";
import {
	priceChoiceName,
	pricePartName,
	priceRowName,
} from "@/lib/present/setting-names";
import { currencyDigits } from "@/lib/price/currency";
import { parseAmount } from "@/lib/units/amount";
import { PRICE_PARTS } from "@/lib/workshop/prices";
import { FormSelect, FormText } from "./form-fields";
import { SavePanel } from "./save-panel";
import type { EditorProps } from "./setting-editor";
import styles from "./settings.module.css";
import { useSettingForm } from "./use-setting-form";

// biome-ignore lint/suspicious/noExplicitAny: the transformed type is of no matter to a field
type PricesControl = Control<PricesForm, any, any>;

/** What the workshop charges, labour and material apart. */
export function PricesEditor({
	content,
	newest,
	today,
	catalogue,
	currencies,
}: EditorProps<"prices">) {
	const reader = useReader();
	const { say } = reader;
	const initial = pricesForm(content, catalogue, decimalMark(reader));
	const { form, saving } = useSettingForm<"prices", PricesForm>({
		kind: "prices",
		initial,
		newest,
		today,
		read: readPrices,
		labelOf: (path, { rows }) => {
			const [, place, name] = /^rows\.(\d+)\.(\w+)$/.exec(path) ?? [];
			const row = rows[Number(place)];
			if (row === undefined)
				return say(
					path === "spread"
						? "settings.prices.spread"
						: path === "currency"
							? "settings.prices.currency"
							: "settings.prices.rows",
				);
			const what = priceRowName(row, reader);
			return name === "material"
				? say("settings.prices.materialOf", { what })
				: say("settings.prices.labourOf", { what });
		},
	});
	const { control } = form;
	// The rows themselves never change; only what stands in them.
	const places = initial.rows.map((row, place) => ({ ...row, place }));
	return (
		<Stack>
			<Section title={say("settings.prices.currency")} card>
				<Columns>
					<FormSelect
						control={control}
						name="currency"
						label={say("settings.prices.currency")}
						options={currencies}
					/>
					<FormText
						control={control}
						name="spread"
						label={say("settings.prices.spread")}
						hint={say("settings.prices.spreadHint")}
						inputMode="decimal"
					/>
				</Columns>
			</Section>
			<Section
				title={say("settings.prices.rows")}
				lead={say("settings.prices.rowsHint")}
				card
			>
				{PRICE_PARTS.map((part) => {
					const rows = places.filter((row) => row.part === part);
					const isOne = rows.length === 1 && rows[0]?.choice === "";
					return (
						<div key={part}>
							{!isOne && rows.length > 0 && (
								<h3>{pricePartName(part, reader)}</h3>
							)}
							<ul className={styles.amounts}>
								{(part === "base" || !isOne) && rows.length > 0 && <Heads />}
								{rows.map((row) => (
									<AmountRow
										key={row.place}
										control={control}
										place={row.place}
										part={row.part}
										choice={row.choice}
									/>
								))}
							</ul>
						</div>
					);
				})}
			</Section>
			<SavePanel kind="prices" today={today} saving={saving} />
		</Stack>
	);
}

function Heads() {
	const { say } = useReader();
	return (
		<li className={`${styles.amount} ${styles.amountHead}`} aria-hidden="true">
			<span>{say("settings.prices.choice")}</span>
			<span>{say("settings.prices.labour")}</span>
			<span>{say("settings.prices.material")}</span>
			<span className={styles.amountTotal}>{say("settings.prices.total")}</span>
		</li>
	);
}

const AmountRow = memo(function AmountRow({
	control,
	place,
	part,
	choice,
}: Pick<PriceRowForm, "part" | "choice"> & {
	control: PricesControl;
	place: number;
}) {
	const reader = useReader();
	const { say } = reader;
	const labour = useController({ control, name: `rows.${place}.labour` });
	const material = useController({ control, name: `rows.${place}.material` });
	const currency = useWatch({ control, name: "currency" });
	const what = priceRowName({ part, choice }, reader);
	const errorId = `rows-${place}-error`;
	const errors = [labour, material].flatMap(({ fieldState }) =>
		fieldState.error?.message ? [fieldState.error.message] : [],
	);
	const cell = (
		{ field, fieldState }: typeof labour | typeof material,
		label: string,
		short: string,
	) => (
		<label>
			<span className={styles.cellLabel} aria-hidden="true">
				{short}
			</span>
			<input
				className={styles.amountCell}
				type="text"
				inputMode="decimal"
				autoComplete="off"
				name={field.name}
				value={field.value}
				onChange={(event) => field.onChange(event.target.value)}
				onBlur={field.onBlur}
				aria-label={label}
				aria-invalid={fieldState.error ? true : undefined}
				aria-describedby={fieldState.error ? errorId : undefined}
			/>
		</label>
	);
	return (
		<li className={styles.amount}>
			<span className={styles.amountName}>
				{choice === ""
					? pricePartName(part, reader)
					: priceChoiceName(part, choice, reader)}
			</span>
			{cell(
				labour,
				say("settings.prices.labourOf", { what }),
				say("settings.prices.labour"),
			)}
			{cell(
				material,
				say("settings.prices.materialOf", { what }),
				say("settings.prices.material"),
			)}
			<span className={styles.amountTotal}>
				<Total
					texts={[labour.field.value, material.field.value]}
					currency={currency}
				/>
			</span>
			<span className={styles.amountError} id={errorId} aria-live="polite">
				{errors.join(" ")}
			</span>
		</li>
	);
});

/** Labour and material together, while both can be read. */
function Total({
	texts,
	currency,
}: {
	texts: readonly string[];
	currency: string;
}) {
	const reader = useReader();
	const digits = currencyDigits(currency);
	if (digits === null || texts.every((text) => text.trim() === "")) return "–";
	let minor = 0;
	for (const text of texts) {
		if (text.trim() === "") continue;
		const read = parseAmount(text, digits);
		if (!read.ok) return "–";
		minor += read.minor;
	}
	return formatAmount(minor, { currency, minorPerUnit: 10 ** digits }, reader);
}
