import type { LayoutId, SpliceId, TaperShapeId } from "@/lib/cue/design";
import type { MetalId } from "@/lib/reference/metals";
import type { GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import type { PricePart } from "@/lib/workshop/prices";
import {
	gameName,
	LAYOUT_LABELS,
	metalName,
	SPLICE_LABELS,
	TAPER_LABELS,
	woodName,
} from "./labels";

/** Names of what a workshop chooses among, as the reader knows them. */
export const NAMES = {
	wood: (id: WoodId, _reader: Reader): string => woodName(id),
	metal: (id: MetalId, _reader: Reader): string => metalName(id),
	game: (id: GameId, _reader: Reader): string => gameName(id),
	splice: (id: SpliceId, _reader: Reader): string => SPLICE_LABELS[id],
	layout: (id: LayoutId, _reader: Reader): string => LAYOUT_LABELS[id],
	taper: (id: TaperShapeId, _reader: Reader): string => TAPER_LABELS[id],
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
