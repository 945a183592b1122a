import { LANGUAGES } from "@/lib/words/languages";
import type { Reader } from "@/lib/words/reader";
import type { Header } from "@/lib/workshop/settings";
import type { SettingRow } from "./row";

export function headerRows(header: Header, { say }: Reader): SettingRow[] {
	const none = say("settings.row.none");
	const row = (
		key: "name" | "lines" | "contact" | "publicAddress" | "warrantyText",
		value: string,
	): SettingRow => ({
		key,
		label: say(`settings.header.${key}`),
		value: value === "" ? none : value,
	});
	return [
		row("name", header.name),
		row("lines", header.lines.join(", ")),
		row("contact", header.contact),
		row("publicAddress", header.publicAddress),
		{
			key: "paper",
			label: say("settings.header.paper"),
			value: say(`settings.header.paperName.${header.paper}`),
		},
		{
			key: "units",
			label: say("settings.header.units"),
			value: say(`settings.header.unitsName.${header.units}`),
		},
		{
			key: "readers",
			label: say("settings.header.readers"),
			value: header.followsDevice
				? say("settings.header.device")
				: LANGUAGES[header.language],
		},
		{
			key: "language",
			label: say("settings.header.language"),
			value: LANGUAGES[header.language],
		},
		row("warrantyText", header.warrantyText),
	];
}
