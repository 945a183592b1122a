import type { QuantitySpec } from "@/app/_ui/fields/quantity";
import type { LayoutId, SpliceId, TaperShapeId } from "@/lib/cue/design";
import {
	BENCH_FIELDS,
	type BenchField,
	type BenchFieldName,
} from "@/lib/forms/cue-bench";
import type { LengthKind } from "@/lib/present/figures";
import {
	gameName,
	inSentence,
	layoutLabel,
	metalName,
	placeName,
	spliceLabel,
	taperLabel,
	woodName,
} from "@/lib/present/labels";
import type { PlaceId } from "@/lib/reference/climate";
import type { MetalId } from "@/lib/reference/metals";
import type { GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";

export const benchLabel = (name: BenchFieldName, { say }: Reader): string =>
	say(`cues.label.${name}`);

const HINTED = [
	"mass",
	"balance",
	"points",
	"endPiece",
	"grip",
	"rings",
	"tilt",
	"place",
] as const;

export function benchHint(
	name: BenchFieldName,
	{ say }: Reader,
): string | undefined {
	const hinted = HINTED.find((one) => one === name);
	return hinted && say(`cues.hint.${hinted}`);
}

const KINDS: Partial<Record<BenchFieldName, LengthKind>> = {
	butt: "diameter",
	tip: "diameter",
	core: "diameter",
	dome: "diameter",
	rings: "diameter",
};

/** The typed field's shape for a question that asks a length or a mass. */
export function benchSpec(name: BenchFieldName): QuantitySpec {
	const field: BenchField = BENCH_FIELDS[name];
	if (field.kind === "mass")
		return { dimension: "mass", kind: "cue", min: field.min, max: field.max };
	if (field.kind === "length")
		return {
			dimension: "length",
			kind: KINDS[name] ?? "length",
			min: field.min,
			max: field.max,
			bare: { metric: "mm", trade: "in" },
		};
	throw new TypeError(`${name} asks no length and no mass`);
}

/** The label of a choice. */
export function optionLabel(
	name: BenchFieldName,
	option: string,
	reader: Reader,
): string {
	switch (name) {
		case "game":
			return gameName(option as GameId, reader);
		case "taper":
			return taperLabel(option as TaperShapeId, reader);
		case "splice":
			return spliceLabel(option as SpliceId, reader);
		case "layout":
			return layoutLabel(option as LayoutId, reader);
		case "ferrule":
		case "jointMetal":
			return metalName(option as MetalId, reader);
		case "place":
			return placeName(option as PlaceId, reader);
		default:
			return woodName(option as WoodId, reader);
	}
}

/** The same in the middle of a sentence. */
export function optionInSentence(
	name: BenchFieldName,
	option: string,
	reader: Reader,
): string {
	switch (name) {
		case "game":
			return inSentence.game(option as GameId, reader);
		case "taper":
			return inSentence.taper(option as TaperShapeId, reader);
		case "splice":
			return inSentence.splice(option as SpliceId, reader);
		case "layout":
			return inSentence.layout(option as LayoutId, reader);
		case "ferrule":
		case "jointMetal":
			return inSentence.metal(option as MetalId, reader);
		case "place":
			return inSentence.place(option as PlaceId, reader);
		default:
			return inSentence.wood(option as WoodId, reader);
	}
}
