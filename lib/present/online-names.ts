import type { LayoutId, SpliceId, TaperShapeId } from "@/lib/cue/design";
import { ONLINE_QUESTIONS } from "@/lib/forms/online-cue";
import type { MetalId } from "@/lib/reference/metals";
import type { GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import type { OnlineField } from "@/lib/workshop/online-choices";
import {
	formatLength,
	formatMass,
	formatNumber,
	type LengthKind,
} from "./figures";
import {
	gameName,
	inSentence,
	layoutLabel,
	metalName,
	spliceLabel,
	taperLabel,
	woodName,
} from "./labels";

/** The question of a choice. */
export const onlineLabel = (field: OnlineField, { say }: Reader): string =>
	say(`online.field.${field}`);

/** How the figures of a choice are written. */
export const lengthKindOf = (field: OnlineField): LengthKind =>
	field === "veneerMm" || field.endsWith("DiameterMm") ? "diameter" : "length";

const LISTS: Partial<
	Record<
		OnlineField,
		{
			readonly alone: (id: never, reader: Reader) => string;
			readonly inside: (id: never, reader: Reader) => string;
		}
	>
> = {
	gameId: {
		alone: (id: GameId, reader) => gameName(id, reader),
		inside: (id: GameId, reader) => gameName(id, reader),
	},
	layout: {
		alone: (id: LayoutId, reader) => layoutLabel(id, reader),
		inside: (id: LayoutId, reader) => inSentence.layout(id, reader),
	},
	splice: {
		alone: (id: SpliceId, reader) => spliceLabel(id, reader),
		inside: (id: SpliceId, reader) => inSentence.splice(id, reader),
	},
	taperShape: {
		alone: (id: TaperShapeId, reader) => taperLabel(id, reader),
		inside: (id: TaperShapeId, reader) => inSentence.taper(id, reader),
	},
};
const METAL = {
	alone: (id: MetalId, reader: Reader) => metalName(id, reader),
	inside: (id: MetalId, reader: Reader) => inSentence.metal(id, reader),
};
const WOOD = {
	alone: (id: WoodId, reader: Reader) => woodName(id, reader),
	inside: (id: WoodId, reader: Reader) => inSentence.wood(id, reader),
};
const METALS: readonly OnlineField[] = ["jointMetal", "ferruleMetal"];

function listOf(field: OnlineField) {
	if (METALS.includes(field)) return METAL;
	return LISTS[field] ?? WOOD;
}

/**
 * A value of a choice as it is read: a name of its list, a figure in the reader's units, the workshop's
 * own word. `inside`: as it stands in a sentence.
 */
export function onlineValue(
	field: OnlineField,
	value: string | number | boolean,
	reader: Reader,
	place: "alone" | "inside" = "alone",
): string {
	const { kind } = ONLINE_QUESTIONS[field];
	if (typeof value === "boolean")
		return reader.say(value ? "online.yes" : "online.no");
	if (typeof value === "number") {
		if (kind === "mass") return formatMass(value, reader);
		if (kind === "length")
			return formatLength(value, reader, lengthKindOf(field));
		return formatNumber(value, reader);
	}
	return kind === "choice"
		? listOf(field)[place](value as never, reader)
		: value;
}
