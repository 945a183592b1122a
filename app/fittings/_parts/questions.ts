import type { EstimateWords } from "@/app/_ui/fields/field";
import type { QuantitySpec } from "@/app/_ui/fields/quantity";
import { FIELDS, type FieldName } from "@/lib/forms/fields";
import type { LengthKind } from "@/lib/present/figures";

/** How each measure is taken, in a sentence beside its field. */
export const HINTS: Partial<Record<FieldName, string>> = {
	stature:
		"Shoes off, heels and back to the wall, a book flat on the head. “175 cm” or “5 ft 9”.",
	armSpan: "Fingertip to fingertip, arms stretched sideways along the wall.",
	age: "Years. Under 18 the children’s tables are used.",
	birthDate: "May be left out. Used only for the outlook on growth.",
	sex: "Only chooses which tables stand in for what was not measured, and a junior’s growth table.",
	shoulderToElbow:
		"Bony tip of the shoulder to the underside of the elbow, bent square.",
	elbowToGrip:
		"Back of the bent elbow to the middle of a pencil held in the fist.",
	shoulderBreadth: "Across the back, between the bony tips of the shoulders.",
	gripReadings:
		"Make the light ring that goes round the cue, pads just meeting, no squeeze, and read the diameter that fills it. Open the hand and read again, three times.",
	handLength: "Crease of the wrist to the tip of the middle finger, hand flat.",
	wishClosure:
		"How the pads of thumb and forefinger should meet round the butt. Coaches differ; this is a choice.",
	bridgeToGrip:
		"From the V of the bridge hand to the middle of the grip hand, along the cue.",
	bridgeLength: "From the tip to the V of the bridge hand.",
	gripFromButt: "From the middle of the grip hand to the butt end.",
	cueInHand:
		"Tip to butt end of the cue these readings are taken with. With bridge and grip it gives the span where that was not measured.",
	clothHeight: "Left out, the middle of what the rules of the game allow.",
	seated:
		"Players in a chair or frame are fitted like anyone else; the span model changes.",
	glasses: "The head stays a little higher to look through the lenses.",
	presentDiameter300:
		"With the butt’s, two gauge readings tell the taper, and with it how the cue swings and bends.",
	presentBalance: "Where the cue rests level on a finger.",
	presentButt: "At the butt end, over the thickest part.",
	budget: "Decides woods and splice where no wish does.",
	maxPrice:
		"In the price list’s currency. A ceiling: nothing dearer is advised.",
	longestPiece: "Taken apart. A ceiling: nothing longer is advised.",
	wishSteadiness:
		"A cue with more inertia about the hand wanders less and starts slower. Coaches differ.",
	wishDeflection:
		"Less deflection asks less aiming off when side is played. Coaches differ on its worth.",
	wishLength: "Leave open to take the recommendation.",
	notes: "Anything else: sights along the grain, plays in a cold hall, …",
};

/** The same for somebody without a second pair of hands. */
export const HINTS_ALONE: Partial<Record<FieldName, string>> = {
	stature:
		"Shoes off, heels and back to the wall. Press a book flat on your head against the wall, mark its underside, measure from the floor.",
	handLength:
		"Lay the hand on paper, mark the crease of the wrist and the tip of the middle finger, measure between the marks.",
	cueInHand:
		"Settle on a straight shot, have a bit of tape on the cue where each hand is, lay it down: tip to butt end.",
	bridgeLength: "On the same cue: from the tip to the tape of the bridge hand.",
	gripFromButt:
		"On the same cue: from the tape of the grip hand to the butt end.",
};

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
