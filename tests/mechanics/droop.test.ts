import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { droopClampedAt } from "@/lib/mechanics/droop";
import { beamProfileOf } from "@/lib/mechanics/profile";
import { cue } from "../support/designs";
import { roundProfile } from "../support/round-bars";

describe("droop of a clamped cue", () => {
	it("agrees with integrating its own moment twice", () => {
		const design = cue();
		const profile = beamProfileOf(design);
		const clampStationMm = 1330;
		// Deflection at the tip by the unit-load theorem, ∫ M·z/EI dz, both moments about station z.
		const n = 4000;
		const h = clampStationMm / 1000 / n;
		let weight = 0;
		let moment = 0;
		let droop = 0;
		let give = 0;
		for (let i = 0; i < n; i++) {
			const z = (i + 0.5) * h;
			const section = profile.sectionAt(1000 * z);
			const step = section.massPerLengthKgM * 9.80665 * h;
			// Moment at the middle of the step: all weight so far, half of this step's.
			moment += (weight + step / 4) * (h / 2);
			droop += ((moment * z) / section.stiffnessXNm2) * h;
			give += ((z * z) / section.stiffnessXNm2) * h;
			moment += (weight + (3 * step) / 4) * (h / 2);
			weight += step;
		}
		const found = droopClampedAt({ profile, axis: "x", clampStationMm });
		expect(found.tipDroopMm / (1000 * droop)).toBeCloseTo(1, 3);
		expect(found.tipGiveMmPerN / (1000 * give)).toBeCloseTo(1, 3);
	});

	it("scales as ρ/E and L⁴ over d²", () => {
		const bar = {
			lengthMm: 1200,
			tipMm: 10,
			buttMm: 25,
			modulusGPa: 12,
			densityKgM3: 700,
		};
		const at = (p: typeof bar): number =>
			droopClampedAt({
				profile: roundProfile(p),
				axis: "x",
				clampStationMm: p.lengthMm,
			}).tipDroopMm;
		fc.assert(
			fc.property(fc.double({ min: 0.6, max: 1.8, noNaN: true }), (k) => {
				const base = at(bar);
				expect(at({ ...bar, densityKgM3: k * 700 }) / base).toBeCloseTo(k, 9);
				expect(at({ ...bar, modulusGPa: k * 12 }) / base).toBeCloseTo(1 / k, 9);
				expect(
					at({ ...bar, tipMm: k * 10, buttMm: k * 25 }) / base,
				).toBeCloseTo(k ** -2, 8);
				expect(at({ ...bar, lengthMm: k * 1200 }) / base / k ** 4).toBeCloseTo(
					1,
					4,
				);
			}),
			{ numRuns: 20 },
		);
	});

	it("the slope at the tip is what the droop gains over the last stretch", () => {
		const profile = beamProfileOf(cue());
		const { tipSlopeDeg, tipDroopMm } = droopClampedAt({
			profile,
			axis: "x",
			clampStationMm: 1330,
		});
		// A clamped bar's tip slope lies between the mean slope and twice it.
		const mean = (Math.atan(tipDroopMm / 1330) * 180) / Math.PI;
		expect(tipSlopeDeg).toBeGreaterThan(mean);
		expect(tipSlopeDeg).toBeLessThan(2 * mean);
	});
});
