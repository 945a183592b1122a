"use client";

import type { Option } from "@/app/_ui/fields/choice-field";
import type {
	SettingContents,
	SettingKind,
	WorkshopCatalogue,
} from "@/lib/workshop/settings";
import { CatalogueEditor } from "./catalogue-editor";
import { HeaderEditor } from "./header-editor";
import { LeadTimesEditor } from "./lead-times-editor";
import { PricesEditor } from "./prices-editor";
import { StockEditor } from "./stock-editor";

export interface EditorProps<K extends SettingKind> {
	readonly content: SettingContents[K];
	/** Newest version; 0 where there is none. */
	readonly newest: number;
	readonly today: string;
	/** What the workshop makes now: its tips and cases have a price. */
	readonly catalogue: WorkshopCatalogue;
	/** Named by the server: a device may know other names. */
	readonly currencies: readonly Option[];
}

/** The form of one kind of setting. */
export function SettingEditor({
	kind,
	content,
	...rest
}: Omit<EditorProps<SettingKind>, "content"> & {
	kind: SettingKind;
	content: SettingContents[SettingKind];
}) {
	switch (kind) {
		case "header":
			return (
				<HeaderEditor
					{...rest}
					content={content as SettingContents["header"]}
				/>
			);
		case "catalogue":
			return (
				<CatalogueEditor
					{...rest}
					content={content as SettingContents["catalogue"]}
				/>
			);
		case "stock":
			return (
				<StockEditor {...rest} content={content as SettingContents["stock"]} />
			);
		case "prices":
			return (
				<PricesEditor
					{...rest}
					content={content as SettingContents["prices"]}
				/>
			);
		case "lead-times":
			return (
				<LeadTimesEditor
					{...rest}
					content={content as SettingContents["lead-times"]}
				/>
			);
	}
}
