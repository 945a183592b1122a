import type { FieldName } from "@/lib/forms/fields";
import type { Messages, Reader } from "@/lib/words/reader";

/** Questions asked in one place: what is said, at the wall, at the table, down on the shot. */
export interface QuestionGroup {
	/** Its heading and what is said under it are messages of this name. */
	readonly id: keyof Messages["fittingSteps"]["group"];
	readonly fields: readonly FieldName[];
	/** What takes the fields' place for somebody who measures alone. */
	readonly alone?: readonly FieldName[];
}

interface StepDefinition {
	readonly id: keyof Messages["fittingSteps"]["title"];
	readonly groups: readonly QuestionGroup[];
	/** Folded away until wanted. */
	readonly more: readonly FieldName[];
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
		measures: true,
		groups: [
			{
				id: "asked",
				fields: ["game", "level", "hand", "age", "sex"],
			},
			{
				id: "wall",
				fields: ["stature", "armSpan"],
				alone: ["stature"],
			},
		],
		more: ["shoulderToElbow", "elbowToGrip", "shoulderBreadth"],
	}),
	step({
		id: "hand",
		measures: true,
		groups: [
			{
				id: "ring",
				fields: ["gripReadings", "wishClosure"],
			},
			{ id: "hand", fields: ["handLength"] },
		],
		more: [],
	}),
	step({
		id: "stance",
		measures: true,
		groups: [
			{
				id: "address",
				fields: ["bridgeToGrip", "bridgeLength", "gripFromButt"],
				alone: ["cueInHand", "bridgeLength", "gripFromButt"],
			},
			{
				id: "seen",
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
	}),
	step({
		id: "present-cue",
		groups: [
			{
				id: "figures",
				fields: [
					"presentLength",
					"presentMass",
					"presentButt",
					"presentTip",
					"presentBalance",
				],
			},
			{
				id: "said",
				fields: ["presentLikes", "presentDislikes"],
			},
		],
		more: ["presentDiameter300", "presentDiameter700"],
	}),
	step({
		id: "wishes",
		groups: [
			{
				id: "build",
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
} as const;

export const stopName = (
	{ id }: QuestionStep | typeof RECOMMENDATION,
	{ say }: Reader,
): string => say(`fittingSteps.name.${id}`);

export const stepHref = (fittingNumber: number, id: string): string =>
	`/fittings/${fittingNumber}/${id}`;
