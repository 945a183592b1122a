import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Advice, advise } from "@/lib/advice/advise";
import type { FittingInput } from "@/lib/advice/input";
import { BUTT_LIMITS_MM } from "@/lib/advice/judgement";
import { weighCue } from "@/lib/cue/mass";
import { diameterAtMm } from "@/lib/cue/taper";
import { must } from "@/lib/numerics/outcome";
import { closureMm } from "@/lib/player/hand";
import {
	gramsToOunces,
	inchesToMm,
	mmToInches,
	ouncesToGrams,
} from "@/lib/units/quantity";
import { anyInput, unsaid, withStature } from "../support/inputs";

const advised = (input: FittingInput): Advice => must(advise(input));
const inches = (input: FittingInput) => mmToInches(advised(input).length.value);

describe("length", () => {
	test("grows with stature", () => {
		const lengths = [1100, 1250, 1400, 1550, 1700, 1850, 2000].map((mm) =>
			inches(withStature(mm)),
		);
		expect([...lengths].sort((a, b) => a - b)).toEqual(lengths);
		expect(new Set(lengths).size).toBe(lengths.length);
	});
	test("a long measured span asks for a longer cue than a short one", () => {
		const at = (bridgeToGripMm: number) =>
			inches(
				withStature(1750, { stance: { gameId: "snooker", bridgeToGripMm } }),
			);
		expect(at(1180)).toBeGreaterThan(at(1040));
	});
	test("a complaint moves it from the present cue, praise holds it there", () => {
		const at = (presentCue: FittingInput["presentCue"]) =>
			advised(withStature(1750, { presentCue })).length.exact;
		const lengthMm = inchesToMm(58);
		expect(at({ lengthMm, dislikes: ["too-long"] })).toBeLessThan(
			at({ lengthMm }),
		);
		expect(
			Math.abs(at({ lengthMm, likes: ["length"] }) - lengthMm),
		).toBeLessThan(Math.abs(at({ lengthMm }) - lengthMm));
	});
	test("never falls below the rule of the game, and says so", () => {
		const advice = advised({
			player: { statureMm: 900 },
			stance: { gameId: "american-pool" },
			presentCue: {},
			wishes: {},
		});
		expect(advice.length.value).toBeGreaterThanOrEqual(1016);
		expect(advice.cautions.map(({ code }) => code)).toContain(
			"length-raised-to-rule",
		);
	});
});

describe("weight", () => {
	test("a wish the wood can give is built to the gram", () => {
		const wished = ouncesToGrams(19);
		const advice = advised({ ...unsaid, wishes: { massG: wished } });
		expect(advice.mass.value).toBe(wished);
		const plan = must(advice.build.plan);
		expect(weighCue(plan.finished).massG.value).toBeCloseTo(wished, 6);
	});
	test("a wish below the natural weight is refused with the nearest that works", () => {
		const advice = advised({
			...unsaid,
			wishes: { massG: 305, buttWood: "african-blackwood" },
		});
		expect(advice.isBuildable).toBe(false);
		if (advice.build.plan.ok) throw new Error("expected a refusal");
		const [refusal] = advice.build.plan.refusals;
		expect(refusal).toMatchObject({ code: "weight-below-natural", value: 305 });
		const nearest = Number(refusal?.facts?.nearestMassG);
		const again = advised({
			...unsaid,
			wishes: { massG: Math.ceil(nearest), buttWood: "african-blackwood" },
		});
		expect(again.isBuildable).toBe(true);
	});
	test("a weight nobody asked for gives way to the wood, and says so", () => {
		const advice = advised({
			player: { statureMm: 1100 },
			stance: { gameId: "snooker" },
			presentCue: { massG: 300, likes: ["weight"] },
			wishes: { buttWood: "snakewood", buttDiameterMm: 31, lengthMm: 1500 },
		});
		expect(advice.mass.value).toBeGreaterThan(advice.mass.exact);
		expect(advice.isBuildable).toBe(true);
		expect(advice.cautions.map(({ code }) => code)).toContain(
			"mass-raised-to-wood",
		);
	});
	test("keeps the pool rule", () => {
		expect(
			gramsToOunces(
				advised({
					...unsaid,
					stance: { gameId: "american-pool" },
					presentCue: { massG: 840, likes: ["weight"] },
				}).mass.value,
			),
		).toBeLessThanOrEqual(25);
	});
});

