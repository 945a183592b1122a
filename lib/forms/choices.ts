import { CRITERION_IDS } from "@/lib/advice/criteria";
import { WOODS, type WoodId } from "@/lib/reference/woods";

const woodsFor = (use: "shaft" | "butt") =>
	Object.values(WOODS)
		.filter((wood) => wood.uses.includes(use))
		.map((wood) => wood.id) as [WoodId, ...WoodId[]];

/** What is chosen from, in the order shown. Without schemas: pages that only name a choice load none. */
export const CHOICES = {
	sex: ["female", "male"],
	hand: ["right", "left"],
	stance: ["side-on", "square"],
	posture: ["low", "upright"],
	bridgeArm: ["straight", "bent"],
	game: ["snooker", "english-eight-ball", "american-pool", "carom"],
	level: ["new", "club", "county"],
	budget: ["low", "middle", "open"],
	liked: ["length", "weight", "butt", "tip", "balance"],
	complaint: [
		"too-long",
		"too-short",
		"too-heavy",
		"too-light",
		"too-thick",
		"too-slim",
		"tip-too-big",
		"tip-too-small",
		"front-heavy",
		"butt-heavy",
	],
	closure: ["small-gap", "touching", "small-overlap"],
	shaftWood: woodsFor("shaft"),
	buttWood: woodsFor("butt"),
	splice: ["hand-four-point", "machine-four-point", "plain"],
	layout: ["one-piece", "three-quarter", "centre"],
	taperShape: ["straight", "even", "slim-forward", "full-forward"],
	ferruleMetal: ["brass", "stainless-steel"],
	criterion: CRITERION_IDS,
	steadiness: ["as-now", "steadier", "livelier", "no-matter"],
	stiffness: ["as-now", "stiffer", "softer", "no-matter"],
	deflection: ["low", "no-matter"],
	/** Measures taken with a tape or a gauge: each may be said to have been impossible to take. */
	measure: [
		"stature",
		"armSpan",
		"shoulderToElbow",
		"elbowToGrip",
		"shoulderBreadth",
		"handLength",
		"gripReadings",
		"bridgeToGrip",
		"bridgeLength",
		"gripFromButt",
		"cueInHand",
	],
} as const;

export type MeasureName = (typeof CHOICES.measure)[number];
