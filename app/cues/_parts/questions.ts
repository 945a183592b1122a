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
	layoutLabel,
	metalName,
	spliceLabel,
	taperLabel,
	woodName,
} from "@/lib/present/labels";
import { PLACES, type PlaceId } from "@/lib/reference/climate";
import type { MetalId } from "@/lib/reference/metals";
import type { GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";

export const BENCH_LABELS: Readonly<Record<BenchFieldName, string>> = {
	game: "Game",
	length: "Length",
	butt: "Butt diameter",
	tip: "Tip diameter",
	taper: "Taper",
	shaftWood: "Shaft wood",
	buttWood: "Butt wood",
	splice: "Splice",
	layout: "Pieces",
	mass: "Wanted weight",
	balance: "Wanted balance point, from the butt end",
	points: "Points, from the butt end",
	core: "Core left at the butt end, across",
	veneerWood: "Veneer under the points",
	betweenWood: "Four points between, of",
	frontWedgeWood: "Front wedge",
	joint: "Joint, from the butt end",
	jointMetal: "Joint metal",
	endPiece: "Screw-in end piece",
	ferrule: "Ferrule",
	dome: "Radius of the tip’s dome",
	grip: "Grip hand to butt end",
	rings: "Rings of the shaft apart",
	tilt: "Tilt of the rings, degrees",
	sightTurn: "Flat-sawn face turned from the top, degrees",
	arrowSpacing: "Arrows wished this far apart",
	place: "Where it lives",
	dryTemperature: "Dry half of the year, °C",
	dryHumidity: "Dry half, relative humidity %",
	dampTemperature: "Damp half of the year, °C",
	dampHumidity: "Damp half, relative humidity %",
};

export const BENCH_HINTS: Partial<Record<BenchFieldName, string>> = {
	mass: "Left open, the cue weighs what its woods weigh.",
	balance: "Counts with a wanted weight: the metal is put where it gives both.",
	points: "Where the hand splice’s points come to the surface.",
	endPiece: "Its length; left open there is none.",
	grip: "To the middle of the hand: where the cue is held for bending and inertia.",
	rings: "Across the rings, as measured on the billet’s end.",
	tilt: "Lean of the rings against the cue’s line, towards the butt on the front.",
	place:
		"Two airs to show a swing with; put readings of the place below where there are any.",
};

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
			return PLACES[option as PlaceId].name;
		default:
			return woodName(option as WoodId, reader);
	}
}
