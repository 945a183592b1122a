import type { FieldName } from "@/lib/forms/fields";

/** The way through a fitting: what is asked where. The last stop is the recommendation. */
export const QUESTION_STEPS = [
	{
		id: "player",
		name: "Player",
		title: "Who is it for, and how do they play?",
		lead: "Height alone already moves the length. Whatever is left out is estimated and shown as an estimate.",
		fields: ["game", "level", "hand", "stature", "armSpan", "age", "sex"],
		more: ["shoulderToElbow", "elbowToGrip", "shoulderBreadth"],
	},
	{
		id: "hand",
		name: "Hand",
		title: "Read the grip circle",
		lead: "The ring of thumb and forefinger, as it lies round the cue. This one measure decides the butt.",
		fields: ["gripReadings", "wishClosure", "handLength"],
		more: [],
	},
	{
		id: "stance",
		name: "Stance",
		title: "Down on the shot",
		lead: "Let the player settle on a straight shot, then read at the cue. Two tape readings are worth more than all the tables.",
		fields: [
			"bridgeToGrip",
			"bridgeLength",
			"gripFromButt",
			"stance",
			"posture",
			"bridgeArm",
			"seated",
		],
		more: [],
	},
	{
		id: "present-cue",
		name: "Present cue",
		title: "The cue they play with now",
		lead: "What is right about it is kept, what is wrong is moved a step.",
		fields: [
			"presentLength",
			"presentMass",
			"presentButt",
			"presentTip",
			"presentBalance",
			"presentLikes",
			"presentDislikes",
		],
		more: [],
	},
	{
		id: "wishes",
		name: "Wishes",
		title: "What they ask for",
		lead: "A wish replaces the estimate. Leave open whatever they have no view on.",
		fields: [
			"budget",
			"wishButtWood",
			"wishShaftWood",
			"wishSplice",
			"wishLayout",
			"notes",
		],
		more: [
			"wishLength",
			"wishMass",
			"wishButt",
			"wishTip",
			"wishTaper",
			"wishFerrule",
		],
	},
] as const satisfies readonly {
	id: string;
	name: string;
	title: string;
	lead: string;
	fields: readonly FieldName[];
	more: readonly FieldName[];
}[];

export type QuestionStep = (typeof QUESTION_STEPS)[number];

export const RECOMMENDATION = {
	id: "recommendation",
	name: "Recommendation",
} as const;

export const stepHref = (fittingNumber: number, id: string): string =>
	`/fittings/${fittingNumber}/${id}`;
