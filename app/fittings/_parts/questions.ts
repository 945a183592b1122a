import type { EstimateWords } from "@/app/_ui/fields/field";
import type { QuantitySpec } from "@/app/_ui/fields/quantity";
import { FIELDS, type FieldName } from "@/lib/forms/fields";
import type { LengthKind } from "@/lib/present/figures";

/** How each measure is taken, in a sentence beside its field. */
export const HINTS: Partial<Record<FieldName, string>> = {
	stature: "Without shoes. “175 cm” or “5 ft 9”.",
	armSpan: "Fingertip to fingertip, arms stretched sideways along a wall.",
	age: "Years. Under 18 the children’s tables are used.",
	sex: "Only chooses which body tables stand in for what was not measured.",
	shoulderToElbow:
		"Bony tip of the shoulder to the underside of the elbow, bent square.",
	elbowToGrip:
		"Back of the bent elbow to the middle of a pencil held in the fist.",
	shoulderBreadth: "Across the back, between the bony tips of the shoulders.",
	gripReadings:
		"Make the light ring that goes round the cue, pads just meeting, no squeeze. Slide a cone or dowels in until one fills the ring and read its diameter. Open the hand and read again, three times.",
	handLength: "Crease of the wrist to the tip of the middle finger, hand flat.",
	wishClosure:
		"How the pads of thumb and forefinger should meet round the butt. Coaches differ; this is a choice.",
	bridgeToGrip:
		"From the V of the bridge hand to the middle of the grip hand, at address.",
	bridgeLength: "From the tip to the V of the bridge hand, at address.",
	gripFromButt: "From the middle of the grip hand to the butt end.",
	seated:
		"Players in a chair or frame are fitted like anyone else; the span model changes.",
	presentBalance: "Where the cue rests level on a finger.",
	presentButt: "At the butt end, over the thickest part.",
	budget: "Decides woods and splice where no wish does.",
	wishLength: "Leave open to take the recommendation.",
	notes: "Anything else: sights along the grain, plays in a cold hall, …",
};

/** How a field's lengths are written. */
const KIND: Partial<Record<FieldName, LengthKind>> = {
	stature: "body",
	armSpan: "body",
	gripReadings: "diameter",
	presentButt: "diameter",
	presentTip: "diameter",
	wishButt: "diameter",
	wishTip: "diameter",
	presentLength: "length",
	wishLength: "length",
	handLength: "length",
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
