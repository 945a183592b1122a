import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	centreHitSpeedRatio,
	cueSpeedKeptRatio,
	efficiencyRatio,
	offsetHitSpeedRatio,
	restitutionFromEfficiency,
	separationOffsetRatio,
} from "@/lib/shot/speed";

const impact = fc.record({
	cueMassG: fc.double({ min: 300, max: 800, noNaN: true }),
	ballMassG: fc.double({ min: 80, max: 230, noNaN: true }),
	restitutionRatio: fc.double({ min: 0, max: 1, noNaN: true }),
});

describe("centre hits", () => {
	it("keep momentum and lose exactly the energy that restitution says", () => {
		fc.assert(
			fc.property(impact, (p) => {
				const ball = centreHitSpeedRatio(p);
				const cue = cueSpeedKeptRatio(p);
				expect(p.cueMassG * cue + p.ballMassG * ball).toBeCloseTo(
					p.cueMassG,
					9,
				);
				expect(ball - cue).toBeCloseTo(p.restitutionRatio, 12);
				const left =
					(p.cueMassG * cue ** 2 + p.ballMassG * ball ** 2) / p.cueMassG;
				expect(left).toBeCloseTo(efficiencyRatio(p), 12);
			}),
		);
	});

	it("efficiency and restitution invert each other", () => {
		fc.assert(
			fc.property(impact, (p) => {
				const back = restitutionFromEfficiency({
					...p,
					efficiencyRatio: efficiencyRatio(p),
				});
				// The square root at e = 0 turns 1e-16 into 1e-8.
				expect(back ?? 0).toBeCloseTo(p.restitutionRatio, 7);
			}),
		);
	});

	it("refuse a share outside 0 to 1 and a mass of nothing by name", () => {
		const p = { cueMassG: 540, ballMassG: 142, restitutionRatio: 0.73 };
		expect(() => centreHitSpeedRatio({ ...p, restitutionRatio: 1.2 })).toThrow(
			/restitutionRatio.*1\.2/,
		);
		expect(() => centreHitSpeedRatio({ ...p, cueMassG: 0 })).toThrow(
			/cueMassG.*0/,
		);
		expect(() => centreHitSpeedRatio({ ...p, ballMassG: Number.NaN })).toThrow(
			/ballMassG/,
		);
	});
});

describe("off-centre hits", () => {
	it("constant restitution keeps sideways-free momentum, spin momentum and the approach speed", () => {
		fc.assert(
			fc.property(
				impact,
				fc.double({ min: -0.7, max: 0.7, noNaN: true }),
				(p, x) => {
					const v = offsetHitSpeedRatio({
						...p,
						offsetRatio: x,
					}).constantRestitution;
					const cue = 1 - (p.ballMassG / p.cueMassG) * v;
					// Contact point of the ball: centre speed plus the spin's share, ωb = 2.5 x² v.
					expect(v * (1 + 2.5 * x * x) - cue).toBeCloseTo(
						p.restitutionRatio,
						12,
					);
				},
			),
		);
	});

	it("constant efficiency conserves its energy share, spin included", () => {
		fc.assert(
			fc.property(
				impact,
				fc.double({ min: -0.7, max: 0.7, noNaN: true }),
				(p, x) => {
					const v = offsetHitSpeedRatio({
						...p,
						offsetRatio: x,
					}).constantEfficiency;
					if (v === null) return;
					const mr = p.ballMassG / p.cueMassG;
					const cue = 1 - mr * v;
					const left = cue ** 2 + mr * v ** 2 * (1 + 2.5 * x * x);
					expect(left).toBeCloseTo(efficiencyRatio(p), 10);
				},
			),
		);
	});

	it("has no constant-efficiency answer for a dead tip far out, and says so", () => {
		expect(
			offsetHitSpeedRatio({
				cueMassG: 540,
				ballMassG: 170,
				restitutionRatio: 0.2,
				offsetRatio: 0.5,
			}).constantEfficiency,
		).toBeNull();
	});

	it("constant restitution never reads below constant efficiency", () => {
		fc.assert(
			fc.property(
				impact,
				fc.double({ min: 0, max: 0.7, noNaN: true }),
				(p, offsetRatio) => {
					const both = offsetHitSpeedRatio({ ...p, offsetRatio });
					if (both.constantEfficiency === null) return;
					expect(both.constantRestitution).toBeGreaterThanOrEqual(
						both.constantEfficiency - 1e-12,
					);
				},
			),
		);
	});

	it("separates everywhere without loss until the ball turns away from the cue", () => {
		expect(
			separationOffsetRatio({
				cueMassG: 540,
				ballMassG: 180,
				efficiencyRatio: 1,
			}),
		).toBeCloseTo(Math.sqrt(0.4 * (4 / 3)), 12);
		expect(
			separationOffsetRatio({
				cueMassG: 540,
				ballMassG: 180,
				efficiencyRatio: 0.5,
			}),
		).toBeNull();
	});
});
