import type { CriterionId } from "@/lib/advice/criteria";
import type { Basis, Sureness } from "@/lib/advice/figure";
import type { ClosureWish } from "@/lib/advice/input";
import type {
	LayoutId,
	MaterialId,
	SpliceId,
	TaperShapeId,
} from "@/lib/cue/design";
import { isWood } from "@/lib/cue/materials";
import { CHOICES, type MeasureName } from "@/lib/forms/choices";
import { type FieldName, noteOn } from "@/lib/forms/fields";
import { CITATIONS, type CitationId } from "@/lib/reference/citations";
import type { PlaceId } from "@/lib/reference/climate";
import type { MetalId } from "@/lib/reference/metals";
import type { GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import { sayOr } from "./say-or";

/**
 * Plain names of what a person chooses or reads, as they stand alone: a capital first.
 * `inSentence` has the same names for the middle of a sentence.
 */

type NoteName = `${MeasureName}Note`;
type Question = Exclude<FieldName, MeasureName | NoteName>;

const isMeasure = (name: FieldName): name is MeasureName =>
	(CHOICES.measure as readonly string[]).includes(name);

const measureOfNote = (name: FieldName): MeasureName | undefined =>
	CHOICES.measure.find((measure) => noteOn(measure) === name);

export const measureLabel = (name: MeasureName, { say }: Reader): string =>
	say(`label.measure.${name}`);

export function fieldLabel(name: FieldName, reader: Reader): string {
	if (isMeasure(name)) return measureLabel(name, reader);
	const noted = measureOfNote(name);
	return noted === undefined
		? reader.say(`label.field.${name as Question}`)
		: reader.say("label.noteOn", { measure: measureLabel(noted, reader) });
}

export const gameName = (id: GameId, { say }: Reader): string =>
	say(`label.game.${id}`);
export const woodName = (id: WoodId, { say }: Reader): string =>
	say(`label.wood.${id}`);
export const metalName = (id: MetalId, { say }: Reader): string =>
	say(`label.metal.${id}`);
export const spliceLabel = (id: SpliceId, { say }: Reader): string =>
	say(`label.splice.${id}`);
export const layoutLabel = (id: LayoutId, { say }: Reader): string =>
	say(`label.layout.${id}`);
export const taperLabel = (id: TaperShapeId, { say }: Reader): string =>
	say(`label.taper.${id}`);
export const closureLabel = (id: ClosureWish, { say }: Reader): string =>
	say(`label.closure.${id}`);
export const handLabel = (hand: "left" | "right", { say }: Reader): string =>
	say(`label.hand.${hand}`);
export const basisLabel = (basis: Basis, { say }: Reader): string =>
	say(`label.basis.${basis}`);
export const surenessLabel = (sureness: Sureness, { say }: Reader): string =>
	say(`label.sureness.${sureness}`);
export const criterionLabel = (id: CriterionId, { say }: Reader): string =>
	say(`label.criterion.${id}`);

/** A publication keeps its title; what is no publication is named in the reader’s language. */
export const citationTitle = (id: CitationId, reader: Reader): string =>
	sayOr(`citation.${id}`, CITATIONS[id].title, reader);

/** A published equipment rule a build is checked against; an unknown one is named as it is. */
export const ruleLabel = (rule: string, reader: Reader): string =>
	sayOr(`label.rule.${rule}`, rule, reader);

export function materialName(id: MaterialId, { say }: Reader): string {
	if (id === "tip-leather" || id === "phenolic")
		return say(`label.material.${id}`);
	return isWood(id) ? say(`label.wood.${id}`) : say(`label.metal.${id}`);
}

export const placeName = (id: PlaceId, { say }: Reader): string =>
	say(`label.place.${id}`);

/** A season of a year in two halves; a season of another name as it is. */
export const seasonName = (name: string, reader: Reader): string =>
	sayOr(`label.season.${name}`, name, reader);

/** Names as they stand inside a sentence. */
export const inSentence = {
	field(name: FieldName, reader: Reader): string {
		if (isMeasure(name)) return reader.say(`midSentence.measure.${name}`);
		return measureOfNote(name) === undefined
			? reader.say(`midSentence.field.${name as Question}`)
			: fieldLabel(name, reader);
	},
	game: (id: GameId, { say }: Reader) => say(`midSentence.game.${id}`),
	place: (id: PlaceId, { say }: Reader) => say(`midSentence.place.${id}`),
	wood: (id: WoodId, { say }: Reader) => say(`midSentence.wood.${id}`),
	metal: (id: MetalId, { say }: Reader) => say(`midSentence.metal.${id}`),
	splice: (id: SpliceId, { say }: Reader) => say(`midSentence.splice.${id}`),
	layout: (id: LayoutId, { say }: Reader) => say(`midSentence.layout.${id}`),
	taper: (id: TaperShapeId, { say }: Reader) => say(`midSentence.taper.${id}`),
	closure: (id: ClosureWish, { say }: Reader) =>
		say(`midSentence.closure.${id}`),
	basis: (basis: Basis, { say }: Reader) => say(`midSentence.basis.${basis}`),
	material(id: MaterialId, { say }: Reader): string {
		if (id === "tip-leather" || id === "phenolic")
			return say(`midSentence.material.${id}`);
		return isWood(id)
			? say(`midSentence.wood.${id}`)
			: say(`midSentence.metal.${id}`);
	},
} as const;

/** Where the names of a question's choices stand. */
const CHOICE_GROUPS: Partial<Record<FieldName, string>> = {
	sex: "sex",
	hand: "hand",
	stance: "stance",
	posture: "posture",
	bridgeArm: "bridgeArm",
	seated: "yesNo",
	standingFrame: "yesNo",
	glasses: "yesNo",
	measuredAlone: "yesNo",
	notMeasured: "measure",
	game: "game",
	level: "level",
	budget: "budget",
	presentLikes: "liked",
	presentDislikes: "complaint",
	wishClosure: "closure",
	wishButtWood: "wood",
	wishShaftWood: "wood",
	wishSplice: "splice",
	wishLayout: "layout",
	wishTaper: "taper",
	wishFerrule: "metal",
	priorityMore: "criterion",
	priorityNone: "criterion",
	wishSteadiness: "steadinessWish",
	wishStiffness: "stiffnessWish",
	wishDeflection: "deflectionWish",
};

/** The label of a stored choice, for the fields that have fixed options; an unknown one as it is. */
export function choiceLabel(
	field: FieldName,
	option: string,
	reader: Reader,
): string {
	const group = CHOICE_GROUPS[field];
	return group === undefined
		? option
		: sayOr(`label.${group}.${option}`, option, reader);
}
