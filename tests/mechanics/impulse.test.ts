import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { beamOf } from "@/lib/mechanics/beam";
import { type Drive, endMassOfBeamG } from "@/lib/mechanics/impulse";
import { beamProfileOf } from "@/lib/mechanics/profile";
import {
	HALF_SINE_FORCE_FACTOR,
	slenderShaftEndMassG,
} from "@/lib/shot/endmass";
import { cue } from "../support/designs";
import {
	denseBeam,
	denseEndMassG,
	densePushedEndMassG,
} from "../support/reference-beam";
import { type RoundBar, roundProfile } from "../support/round-bars";

const shaft: RoundBar = {
	lengthMm: 1500,
	tipMm: 12,
	buttMm: 12,
	modulusGPa: 12.5,
	densityKgM3: 690,
};
const endMass = (
	bar: RoundBar,
	contactTimeMs: number,
	drive: Drive = "following-ball",
): number =>
	endMassOfBeamG({
		beam: beamOf({ profile: roundProfile(bar), fineness: 4 }),
		axis: "x",
		contactTimeMs,
		drive,
		steps: 100,
		reaches: 50,
	});

describe("slender uniform shaft", () => {
	// Closed form derived in lib/shot/endmass.ts; another time-stepped model of it gave 4.834 g.
	it("12 mm, 12.5 GPa, 690 kg/m³, 1 ms: 4.832 g by the closed form, 4.834 g stepped elsewhere", () => {
		const found = endMass(shaft, 1);
		const closed = slenderShaftEndMassG({
			diameterMm: 12,
			modulusGPa: 12.5,
			densityKgM3: 690,
			contactTimeMs: 1,
		});
		expect(found / closed).toBeCloseTo(1, 2);
		expect(Math.abs(found - 4.834)).toBeLessThan(0.02);
	});

	it("pushed by a half-sine force it counts 44 % heavier, as its own closed form says", () => {
		const closed = slenderShaftEndMassG({
			diameterMm: 12,
			modulusGPa: 12.5,
			densityKgM3: 690,
			contactTimeMs: 1,
			factor: HALF_SINE_FORCE_FACTOR,
		});
		const found = endMass(shaft, 1, "half-sine-force");
		expect(Math.abs(found / closed - 1)).toBeLessThan(0.01);
		expect(found / endMass(shaft, 1)).toBeCloseTo(1.44, 1);
	});

	it("scales as d^(5/2), √τ and ρ^(3/4)E^(1/4)", () => {
		const cases = fc.record({
			diameterMm: fc.double({ min: 8, max: 14, noNaN: true }),
			contactTimeMs: fc.double({ min: 0.7, max: 1.6, noNaN: true }),
		});
		fc.assert(
			fc.property(cases, ({ diameterMm, contactTimeMs }) => {
				const bar = { ...shaft, tipMm: diameterMm, buttMm: diameterMm };
				const base = endMass(bar, contactTimeMs);
				const wider = {
					...bar,
					tipMm: 1.2 * diameterMm,
					buttMm: 1.2 * diameterMm,
				};
				expect(endMass(wider, contactTimeMs) / base).toBeCloseTo(
					1.2 ** 2.5,
					1.9,
				);
				expect(endMass(bar, 1.44 * contactTimeMs) / base).toBeCloseTo(1.2, 1.9);
				expect(
					endMass(
						{ ...bar, densityKgM3: 16 * 69, modulusGPa: 12.5 },
						contactTimeMs,
					) /
						endMass(
							{ ...bar, densityKgM3: 69, modulusGPa: 12.5 },
							contactTimeMs,
						),
				).toBeCloseTo(8, 0.5);
			}),
			{ numRuns: 15 },
		);
	});
});

