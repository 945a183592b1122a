"use client";

import { useState } from "react";
import { type Control, useFieldArray, useWatch } from "react-hook-form";
import { Button } from "@/app/_ui/button";
import { SelectField } from "@/app/_ui/fields/select-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Columns, Section, Stack } from "@/app/_ui/section";
import {
	NEW_BILLET,
	newStockWood,
	readStock,
	type StockForm,
	stockForm,
} from "@/lib/forms/settings/stock";
import { decimalMark } from "@/lib/present/figure-patterns";
import { NAMES } from "@/lib/present/setting-names";
import { stockComparison } from "@/lib/present/stock-comparison";
import { WOOD_IDS, type WoodId } from "@/lib/reference/woods";
import { FormQuantity, FormText } from "./form-fields";
import { RowList } from "./row-list";
import { SavePanel } from "./save-panel";
import type { EditorProps } from "./setting-editor";
import styles from "./settings.module.css";
import { BILLET_MASS_SPEC, RING_SPEC } from "./specs";
import { stockLabel } from "./stock-label";
import { useSettingForm } from "./use-setting-form";

// biome-ignore lint/suspicious/noExplicitAny: the transformed type is of no matter to a field
type StockControl = Control<StockForm, any, any>;

/** Woods at hand, and what their billets weigh. */
export function StockEditor({ content, newest, today }: EditorProps<"stock">) {
	const reader = useReader();
	const { say } = reader;
	const [wood, setWood] = useState<WoodId>("white-ash");
	const { form, saving } = useSettingForm<"stock", StockForm>({
		kind: "stock",
		initial: stockForm(content, decimalMark(reader)),
		newest,
		today,
		read: readStock,
		labelOf: (path, values) => stockLabel(path, values, reader),
	});
	const { control } = form;
	const { fields, append, remove } = useFieldArray({ control, name: "woods" });
	return (
		<Stack>
			{fields.length === 0 && <p>{say("settings.stock.empty")}</p>}
			{fields.map(({ id, wood: kind }, i) => (
				<Wood
					key={id}
					control={control}
					place={i}
					wood={kind}
					remove={() => remove(i)}
				/>
			))}
			<Section title={say("settings.stock.addWood")}>
				<Actions>
					<SelectField
						label={say("settings.stock.wood")}
						name="newWood"
						value={wood}
						unsure={null}
						options={WOOD_IDS.map((value) => ({
							value,
							label: NAMES.wood(value, reader),
						}))}
						onChange={(value) => setWood(value as WoodId)}
					/>
					<Button onClick={() => append(newStockWood(wood))}>
						{say("settings.stock.addWoodButton", {
							wood: NAMES.wood(wood, reader),
						})}
					</Button>
				</Actions>
			</Section>
			<SavePanel kind="stock" today={today} saving={saving} />
		</Stack>
	);
}

function Wood({
	control,
	place,
	wood,
	remove,
}: {
	control: StockControl;
	place: number;
	wood: WoodId;
	remove: () => void;
}) {
	const reader = useReader();
	const { say } = reader;
	const name = `woods.${place}` as const;
	const billets = useFieldArray({ control, name: `${name}.billets` });
	return (
		<Section
			title={NAMES.wood(wood, reader)}
			lead={<Compared control={control} place={place} />}
			card
			actions={
				<Button
					look="quiet"
					aria-label={say("settings.stock.removeWood", {
						wood: NAMES.wood(wood, reader),
					})}
					onClick={remove}
				>
					{say("settings.catalogue.remove")}
				</Button>
			}
		>
			<Columns minRem={14}>
				<FormText
					control={control}
					name={`${name}.grade`}
					label={say("settings.stock.grade")}
					hint={say("settings.stock.gradeHint")}
					maxLength={60}
				/>
				<FormText
					control={control}
					name={`${name}.count`}
					label={say("settings.stock.count")}
					hint={say("settings.stock.countHint")}
					inputMode="numeric"
				/>
				<FormQuantity
					control={control}
					name={`${name}.rings`}
					label={say("settings.stock.rings")}
					spec={RING_SPEC}
				/>
			</Columns>
			<h3>{say("settings.stock.billets")}</h3>
			<p className={styles.standing}>{say("settings.stock.billetsHint")}</p>
			<RowList
				rows={billets.fields.map(({ id }) => id)}
				remove={billets.remove}
				nameOf={(i) => say("settings.stock.billet", { number: String(i + 1) })}
			>
				{(i) => (
					<>
						<FormText
							control={control}
							name={`${name}.billets.${i}.label`}
							label={say("settings.stock.label")}
							maxLength={60}
						/>
						<FormText
							control={control}
							name={`${name}.billets.${i}.density`}
							label={say("settings.stock.density")}
							inputMode="decimal"
						/>
						<FormQuantity
							control={control}
							name={`${name}.billets.${i}.mass`}
							label={say("settings.stock.mass")}
							spec={BILLET_MASS_SPEC}
						/>
						<FormText
							control={control}
							name={`${name}.billets.${i}.volume`}
							label={say("settings.stock.volume")}
							inputMode="decimal"
						/>
						<FormText
							control={control}
							name={`${name}.billets.${i}.moisture`}
							label={say("settings.stock.moisture")}
							inputMode="decimal"
						/>
					</>
				)}
			</RowList>
			<Actions>
				<Button onClick={() => billets.append(NEW_BILLET)}>
					{say("settings.stock.addBillet")}
				</Button>
			</Actions>
			<h3>{say("settings.stock.stated")}</h3>
			<p className={styles.standing}>{say("settings.stock.statedHint")}</p>
			<Columns minRem={14}>
				<FormText
					control={control}
					name={`${name}.statedMean`}
					label={say("settings.stock.statedMean")}
					inputMode="decimal"
				/>
				<FormText
					control={control}
					name={`${name}.statedSd`}
					label={say("settings.stock.statedSd")}
					inputMode="decimal"
				/>
			</Columns>
		</Section>
	);
}

/** The billets' mean and spread beside the published one, as far as they can be read. */
function Compared({
	control,
	place,
}: {
	control: StockControl;
	place: number;
}) {
	const reader = useReader();
	const entry = useWatch({ control, name: `woods.${place}` });
	const read = readStock({ woods: [entry] }, reader.system);
	const wood = read.ok ? read.content.woods[0] : undefined;
	return <>{stockComparison(entry.wood, wood ?? null, reader)}</>;
}
