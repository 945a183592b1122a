import type { FieldName } from "@/lib/forms/fields";

/** Questions asked in one place: what is said, at the wall, at the table, down on the shot. */
export interface QuestionGroup {
	readonly title: string;
	readonly lead?: string;
	readonly fields: readonly FieldName[];
	/** What takes the fields' place for somebody who measures alone. */
	readonly alone?: readonly FieldName[];
}

interface StepDefinition {
	readonly id: string;
	readonly name: string;
	readonly title: string;
	readonly lead: string;
	readonly groups: readonly QuestionGroup[];
	/** Folded away until wanted. */
	readonly more: readonly FieldName[];
	readonly moreTitle?: string;
	/** Whether a tape or a gauge is wanted: the step then offers measuring alone. */
	readonly measures?: boolean;
}

const step = (definition: StepDefinition) => ({
	...definition,
	fields: definition.groups.flatMap(({ fields }) => fields),
});

/**
 * The way through a fitting: what is asked where, in the order of the fewest moves. First what is
 * said, then everything standing at a wall, then the hand, then everything down on one shot. The last
 * stop is the recommendation.
 */
export const QUESTION_STEPS = [
	step({
		id: "player",
		name: "Player",
		title: "Who is it for, and how do they play?",
		lead: "Height alone already moves the length. Whatever is left out is estimated and shown as an estimate.",
		measures: true,
		groups: [
			{
				title: "Asked",
				fields: ["game", "level", "hand", "age", "sex"],
			},
			{
				title: "Standing at a wall",
				lead: "With a tape, shoes off.",
				fields: ["stature", "armSpan"],
				alone: ["stature"],
			},
		],
		more: ["shoulderToElbow", "elbowToGrip", "shoulderBreadth"],
		moreTitle: "Further measures at the wall",
	}),
	step({
		id: "hand",
		name: "Hand",
		title: "Read the grip circle",
		lead: "The ring of thumb and forefinger, as it lies round the cue. This one measure decides the butt.",
		measures: true,
		groups: [
			{
				title: "The ring",
				fields: ["gripReadings", "wishClosure"],
			},
			{ title: "The hand", fields: ["handLength"] },
		],
		more: [],
	}),
	step({
		id: "stance",
		name: "Stance",
		title: "Down on the shot",
		lead: "Let the player settle on a straight shot, then read at the cue. Two tape readings are worth more than all the tables.",
		measures: true,
		groups: [
			{
				title: "At address, with the tape",
				lead: "One shot for all three: hold still, read, stand up.",
				fields: ["bridgeToGrip", "bridgeLength", "gripFromButt"],
				alone: ["cueInHand", "bridgeLength", "gripFromButt"],
			},
			{
				title: "Seen at address",
				fields: [
					"stance",
					"posture",
					"bridgeArm",
					"seated",
					"standingFrame",
					"glasses",
				],
			},
		],
		more: ["cueInHand", "clothHeight"],
		moreTitle: "The cue in hand and this table",
	}),
	step({
		id: "present-cue",
		name: "Present cue",
		title: "The cue they play with now",
		lead: "What is right about it is kept, what is wrong is moved a step.",
		groups: [
			{
				title: "Its figures",
				fields: [
					"presentLength",
					"presentMass",
					"presentButt",
					"presentTip",
					"presentBalance",
				],
			},
			{
				title: "What they say of it",
				fields: ["presentLikes", "presentDislikes"],
			},
		],
		more: ["presentDiameter300", "presentDiameter700"],
		moreTitle: "With a slide gauge",
	}),
	step({
		id: "wishes",
		name: "Wishes",
		title: "What they ask for",
		lead: "A wish replaces the estimate. Leave open whatever they have no view on.",
		groups: [
			{
				title: "The build",
				fields: [
					"budget",
					"maxPrice",
					"longestPiece",
					"wishButtWood",
					"wishShaftWood",
					"wishSplice",
					"wishLayout",
					"notes",
				],
			},
		],
		more: [
			"wishLength",
			"wishMass",
			"wishButt",
			"wishTip",
			"wishTaper",
			"wishFerrule",
			"wishSteadiness",
			"wishStiffness",
			"wishDeflection",
			"priorityMore",
			"priorityNone",
		],
		moreTitle: "Exact wishes and what counts",
	}),
];

export type QuestionStep = (typeof QUESTION_STEPS)[number];

/** Measures that want a second pair of hands: left out of the shortened way, never out of the data. */
export const NOT_ALONE: readonly FieldName[] = [
	"armSpan",
	"shoulderToElbow",
	"elbowToGrip",
	"shoulderBreadth",
	"bridgeToGrip",
];

/** The fields of a group to ask, with whatever was answered before kept in sight. */
export function askedIn(
	{ fields, alone }: QuestionGroup,
	{ isAlone, answered }: { isAlone: boolean; answered: readonly FieldName[] },
): readonly FieldName[] {
	if (!isAlone) return fields;
	const shortened = alone ?? fields.filter((name) => !NOT_ALONE.includes(name));
	return [
		...shortened,
		...fields.filter(
			(name) => !shortened.includes(name) && answered.includes(name),
		),
	];
}

export const RECOMMENDATION = {
	id: "recommendation",
	name: "Recommendation",
} as const;

export const stepHref = (fittingNumber: number, id: string): string =>
	`/fittings/${fittingNumber}/${id}`;
