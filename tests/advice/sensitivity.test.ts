import { describe, expect, test } from "vitest";
import type { FittingInput } from "@/lib/advice/input";
import { type Influence, whatWouldChange } from "@/lib/advice/sensitivity";
import { openQuestions } from "@/lib/advice/unanswered";
import { withStature } from "../support/inputs";
import { prepared, searched } from "./support";

const influences = (
	input: FittingInput,
	triedCount = 3,
): readonly Influence[] =>
	whatWouldChange({
		search: searched(input, { optionCount: 1, candidateCount: 3000 }),
		choices: {},
		triedCount,
	});
const of = (found: readonly Influence[], answer: string) =>
	found.find((one) => one.answer === answer);

const bare = withStature(1750);
const fromBare = influences(bare);

describe("what would change the recommendation", () => {
	test("is told strongest first, for everything left open", () => {
		const steps = fromBare.map(({ feltSteps }) => feltSteps);
		expect([...steps].sort((a, b) => b - a)).toEqual(steps);
		const asked = openQuestions({
			needs: prepared(bare).needs,
			woods: [],
			densities: {},
		}).map(({ answer }) => answer);
		for (const answer of asked) expect(of(fromBare, answer)).toBeDefined();
		expect(of(fromBare, "player.statureMm")).toBeUndefined();
	});
	test("an unread ring moves the butt and nothing else of the needs", () => {
		const ring = of(fromBare, "player.gripCircleReadingsMm");
		expect(ring?.needMovement.buttDiameterMm).toBeGreaterThan(1);
		expect(ring?.needMovement.lengthMm).toBe(0);
		expect(ring?.needMovement.tipDiameterMm).toBe(0);
	});
	test("once the ring is read, reading it again moves far less", () => {
		const read = influences(
			withStature(1750, {
				player: { statureMm: 1750, gripCircleReadingsMm: [27, 27.4, 27.2] },
			}),
		);
		const again = of(read, "player.gripCircleReadingsMm");
		expect(again?.needMovement.buttDiameterMm).toBeLessThan(
			(of(fromBare, "player.gripCircleReadingsMm")?.needMovement
				.buttDiameterMm ?? 0) / 3,
		);
		expect(of(read, "player.handLengthMm")?.needMovement.buttDiameterMm).toBe(
			0,
		);
	});
	// Shepherded by the blend's own weights: a span's share of the length times its spread.
	test("the movement of a need is its share of the answer times the answer's spread", () => {
		const { needs } = prepared(bare);
		const span = of(fromBare, "stance.bridgeToGripMm");
		const stature = of(fromBare, "presentCue.massG");
		expect(span?.needMovement.lengthMm).toBeGreaterThan(0);
		// One further independent piece of evidence of spread h moves a blend of spread s by s²/√(s²+h²).
		const { sd } = needs.massNeed.figure;
		const spread = stature?.now?.sd ?? 0;
		expect(stature?.needMovement.massG).toBeCloseTo((sd * sd) / spread, 0);
	});
	test("working the cue out anew never loses by knowing", () => {
		const tried = fromBare.filter(({ worthGained }) => worthGained !== null);
		expect(tried.length).toBeGreaterThanOrEqual(3);
		for (const { worthGained } of tried)
			expect(worthGained).toBeGreaterThanOrEqual(-1e-9);
	});
	test("weighing the billets is among what is tried", () => {
		const densities = fromBare.filter(({ answer }) =>
			answer.startsWith("density."),
		);
		expect(densities).toHaveLength(2);
		for (const { cueMovement, unit } of densities) {
			expect(unit).toBe("kg/m³");
			expect(cueMovement).not.toBeNull();
		}
	});
	test("a choice left unsaid is forecast by its options", () => {
		expect(of(fromBare, "level")?.now).toBeNull();
		expect(of(fromBare, "level")?.needMovement.tipDiameterMm).toBeCloseTo(
			Math.sqrt(2 / 3) * 0.25,
			6,
		);
		expect(
			of(influences({ ...bare, level: "club" }, 0), "level"),
		).toBeUndefined();
	});
});
