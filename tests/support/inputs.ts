import fc from "fast-check";
import type { FittingInput } from "@/lib/advice/input";
import { BOUNDS, type QuantityBound } from "@/lib/forms/bounds";
import { CHOICES } from "@/lib/forms/choices";

/** A fitting with nothing said but the game. */
export const unsaid: FittingInput = {
	player: {},
	stance: { gameId: "snooker" },
	presentCue: {},
	wishes: {},
};

export const withStature = (
	statureMm: number,
	more: Partial<FittingInput> = {},
): FittingInput => ({
	...unsaid,
	player: { statureMm },
	...more,
});

const within = ({ min, max }: QuantityBound) =>
	fc.double({ min, max, noNaN: true });
const maybe = <T>(arbitrary: fc.Arbitrary<T>) =>
	fc.option(arbitrary, { nil: undefined });
const one = <T extends string>(choices: readonly T[]) =>
	fc.constantFrom(...choices);

/** Any fitting the forms let through. */
export const anyInput: fc.Arbitrary<FittingInput> = fc
	.record({
		player: fc.record({
			statureMm: maybe(within(BOUNDS.statureMm)),
			ageYears: maybe(within(BOUNDS.ageYears)),
			sex: maybe(one(CHOICES.sex)),
			gripCircleReadingsMm: maybe(
				fc.array(within(BOUNDS.gripCircleReadingMm), { maxLength: 4 }),
			),
		}),
		stance: fc.record({
			gameId: one(CHOICES.game),
			stance: maybe(one(CHOICES.stance)),
			posture: maybe(one(CHOICES.posture)),
			bridgeArm: maybe(one(CHOICES.bridgeArm)),
			seated: maybe(fc.boolean()),
			bridgeLengthMm: maybe(within(BOUNDS.bridgeLengthMm)),
			gripFromButtMm: maybe(within(BOUNDS.gripFromButtMm)),
		}),
		level: maybe(one(CHOICES.level)),
		budget: maybe(one(CHOICES.budget)),
		presentCue: fc.record({
			massG: maybe(within(BOUNDS.cueMassG)),
			buttDiameterMm: maybe(within(BOUNDS.presentButtDiameterMm)),
			dislikes: maybe(fc.subarray([...CHOICES.complaint])),
		}),
		wishes: fc.record({
			massG: maybe(within(BOUNDS.cueMassG)),
			lengthMm: maybe(within(BOUNDS.cueLengthMm)),
			buttWood: maybe(one(CHOICES.buttWood)),
			splice: maybe(one(CHOICES.splice)),
			layout: maybe(one(CHOICES.layout)),
		}),
	})
	.map((input) => JSON.parse(JSON.stringify(input)) as FittingInput);
