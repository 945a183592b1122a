import { describe, expect, it } from "vitest";
import {
	efficiencyRatio,
	mostSpinOffsetRatio,
	offsetHitSpeedRatio,
	restitutionFromEfficiency,
	separationOffsetRatio,
} from "@/lib/shot/speed";
import {
	frictionNeededRatio,
	miscueOffsetRatio,
	spinRevPerS,
} from "@/lib/shot/spin";
import { ouncesToGrams } from "@/lib/units/quantity";

const BALL_G = ouncesToGrams(6);
const MPH = 0.44704;
const cue = (ounces: number) => ({
	cueMassG: ouncesToGrams(ounces),
	ballMassG: BALL_G,
});

describe("Alciatore TP A.30", () => {
	const restitutionRatio = restitutionFromEfficiency({
		...cue(19),
		efficiencyRatio: 0.87,
	});

	it("15 mph, 19 oz, η 0.87, x 0.5: 11.194 mph and 34.841 rev/s (both to the digit printed)", () => {
		if (restitutionRatio === null) throw new Error("no restitution");
		const { constantEfficiency } = offsetHitSpeedRatio({
			...cue(19),
			restitutionRatio,
			offsetRatio: 0.5,
		});
		if (constantEfficiency === null) throw new Error("no solution");
		expect(15 * constantEfficiency).toBeCloseTo(11.194, 3);
		expect(
			spinRevPerS({
				offsetRatio: 0.5,
				ballSpeedMPerS: 15 * constantEfficiency * MPH,
				ballDiameterMm: 57.15,
			}),
		).toBeCloseTo(34.841, 3);
	});

	it("η is 88.79 % for e 0.73 and 94.166 % for e 0.87 with 19 oz", () => {
		expect(
			100 * efficiencyRatio({ ...cue(19), restitutionRatio: 0.73 }),
		).toBeCloseTo(88.79, 2);
		expect(
			100 * efficiencyRatio({ ...cue(19), restitutionRatio: 0.87 }),
		).toBeCloseTo(94.166, 3);
	});

	it("the source's two tips are not one: η 0.87 means e 0.677, below its own leather 0.71–0.75", () => {
		expect(restitutionRatio).toBeCloseTo(0.677, 3);
	});

	it("without loss spin is most at x 0.7303 for three ball masses (eqs 11–12)", () => {
		expect(
			mostSpinOffsetRatio({ cueMassG: 3 * BALL_G, ballMassG: BALL_G }),
		).toBeCloseTo(0.7303, 4);
	});

	// 0.45 for 22 oz is printed; the digits beyond follow from the source's equations.
	it.each([
		{ ounces: 22, x: 0.4475 },
		{ ounces: 19, x: 0.4911 },
		{ ounces: 18, x: 0.506 },
	])(
		"a $ounces oz cue's tip fails to separate beyond x $x",
		({ ounces, x }) => {
			const p = { ...cue(ounces), efficiencyRatio: 0.87 };
			const limit = separationOffsetRatio(p);
			expect(limit).toBeCloseTo(x, 4);
			// Independent statement of the same: there the cue is as fast as the ball.
			const e = restitutionFromEfficiency(p);
			if (e === null || limit === null) throw new Error("no solution");
			const ball = offsetHitSpeedRatio({
				...p,
				restitutionRatio: e,
				offsetRatio: limit,
			}).constantEfficiency;
			if (ball === null) throw new Error("no solution");
			expect(1 - (p.ballMassG / p.cueMassG) * ball).toBeCloseTo(ball, 12);
		},
	);
});

describe("where two published models disagree: constant η (TP A.30) against constant e (Kim 2022)", () => {
	const at = (offsetRatio: number, restitutionRatio: number) =>
		offsetHitSpeedRatio({ ...cue(19), restitutionRatio, offsetRatio });

	it("they agree at the centre and for a lossless tip", () => {
		const centre = at(0, 0.73);
		expect(centre.constantEfficiency).toBeCloseTo(
			centre.constantRestitution,
			14,
		);
		const lossless = at(0.5, 1);
		expect(lossless.constantEfficiency).toBeCloseTo(
			lossless.constantRestitution,
			14,
		);
	});

	it("at x 0.5 with a leather tip they read 0.803 and 0.891, 11 % apart", () => {
		const both = at(0.5, 0.73);
		expect(both.constantEfficiency).toBeCloseTo(0.803, 3);
		expect(both.constantRestitution).toBeCloseTo(0.891, 3);
		expect(
			both.constantRestitution / (both.constantEfficiency ?? Number.NaN),
		).toBeCloseTo(1.11, 2);
	});
});

describe("Alciatore TP 2.1 and Shepard 1997 P1.7: friction a contact needs", () => {
	it("0.577 at half the radius, 0.659 at 0.55", () => {
		expect(frictionNeededRatio(0.5)).toBeCloseTo(0.577, 3);
		expect(frictionNeededRatio(0.55)).toBeCloseTo(0.659, 3);
	});

	it("a friction of 1 holds out to 0.707, of 0.6 to 0.5145", () => {
		expect(miscueOffsetRatio(1)).toBeCloseTo(Math.SQRT1_2, 14);
		expect(miscueOffsetRatio(0.6)).toBeCloseTo(0.5145, 4);
	});
});
