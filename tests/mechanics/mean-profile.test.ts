import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bendingSectionAt } from "@/lib/cue/section";
import { meanBeamProfileOf } from "@/lib/mechanics/mean-profile";
import { beamProfileOf } from "@/lib/mechanics/profile";
import { quickBendingSolver } from "@/lib/mechanics/quick";
import { anyCue, cue } from "../support/designs";

describe("quick profile against the exact section", () => {
	it("the same mass and the mean of both stiffnesses at any station of any cue", () => {
		fc.assert(
			fc.property(
				anyCue,
				fc.double({ min: 0, max: 0.9999, noNaN: true }),
				(design, share) => {
					const exact = beamProfileOf(design);
					const mean = meanBeamProfileOf(design);
					expect(mean.breaksMm).toEqual(exact.breaksMm);
					const station = share * design.lengthMm;
					const a = exact.sectionAt(station);
					const b = mean.sectionAt(station);
					expect(b.massPerLengthKgM / a.massPerLengthKgM).toBeCloseTo(1, 10);
					expect(
						(2 * b.stiffnessXNm2) / (a.stiffnessXNm2 + a.stiffnessYNm2),
					).toBeCloseTo(1, 10);
				},
			),
		);
	});

	it("holds with weight, plug and ring in the butt, asked in any order", () => {
		const design = {
			...cue(),
			addedWeight: [
				{
					fromStationMm: 1330,
					toStationMm: 1400,
					diameterMm: 13,
					metal: "brass" as const,
					annulusInnerMm: 6,
				},
			],
			plugs: [
				{
					fromStationMm: 1400,
					toStationMm: 1460,
					diameterMm: 13,
					wood: "gaboon-ebony" as const,
				},
			],
		};
		const mean = meanBeamProfileOf(design);
		for (const station of [1350, 5, 1430, 700, 1365, 12, 1459])
			expect(
				mean.sectionAt(station).stiffnessXNm2 /
					bendingSectionAt(design, station).stiffnessXNm2,
			).toBeCloseTo(1, 9);
	});

	it("a splice with a side: the planes part, their mean stays, the frequency within 0.1 %", () => {
		const base = cue();
		const [first, second] = base.splice.cuts;
		if (!first || !second) throw new Error("no cuts");
		// Only the first pair of flats: stiffer one way than the other.
		const sided = {
			...base,
			splice: { ...base.splice, cuts: [first, second] },
		};
		const exact = beamProfileOf(sided);
		const section = exact.sectionAt(1300);
		expect(
			Math.abs(section.stiffnessXNm2 / section.stiffnessYNm2 - 1),
		).toBeGreaterThan(0.005);
		expect(
			(2 * meanBeamProfileOf(sided).sectionAt(1300).stiffnessXNm2) /
				(section.stiffnessXNm2 + section.stiffnessYNm2),
		).toBeCloseTo(1, 10);
		const solve = quickBendingSolver();
		const both = solve({ profile: exact, contactTimeMs: 1.2 }).freeHz;
		const mean = solve({
			profile: meanBeamProfileOf(sided),
			contactTimeMs: 1.2,
		}).freeHz.x;
		expect((2 * mean) / (both.x + both.y)).toBeCloseTo(1, 3);
	});
});
