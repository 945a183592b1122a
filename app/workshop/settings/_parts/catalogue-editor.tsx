"use client";

import { type Control, useFieldArray } from "react-hook-form";
import { Button } from "@/app/_ui/button";
import type { Option } from "@/app/_ui/fields/choice-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Columns, Section, Stack } from "@/app/_ui/section";
import {
	BUTT_WOODS,
	type CatalogueForm,
	catalogueForm,
	GAME_IDS,
	RANGES,
	readCatalogue,
} from "@/lib/forms/settings/catalogue";
import { decimalMark } from "@/lib/present/figure-patterns";
import { NAMES } from "@/lib/present/setting-names";
import { METALS, type MetalId } from "@/lib/reference/metals";
import { WOOD_IDS, WOODS, type WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import { catalogueLabel } from "./catalogue-label";
import { FormChecks, FormQuantity, FormSelect, FormText } from "./form-fields";
import { OfferedField } from "./offered-field";
import { RowList } from "./row-list";
import { SavePanel } from "./save-panel";
import type { EditorProps } from "./setting-editor";
import {
	CASE_SPEC,
	END_PIECE_SPEC,
	RANGE_SPECS,
	TIP_HEIGHT_SPEC,
} from "./specs";
import { useSettingForm } from "./use-setting-form";

const TIERS = ["", "0", "1", "2"] as const;
const SHAFTS = WOOD_IDS.filter((id) => WOODS[id].uses.includes("shaft"));
const VENEERS = WOOD_IDS.filter((id) => WOODS[id].uses.includes("veneer"));
const LAYOUTS = ["one-piece", "three-quarter", "centre"] as const;
const SPLICES = ["plain", "machine-four-point", "hand-four-point"] as const;
const TAPERS = ["straight", "even", "slim-forward", "full-forward"] as const;
const FERRULES = ["brass", "stainless-steel"] as const;
const METAL_IDS = Object.keys(METALS) as MetalId[];

const optionsOf = <Id extends string>(
	ids: readonly Id[],
	name: (id: Id, reader: Reader) => string,
	reader: Reader,
): Option[] => ids.map((value) => ({ value, label: name(value, reader) }));

/** What the workshop makes. */
export function CatalogueEditor({
	content,
	newest,
	today,
}: EditorProps<"catalogue">) {
	const reader = useReader();
	const { say } = reader;
	const { form, saving } = useSettingForm<"catalogue", CatalogueForm>({
		kind: "catalogue",
		initial: catalogueForm(content, decimalMark(reader)),
		newest,
		today,
		read: (values, system) => readCatalogue(values, system, content),
		labelOf: (path) => catalogueLabel(path, reader),
	});
	const { control } = form;
	const tiers: Option[] = TIERS.map((value) => ({
		value,
		label: say(`settings.catalogue.tier.${value === "" ? "none" : value}`),
	}));
	return (
		<Stack>
			<Columns minRem={22}>
				{GAME_IDS.map((gameId) => (
					<Section
						key={gameId}
						title={say("settings.catalogue.gameTitle", {
							game: NAMES.game(gameId, reader),
						})}
						card
					>
						<OfferedField
							control={control}
							name={`games.${gameId}.shaftWoods`}
							label={say("settings.catalogue.shaftWoods")}
							options={optionsOf(SHAFTS, NAMES.wood, reader)}
						/>
						<OfferedField
							control={control}
							name={`games.${gameId}.layouts`}
							label={say("settings.catalogue.layouts")}
							options={optionsOf(LAYOUTS, NAMES.layout, reader)}
						/>
					</Section>
				))}
			</Columns>
			<Section
				title={say("settings.catalogue.buttWoods")}
				lead={say("settings.catalogue.buttWoodsHint")}
				card
			>
				<Columns minRem={14}>
					{BUTT_WOODS.map((id) => (
						<FormSelect
							key={id}
							control={control}
							name={`buttWoods.${id}`}
							label={NAMES.wood(id, reader)}
							options={tiers}
						/>
					))}
				</Columns>
			</Section>
			<Section
				title={say("settings.catalogue.splices")}
				lead={say("settings.catalogue.splicesHint")}
				card
			>
				<Columns minRem={14}>
					{SPLICES.map((id) => (
						<FormSelect
							key={id}
							control={control}
							name={`splices.${id}`}
							label={NAMES.splice(id, reader)}
							options={tiers}
						/>
					))}
				</Columns>
				<OfferedField
					control={control}
					name="taperShapes"
					label={say("settings.catalogue.taperShapes")}
					options={optionsOf(TAPERS, NAMES.taper, reader)}
				/>
				<FormChecks
					control={control}
					name="veneerWoods"
					label={say("settings.catalogue.veneerWoods")}
					options={optionsOf<WoodId>(VENEERS, NAMES.wood, reader)}
				/>
			</Section>
			<Section title={say("settings.catalogue.metals")} card>
				<OfferedField
					control={control}
					name="ferruleMetals"
					label={say("settings.catalogue.ferruleMetals")}
					options={optionsOf(FERRULES, NAMES.metal, reader)}
				/>
				<OfferedField
					control={control}
					name="jointMetals"
					label={say("settings.catalogue.jointMetals")}
					options={optionsOf(METAL_IDS, NAMES.metal, reader)}
				/>
				<FormSelect
					control={control}
					name="addedMetal"
					label={say("settings.catalogue.addedMetal")}
					options={optionsOf(METAL_IDS, NAMES.metal, reader)}
				/>
			</Section>
			<Parts control={control} />
			<Section
				title={say("settings.catalogue.ranges")}
				lead={say("settings.catalogue.rangesHint")}
				card
			>
				<Columns minRem={14}>
					{RANGES.flatMap((name) =>
						(["low", "high"] as const).map((end) => (
							<FormQuantity
								key={`${name}.${end}`}
								control={control}
								name={`ranges.${name}.${end}`}
								label={say(`settings.catalogue.${end}`, {
									what: say(`settings.catalogue.${name}`),
								})}
								spec={RANGE_SPECS[name]}
							/>
						)),
					)}
				</Columns>
			</Section>
			<SavePanel kind="catalogue" today={today} saving={saving} />
		</Stack>
	);
}

/** Tips, end pieces and cases: as many as the workshop likes, under its own names. */
function Parts({
	control,
}: {
	// biome-ignore lint/suspicious/noExplicitAny: the transformed type is of no matter to a field
	control: Control<CatalogueForm, any, any>;
}) {
	const { say } = useReader();
	const tips = useFieldArray({ control, name: "tips" });
	const cases = useFieldArray({ control, name: "cases" });
	const endPieces = useFieldArray({ control, name: "endPieces" });
	return (
		<>
			<Section title={say("settings.catalogue.tips")} card>
				<RowList
					rows={tips.fields.map(({ id }) => id)}
					remove={tips.remove}
					nameOf={(i) => `${say("settings.catalogue.tipName")} ${i + 1}`}
				>
					{(i) => (
						<>
							<FormText
								control={control}
								name={`tips.${i}.name`}
								label={say("settings.catalogue.tipName")}
								maxLength={60}
							/>
							<FormQuantity
								control={control}
								name={`tips.${i}.height`}
								label={say("settings.catalogue.tipHeight")}
								spec={TIP_HEIGHT_SPEC}
							/>
						</>
					)}
				</RowList>
				<Actions>
					<Button onClick={() => tips.append({ name: "", height: "" })}>
						{say("settings.catalogue.addTip")}
					</Button>
				</Actions>
			</Section>
			<Section title={say("settings.catalogue.endPieces")} card>
				<RowList
					rows={endPieces.fields.map(({ id }) => id)}
					remove={endPieces.remove}
					nameOf={(i) => `${say("settings.catalogue.endPieces")} ${i + 1}`}
				>
					{(i) => (
						<FormQuantity
							control={control}
							name={`endPieces.${i}.length`}
							label={say("settings.catalogue.endPieceLength")}
							spec={END_PIECE_SPEC}
						/>
					)}
				</RowList>
				<Actions>
					<Button onClick={() => endPieces.append({ length: "" })}>
						{say("settings.catalogue.addEndPiece")}
					</Button>
				</Actions>
			</Section>
			<Section title={say("settings.catalogue.cases")} card>
				<RowList
					rows={cases.fields.map(({ id }) => id)}
					remove={cases.remove}
					nameOf={(i) => `${say("settings.catalogue.caseName")} ${i + 1}`}
				>
					{(i) => (
						<>
							<FormText
								control={control}
								name={`cases.${i}.name`}
								label={say("settings.catalogue.caseName")}
								maxLength={60}
							/>
							<FormQuantity
								control={control}
								name={`cases.${i}.longestPiece`}
								label={say("settings.catalogue.longestPiece")}
								spec={CASE_SPEC}
							/>
						</>
					)}
				</RowList>
				<Actions>
					<Button onClick={() => cases.append({ name: "", longestPiece: "" })}>
						{say("settings.catalogue.addCase")}
					</Button>
				</Actions>
			</Section>
		</>
	);
}
