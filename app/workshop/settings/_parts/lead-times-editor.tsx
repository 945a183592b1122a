"use client";

import { useState } from "react";
import { useFieldArray, useWatch } from "react-hook-form";
import { Button } from "@/app/_ui/button";
import { TextField } from "@/app/_ui/fields/text-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Columns, Section, Stack } from "@/app/_ui/section";
import { BUTT_WOODS } from "@/lib/forms/settings/catalogue";
import {
	DAY_FIELDS,
	type LeadTimesForm,
	leadTimesForm,
	readLeadTimes,
} from "@/lib/forms/settings/lead-times";
import { formatDay } from "@/lib/present/dates";
import { decimalMark } from "@/lib/present/figure-patterns";
import { NAMES } from "@/lib/present/setting-names";
import { settingProblemText } from "@/lib/present/setting-refusal-words";
import { formatDays, weekdayName } from "@/lib/present/setting-rows/lead-times";
import { parseNumber } from "@/lib/units/parse";
import { type LeadTimes, leadTime } from "@/lib/workshop/lead-time";
import { FormChecks, FormDay, FormSelect, FormText } from "./form-fields";
import { leadTimesLabel } from "./lead-times-label";
import { RowList } from "./row-list";
import { SavePanel } from "./save-panel";
import type { EditorProps } from "./setting-editor";
import { useSettingForm } from "./use-setting-form";

const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7];
const SPLICES = ["plain", "machine-four-point", "hand-four-point"] as const;
const LAYOUTS = ["one-piece", "three-quarter", "centre"] as const;

/** How long cues take, how many are made in a week, and when nobody is there. */
export function LeadTimesEditor({
	content,
	newest,
	today,
}: EditorProps<"lead-times">) {
	const reader = useReader();
	const { say } = reader;
	const { form, saving } = useSettingForm<"lead-times", LeadTimesForm>({
		kind: "lead-times",
		initial: leadTimesForm(content, decimalMark(reader)),
		newest,
		today,
		read: readLeadTimes,
		labelOf: (path) => leadTimesLabel(path, reader),
	});
	const { control } = form;
	const woods = useFieldArray({ control, name: "buttWoods" });
	const closed = useFieldArray({ control, name: "closed" });
	const values = useWatch({ control }) as LeadTimesForm;
	const read = readLeadTimes(values, reader.system);
	return (
		<Stack>
			<Section title={say("settings.leadTimes.openWeekdays")} card>
				<FormChecks
					control={control}
					name="openWeekdays"
					label={say("settings.leadTimes.openWeekdays")}
					options={WEEKDAYS.map((day) => ({
						value: String(day),
						label: weekdayName(day, reader),
					}))}
				/>
				<FormText
					control={control}
					name="cuesPerWeek"
					label={say("settings.leadTimes.cuesPerWeek")}
					hint={say("settings.leadTimes.cuesPerWeekHint")}
					inputMode="decimal"
				/>
			</Section>
			<Section
				title={say("settings.leadTimes.days")}
				lead={say("settings.leadTimes.daysHint")}
				card
			>
				<Columns minRem={14}>
					{DAY_FIELDS.map((name) => (
						<FormText
							key={name}
							control={control}
							name={name}
							label={say(`settings.leadTimes.part.${name}`)}
							inputMode="decimal"
						/>
					))}
					{SPLICES.map((id) => (
						<FormText
							key={id}
							control={control}
							name={`spliceDays.${id}`}
							label={NAMES.splice(id, reader)}
							inputMode="decimal"
						/>
					))}
					{LAYOUTS.map((id) => (
						<FormText
							key={id}
							control={control}
							name={`layoutDays.${id}`}
							label={NAMES.layout(id, reader)}
							inputMode="decimal"
						/>
					))}
				</Columns>
			</Section>
			<Section title={say("settings.leadTimes.buttWoods")} card>
				<RowList
					rows={woods.fields.map(({ id }) => id)}
					remove={woods.remove}
					nameOf={(i) =>
						NAMES.wood(values.buttWoods[i]?.wood ?? "snakewood", reader)
					}
				>
					{(i) => (
						<>
							<FormSelect
								control={control}
								name={`buttWoods.${i}.wood`}
								label={say("settings.stock.wood")}
								options={BUTT_WOODS.map((id) => ({
									value: id,
									label: NAMES.wood(id, reader),
								}))}
							/>
							<FormText
								control={control}
								name={`buttWoods.${i}.days`}
								label={say("settings.leadTimes.days")}
								inputMode="decimal"
							/>
						</>
					)}
				</RowList>
				<Actions>
					<Button
						onClick={() =>
							woods.append({
								wood:
									BUTT_WOODS.find(
										(id) => !values.buttWoods.some(({ wood }) => wood === id),
									) ?? "snakewood",
								days: "",
							})
						}
					>
						{say("settings.leadTimes.addButtWood")}
					</Button>
				</Actions>
			</Section>
			<Section title={say("settings.leadTimes.closed")} card>
				<RowList
					rows={closed.fields.map(({ id }) => id)}
					remove={closed.remove}
					nameOf={(i) => `${say("settings.leadTimes.closed")} ${i + 1}`}
				>
					{(i) => (
						<>
							<FormDay
								control={control}
								name={`closed.${i}.from`}
								label={say("settings.leadTimes.from")}
							/>
							<FormDay
								control={control}
								name={`closed.${i}.to`}
								label={say("settings.leadTimes.to")}
								hint={say("settings.leadTimes.toHint")}
							/>
							<FormText
								control={control}
								name={`closed.${i}.note`}
								label={say("settings.leadTimes.note")}
								maxLength={60}
							/>
						</>
					)}
				</RowList>
				<Actions>
					<Button onClick={() => closed.append({ from: "", to: "", note: "" })}>
						{say("settings.leadTimes.addClosed")}
					</Button>
				</Actions>
			</Section>
			<Example leadTimes={read.ok ? read.content : null} today={today} />
			<SavePanel kind="lead-times" today={today} saving={saving} />
		</Stack>
	);
}

/** When a cue agreed today would be ready by what is typed. */
function Example({
	leadTimes,
	today,
}: {
	leadTimes: LeadTimes | null;
	today: string;
}) {
	const reader = useReader();
	const { say } = reader;
	const [ahead, setAhead] = useState("3");
	const count = parseNumber(ahead, { min: 0, max: 1000 });
	const found =
		leadTimes === null || !count.ok
			? null
			: leadTime({
					leadTimes,
					request: {
						lengthMm: 1460,
						buttDiameterMm: 29,
						tipDiameterMm: 9.5,
						taperShape: "even",
						shaftWood: "white-ash",
						buttWood: "black-walnut",
						splice: "hand-four-point",
						layout: "three-quarter",
						ferruleMetal: "brass",
					},
					hasAddedWeight: true,
					cuesAhead: count.value,
					from: today,
				});
	return (
		<Section title={say("settings.leadTimes.example")}>
			<TextField
				label={say("settings.leadTimes.cuesAhead")}
				name="cuesAhead"
				value={ahead}
				onChange={setAhead}
				inputMode="numeric"
			/>
			<p role="status">
				{found === null
					? say("settings.leadTimes.exampleWaits")
					: found.ok
						? say("settings.leadTimes.exampleText", {
								day: formatDay(found.value.dueOn, reader),
								queueDays: formatDays(found.value.queueDays, reader),
								benchDays: formatDays(found.value.benchDays, reader),
							})
						: found.refusals
								.map((refusal) => settingProblemText(refusal, reader))
								.join(" ")}
			</p>
		</Section>
	);
}
