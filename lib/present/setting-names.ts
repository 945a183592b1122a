import type { LayoutId, SpliceId } from "@/lib/cue/design";
import type { MetalId } from "@/lib/reference/metals";
import type { WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import type { PricePart } from "@/lib/workshop/prices";
import {
	gameName,
	layoutLabel,
	metalName,
	spliceLabel,
	taperLabel,
	woodName,
} from "./labels";

/** Names of what a workshop chooses among, as the reader knows them. */
export const NAMES = {
	wood: woodName,
	metal: metalName,
	game: gameName,
	splice: spliceLabel,
	layout: layoutLabel,
	taper: taperLabel,
} as const;

const EACH: ReadonlySet<PricePart> = new Set(["all-round-wedges", "veneers"]);

/** What a line of the price list is for, "Butt wood", "Veneers (each)". */
export const pricePartName = (part: PricePart, { say }: Reader): string =>
	EACH.has(part)
		? say("settings.prices.each", { part: say(`settings.prices.part.${part}`) })
		: say(`settings.prices.part.${part}`);

/** A choice of a part; a name of the workshop's own stays as it is, and one amount has none. */
export function priceChoiceName(
	part: PricePart,
	choice: string,
	reader: Reader,
): string {
	switch (part) {
		case "splice":
			return NAMES.splice(choice as SpliceId, reader);
		case "layout":
			return NAMES.layout(choice as LayoutId, reader);
		case "shaft-wood":
		case "butt-wood":
			return NAMES.wood(choice as WoodId, reader);
		case "ferrule":
			return NAMES.metal(choice as MetalId, reader);
		default:
			return choice;
	}
}

/** "Butt wood · Indian rosewood". */
export function priceRowName(
	{ part, choice }: { readonly part: PricePart; readonly choice: string },
	reader: Reader,
): string {
	const name = pricePartName(part, reader);
	return choice === ""
		? name
		: `${name} · ${priceChoiceName(part, choice, reader)}`;
}
