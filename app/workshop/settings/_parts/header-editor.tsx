"use client";

import { useWatch } from "react-hook-form";
import { useReader } from "@/app/_ui/preferences/reader";
import { Columns, Section, Stack } from "@/app/_ui/section";
import {
	type HeaderForm,
	headerForm,
	readHeader,
} from "@/lib/forms/settings/header";
import { LANGUAGES } from "@/lib/words/languages";
import { FormChoice, FormText } from "./form-fields";
import { SavePanel } from "./save-panel";
import type { EditorProps } from "./setting-editor";
import { useSettingForm } from "./use-setting-form";

const LANGUAGE_OPTIONS = Object.entries(LANGUAGES).map(([value, label]) => ({
	value,
	label,
}));

/** Name and address, paper, and how new readers begin. */
export function HeaderEditor({
	content,
	newest,
	today,
}: EditorProps<"header">) {
	const { say } = useReader();
	const { form, saving } = useSettingForm<"header", HeaderForm>({
		kind: "header",
		initial: headerForm(content),
		newest,
		today,
		read: readHeader,
		labelOf: (path) => say(`settings.header.${path as keyof HeaderForm}`),
	});
	const { control } = form;
	const readers = useWatch({ control, name: "readers" });
	return (
		<Stack>
			<Section title={say("settings.kind.header")} card>
				<Columns>
					<FormText
						control={control}
						name="name"
						label={say("settings.header.name")}
					/>
					<FormText
						control={control}
						name="contact"
						label={say("settings.header.contact")}
					/>
				</Columns>
				<FormText
					control={control}
					name="lines"
					label={say("settings.header.lines")}
					hint={say("settings.header.linesHint")}
					rows={4}
				/>
				<FormText
					control={control}
					name="publicAddress"
					label={say("settings.header.publicAddress")}
					hint={say("settings.header.publicAddressHint")}
				/>
				<FormChoice
					control={control}
					name="paper"
					label={say("settings.header.paper")}
					options={(["a4", "letter"] as const).map((value) => ({
						value,
						label: say(`settings.header.paperName.${value}`),
					}))}
				/>
				<FormChoice
					control={control}
					name="units"
					label={say("settings.header.units")}
					hint={say("settings.header.readersHint")}
					options={(["metric", "trade"] as const).map((value) => ({
						value,
						label: say(`settings.header.unitsName.${value}`),
					}))}
				/>
				<FormChoice
					control={control}
					name="readers"
					label={say("settings.header.readers")}
					hint={say("settings.header.readersHint")}
					options={[
						{ value: "device", label: say("settings.header.device") },
						...LANGUAGE_OPTIONS,
					]}
				/>
				{readers === "device" && (
					<FormChoice
						control={control}
						name="language"
						label={say("settings.header.language")}
						options={LANGUAGE_OPTIONS}
					/>
				)}
				<FormText
					control={control}
					name="warrantyText"
					label={say("settings.header.warrantyText")}
					hint={say("settings.header.warrantyTextHint")}
					rows={5}
				/>
			</Section>
			<SavePanel kind="header" today={today} saving={saving} />
		</Stack>
	);
}
