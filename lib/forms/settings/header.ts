import type { UnitSystem } from "@/lib/units/quantity";
import type { Header } from "@/lib/workshop/settings";
import { FieldReader, type FormRead, readForm } from "./form";

/** How a new reader is told things: the device's language, or always the same. */
export type NewReaders = "device" | Header["language"];

export interface HeaderForm {
	readonly name: string;
	/** One a row. */
	readonly lines: string;
	readonly contact: string;
	readonly publicAddress: string;
	readonly paper: Header["paper"];
	readonly units: Header["units"];
	readonly readers: NewReaders;
	/** Of papers that no reader asked for. */
	readonly language: Header["language"];
	readonly warrantyText: string;
}

export const headerForm = (header: Header): HeaderForm => ({
	name: header.name,
	lines: header.lines.join("\n"),
	contact: header.contact,
	publicAddress: header.publicAddress,
	paper: header.paper,
	units: header.units,
	readers: header.followsDevice ? "device" : header.language,
	language: header.language,
	warrantyText: header.warrantyText,
});

export function readHeader(
	form: HeaderForm,
	system: UnitSystem,
): FormRead<"header"> {
	const lines = form.lines
		.split(/\r?\n/)
		.map((line) => line.trim())
		.filter((line) => line !== "");
	return readForm({
		kind: "header",
		fields: new FieldReader(system),
		content: {
			basis: "workshop",
			name: form.name.trim(),
			lines,
			contact: form.contact.trim(),
			publicAddress: form.publicAddress.trim().replace(/\/+$/, ""),
			paper: form.paper,
			units: form.units,
			language: form.readers === "device" ? form.language : form.readers,
			followsDevice: form.readers === "device",
			warrantyText: form.warrantyText.trim(),
		},
		pathOf: (field) => field.replace(/\.\d+$/, ""),
	});
}
