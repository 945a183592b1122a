import { expect, test } from "vitest";
import { sameParts } from "@/app/_ui/in-turn/same-parts";
import { type Advice, advise } from "@/lib/advice/advise";
import { must } from "@/lib/numerics/outcome";
import { BUTT_COST } from "@/lib/present/butt-chart";
import { LENGTH_COST } from "@/lib/present/length-chart";
import { poseOf } from "@/lib/present/pose-view";
import { TIP_COST } from "@/lib/present/tip-chart";
import { WEIGHT_COST } from "@/lib/present/weight-chart";
import { withStature } from "../support/inputs";

const player = { statureMm: 1780, gripCircleReadingsMm: [27, 27.5] };
const wishing = (
	wishes: NonNullable<Parameters<typeof withStature>[1]>["wishes"],
): Advice =>
	must(
		advise(
			withStature(1780, {
				player,
				wishes: { buttWood: "black-walnut", ...wishes },
			}),
		),
	);
const before = wishing({ massG: 540 });

/** Whether the second advice gives a part anew, in the eyes of what draws in turn. */
const changed = (partOf: (advice: Advice) => unknown, next: Advice) => {
	const was = partOf(before);
	return !Object.is(sameParts(was, partOf(next)), was);
};

test("another weight leaves every other chart, the weight's own curve, and the pose as they are", () => {
	const next = wishing({ massG: 541 });
	for (const cost of [BUTT_COST, LENGTH_COST, TIP_COST])
		expect(changed(cost.partsOf, next)).toBe(false);
	expect(changed((advice) => WEIGHT_COST.partsOf(advice).asked, next)).toBe(
		false,
	);
	expect(changed((advice) => WEIGHT_COST.partsOf(advice).shown, next)).toBe(
		true,
	);
	expect(changed(poseOf, next)).toBe(false);
});

test("another tip moves along its curve; the cue's other curves follow it", () => {
	const { value } = before.tip;
	const next = wishing({ massG: 540, tipDiameterMm: value + 0.1 });
	expect(changed((advice) => TIP_COST.partsOf(advice).shown, next)).toBe(true);
	expect(changed((advice) => TIP_COST.partsOf(advice).asked, next)).toBe(false);
	expect(changed((advice) => WEIGHT_COST.partsOf(advice).asked, next)).toBe(
		true,
	);
});

test("another length is another cue for each of them, and another pose", () => {
	const next = wishing({ massG: 540, lengthMm: before.length.value + 6 });
	for (const cost of [WEIGHT_COST, BUTT_COST, TIP_COST])
		expect(changed((advice) => cost.partsOf(advice).asked, next)).toBe(true);
	expect(changed(LENGTH_COST.partsOf, next)).toBe(true);
	expect(changed(poseOf, next)).toBe(true);
});