describe("a short stiff bar is a rigid body", () => {
	// Shepard 2001: M/m_e = 1 + (L − B)²/k², 4 for a uniform rod struck at its end.
	it("a uniform rod counts a quarter of its mass", () => {
		const stub = { ...shaft, lengthMm: 40, modulusGPa: 1e6 };
		const massG = 1e-6 * 690 * Math.PI * 36 * 40;
		expect(massG / endMass(stub, 1)).toBeCloseTo(4, 3);
		expect(massG / endMass(stub, 1, "half-sine-force")).toBeCloseTo(4, 3);
	});

	// The same source: 8(6 + 9β + 10β² + 4β³ + β⁴)/{3[(1 + β)⁴ + 4β²]} for a cone struck at its small end,
	// without the breadth's own inertia: 6.83 at β = 0.4.
	it("a cone of β 0.4 counts 1/6.83", () => {
		const stub = {
			...shaft,
			lengthMm: 100,
			tipMm: 8,
			buttMm: 20,
			modulusGPa: 1e6,
		};
		const massG = (1e-6 * 690 * Math.PI * 100 * 100 * (1 + 0.4 + 0.16)) / 3;
		const beta = 0.4;
		const wanted =
			(8 * (6 + 9 * beta + 10 * beta ** 2 + 4 * beta ** 3 + beta ** 4)) /
			(3 * ((1 + beta) ** 4 + 4 * beta ** 2));
		expect(wanted).toBeCloseTo(6.83, 2);
		expect(massG / endMass(stub, 1)).toBeCloseTo(wanted, 2);
	});
});

describe("a cue's end mass", () => {
	const design = cue();
	const profile = beamProfileOf(design);
	const dense = denseBeam({ bar: profile });

	it.each([0.8, 1.2, 2.5])(
		"agrees with the closed-form sum over all dense modes at %f ms to 0.2 %",
		(contactTimeMs) => {
			const beam = beamOf({ profile, fineness: 4 });
			const p = {
				beam,
				axis: "x",
				contactTimeMs,
				steps: 100,
				reaches: 50,
			} as const;
			expect(
				endMassOfBeamG(p) / denseEndMassG(dense, contactTimeMs),
			).toBeCloseTo(1, 2.4);
			expect(
				endMassOfBeamG({ ...p, drive: "half-sine-force" }) /
					densePushedEndMassG(dense, contactTimeMs),
			).toBeCloseTo(1, 2);
		},
	);

	it("mass at the tip counts whole, a hand's breadth back hardly, past 180 mm not at all", () => {
		// Published: clamped-on mass has no effect beyond about 7 in (178 mm) from the tip.
		const withMass = (fromMm: number): number =>
			endMassOfBeamG({
				beam: beamOf({
					fineness: 4,
					profile: {
						...profile,
						breaksMm: [...profile.breaksMm, fromMm, fromMm + 4].sort(
							(a, b) => a - b,
						),
						sectionAt: (z) => {
							const section = profile.sectionAt(z);
							return z >= fromMm && z < fromMm + 4
								? {
										...section,
										// 3 g over 4 mm
										massPerLengthKgM: section.massPerLengthKgM + 0.75,
									}
								: section;
						},
					},
				}),
				axis: "x",
				contactTimeMs: 1.2,
				steps: 60,
			});
		const bare = endMassOfBeamG({
			beam: beamOf({ profile, fineness: 4 }),
			axis: "x",
			contactTimeMs: 1.2,
			steps: 60,
		});
		const share = (fromMm: number): number => (withMass(fromMm) - bare) / 3;
		expect(share(0.5)).toBeGreaterThan(0.85);
		expect(share(60)).toBeLessThan(0.5);
		expect(Math.abs(share(180))).toBeLessThan(0.06);
		expect(Math.abs(share(300))).toBeLessThan(0.02);
	});

	it("does not care about the butt: a heavy weight there changes it by less than 0.1 %", () => {
		const weighted = beamProfileOf({
			...design,
			addedWeight: [
				{
					fromStationMm: 1340,
					toStationMm: 1420,
					diameterMm: 14,
					metal: "lead",
				},
			],
		});
		const at = (p: typeof profile): number =>
			endMassOfBeamG({
				beam: beamOf({ profile: p, fineness: 2 }),
				axis: "x",
				contactTimeMs: 1.2,
				reaches: 50,
			});
		expect(at(weighted) / at(profile)).toBeCloseTo(1, 3);
	});

	it("throws on a contact of no time", () => {
		expect(() =>
			endMassOfBeamG({
				beam: beamOf({ profile, fineness: 1 }),
				axis: "x",
				contactTimeMs: 0,
			}),
		).toThrow(/contactTimeMs.*0 ms/);
	});
});
