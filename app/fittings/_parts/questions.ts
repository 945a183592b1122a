import type { EstimateWords } from "@/app/_ui/fields/field";
import type { QuantitySpec } from "@/app/_ui/fields/quantity";
import { FIELDS, type FieldName } from "@/lib/forms/fields";
import type { LengthKind } from "@/lib/present/figures";
import { sayOr } from "@/lib/present/say-or";
import type { Reader } from "@/lib/words/reader";

/** How each measure is taken, in a sentence beside its field; undefined where it needs none. */
export const hintOn = (name: FieldName, reader: Reader): string | undefined =>
	sayOr(`hint.field.${name}`, "", reader) || undefined;

/** The same for somebody without a second pair of hands. */
export const hintAlone = (
	name: FieldName,
	reader: Reader,
): string | undefined =>
	sayOr(`hint.alone.${name}`, "", reader) || hintOn(name, reader);

/** How a field's lengths are written. */
const KIND: Partial<Record<FieldName, LengthKind>> = {
	stature: "body",
	armSpan: "body",
	gripReadings: "diameter",
	presentButt: "diameter",
	presentTip: "diameter",
	presentDiameter300: "diameter",
	presentDiameter700: "diameter",
	wishButt: "diameter",
	wishTip: "diameter",
	presentLength: "length",
	wishLength: "length",
	handLength: "length",
	cueInHand: "length",
	clothHeight: "length",
};

/** The typed field's shape for a question that asks a quantity. */
export function quantitySpec(name: FieldName): QuantitySpec {
	const field = FIELDS[name];
	if (field.kind === "mass")
		return { dimension: "mass", kind: "cue", ...field.bound, bare: field.bare };
	if (field.kind === "length" || field.kind === "readings")
		return {
			dimension: "length",
			kind: KIND[name] ?? "limb",
			...field.bound,
			bare: field.bare,
		};
	throw new TypeError(`${name} asks no quantity`);
}

export type Estimates = (name: FieldName) => EstimateWords | null;
