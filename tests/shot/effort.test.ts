import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	bestMassAtEqualEffortG,
	equalEffortSpeedFraction,
	feltArmMassG,
} from "@/lib/shot/effort";
import { gramsToOunces, ouncesToGrams } from "@/lib/units/quantity";

const arm = fc.record({
	ballMassG: fc.double({ min: 80, max: 230, noNaN: true }),
	armMassG: fc.double({ min: 200, max: 1200, noNaN: true }),
});

describe("ball speed at equal effort", () => {
	it("is 1 at the best mass and below 1 either side", () => {
		fc.assert(
			fc.property(arm, fc.double({ min: 0.5, max: 2, noNaN: true }), (p, k) => {
				const best = bestMassAtEqualEffortG(p);
				expect(equalEffortSpeedFraction({ ...p, cueMassG: best })).toBe(1);
				expect(
					equalEffortSpeedFraction({ ...p, cueMassG: best * k }),
				).toBeLessThanOrEqual(1 + 1e-12);
			}),
		);
	});

	it("the best mass is the one a plain search over cue masses finds", () => {
		const p = { ballMassG: 142, armMassG: 600 };
		const speed = (cueMassG: number): number =>
			(cueMassG / (cueMassG + p.ballMassG)) *
			Math.sqrt(1 / (cueMassG + p.armMassG));
		let found = 0;
		for (let g = 200; g < 900; g += 0.1) if (speed(g) > speed(found)) found = g;
		expect(bestMassAtEqualEffortG(p)).toBeCloseTo(found, 0);
	});

	it("is flat: a tenth more or less cue costs under 0.2 % of ball speed", () => {
		for (const armMassG of [510, 670])
			for (const ballMassG of [94, 142, 170, 210]) {
				const best = bestMassAtEqualEffortG({ ballMassG, armMassG });
				for (const k of [0.9, 1.1])
					expect(
						equalEffortSpeedFraction({
							ballMassG,
							armMassG,
							cueMassG: best * k,
						}),
					).toBeGreaterThan(0.998);
			}
	});

	it("depends on ratios alone", () => {
		fc.assert(
			fc.property(
				arm,
				fc.double({ min: 0.1, max: 10, noNaN: true }),
				(p, k) => {
					expect(
						bestMassAtEqualEffortG({
							ballMassG: k * p.ballMassG,
							armMassG: k * p.armMassG,
						}) / bestMassAtEqualEffortG(p),
					).toBeCloseTo(k, 9);
				},
			),
		);
	});
});

describe("arm felt at the grip", () => {
	// About 0.67 kg and 0.51 kg worked out elsewhere from the same segment table.
	it("is about two thirds of a kilogram for a 73 kg man and half for a 61.9 kg woman", () => {
		expect(
			feltArmMassG({ bodyMassKg: 73, sex: "male" }).value / 670,
		).toBeCloseTo(1, 1);
		expect(
			feltArmMassG({ bodyMassKg: 61.9, sex: "female" }).value / 510,
		).toBeCloseTo(1, 1);
	});

	it("puts the best snooker cue near 18 oz for him and 16 oz for her", () => {
		const ounces = (sex: "female" | "male"): number =>
			gramsToOunces(
				bestMassAtEqualEffortG({
					ballMassG: 142,
					armMassG: feltArmMassG({ sex }).value,
				}),
			);
		expect(ounces("male")).toBeGreaterThan(17.7);
		expect(ounces("male")).toBeLessThan(18.3);
		expect(ounces("female")).toBeGreaterThan(15.9);
		expect(ounces("female")).toBeLessThan(16.5);
	});

	it("grows with body mass, and its spread shrinks with what is known", () => {
		const light = feltArmMassG({ bodyMassKg: 40, sex: "male" });
		const heavy = feltArmMassG({ bodyMassKg: 80, sex: "male" });
		expect(heavy.value / light.value).toBeCloseTo(2, 12);
		const relative = (e: { value: number; sd: number }) => e.sd / e.value;
		expect(relative(heavy)).toBeLessThan(
			relative(feltArmMassG({ sex: "male" })),
		);
		expect(relative(feltArmMassG({ sex: "male" }))).toBeLessThan(
			relative(feltArmMassG({})),
		);
		expect(() => feltArmMassG({ bodyMassKg: -3 })).toThrow(/bodyMassKg.*-3/);
	});

	it("weighs more against a heavier ball: the best cue follows the ball", () => {
		const best = (ballMassG: number): number =>
			bestMassAtEqualEffortG({ ballMassG, armMassG: 600 });
		expect(best(ouncesToGrams(6))).toBeGreaterThan(best(142));
	});
});