describe("butt", () => {
	test.each(["touching", "small-gap", "small-overlap"] as const)(
		"a measured ring closes %s at the grip hand",
		(closure) => {
			const advice = advised({
				...unsaid,
				player: { statureMm: 1750, gripCircleReadingsMm: [26, 26, 26] },
				wishes: { closure },
			});
			const { design } = advice.build;
			const diameterMm = diameterAtMm(design, advice.butt.gripStationMm);
			// Half the bench's step of diameter, as an arc.
			const step = Math.PI * 0.125;
			const wanted = { touching: 0, "small-gap": 5, "small-overlap": -5 }[
				closure
			];
			expect(
				Math.abs(
					closureMm({ circleMm: advice.grip.circleMm.value, diameterMm }) -
						wanted,
				),
			).toBeLessThanOrEqual(step);
		},
	);
	test("a ring outside what the bench turns is told, not hidden", () => {
		const advice = advised({
			...unsaid,
			player: { gripCircleReadingsMm: [40, 40] },
		});
		expect(advice.butt.figure.value).toBe(BUTT_LIMITS_MM.max);
		expect(advice.butt.wantedRangeMm.low).toBeGreaterThan(BUTT_LIMITS_MM.max);
		expect(advice.cautions.map(({ code }) => code)).toContain(
			"butt-range-cut-by-bench",
		);
	});
	test("more readings make it surer", () => {
		const sd = (gripCircleReadingsMm: number[]) =>
			advised({ ...unsaid, player: { gripCircleReadingsMm } }).butt.figure.sd;
		expect(sd([28, 28, 28, 28])).toBeLessThan(sd([28]));
		expect(sd([28])).toBeLessThan(sd([]));
	});
});

describe("build", () => {
	test("an open budget takes ebony, and sets it aside where it is already too heavy", () => {
		expect(advised({ ...unsaid, budget: "open" }).build.request.buttWood).toBe(
			"gaboon-ebony",
		);
	});
	test("balance stays in the usual window where the bore allows", () => {
		const { balance } = advised(withStature(1750));
		expect(balance.value).toBeGreaterThanOrEqual(inchesToMm(15) - 1);
		expect(balance.value).toBeLessThanOrEqual(inchesToMm(19) + 1);
	});
});

/** Common practice, no source: the table of usual cues a coach would expect. */
describe("common practice", () => {
	test("an adult of 1.75 m with no wishes gets 57–58 in, 17–18.5 oz, 9–10 mm in snooker", () => {
		const advice = advised(withStature(1750));
		expect(mmToInches(advice.length.value)).toBeGreaterThanOrEqual(57);
		expect(mmToInches(advice.length.value)).toBeLessThanOrEqual(58);
		expect(gramsToOunces(advice.mass.value)).toBeGreaterThanOrEqual(17);
		expect(gramsToOunces(advice.mass.value)).toBeLessThanOrEqual(18.5);
		expect(advice.tip.value).toBeGreaterThanOrEqual(9);
		expect(advice.tip.value).toBeLessThanOrEqual(10);
	});
	test("1.95 m gets at least 58.5 in", () =>
		expect(inches(withStature(1950))).toBeGreaterThanOrEqual(58.5));
	test("a child of 1.25 m gets at most 48 in", () =>
		expect(inches(withStature(1250))).toBeLessThanOrEqual(48));
});

test("any fitting the forms let through is advised or refused with field, value and bound; no NaN", () => {
	fc.assert(
		fc.property(anyInput, (input) => {
			const outcome = advise(input);
			if (!outcome.ok) {
				for (const refusal of outcome.refusals) {
					expect(refusal.field).not.toBe("");
					expect(refusal.code).not.toBe("");
				}
				return;
			}
			const { length, mass, butt, tip, balance } = outcome.value;
			for (const figure of [length, mass, butt.figure, tip, balance]) {
				expect(
					Number.isFinite(figure.value) && Number.isFinite(figure.sd),
				).toBe(true);
				expect(
					figure.evidence.reduce(
						(sum, { shareFraction }) => sum + shareFraction,
						0,
					),
				).toBeCloseTo(1, 9);
			}
			expect(nonFinite(outcome.value)).toEqual([]);
		}),
		{ numRuns: 150 },
	);
});

/** Paths of numbers that are not finite, anywhere inside. */
function nonFinite(value: unknown, path = ""): string[] {
	if (typeof value === "number") return Number.isFinite(value) ? [] : [path];
	if (typeof value !== "object" || value === null) return [];
	return Object.entries(value).flatMap(([key, inner]) =>
		nonFinite(inner, `${path}.${key}`),
	);
}
