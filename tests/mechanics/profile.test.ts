import { describe, expect, it } from "vitest";
import { weighCue } from "@/lib/cue/mass";
import { bendingSectionAt } from "@/lib/cue/section";
import { beamOf, sidewaysShift } from "@/lib/mechanics/beam";
import { beamProfileOf } from "@/lib/mechanics/profile";
import { dot, multiply } from "@/lib/numerics/banded";
import { cue } from "../support/designs";

describe("the cue as a bar", () => {
	const design = cue();
	const profile = beamProfileOf(design);

	it("behind the tip it is the section itself", () => {
		for (const station of [5, 10, 200, 900, 1200, 1440])
			expect(profile.sectionAt(station)).toEqual(
				bendingSectionAt(design, station),
			);
	});

	it("the tip is as stiff as the wood behind the ferrule and as heavy as leather", () => {
		const tip = profile.sectionAt(2);
		const behind = bendingSectionAt(
			design,
			design.tip.heightMm + design.ferrule.lengthMm,
		);
		expect(tip.stiffnessXNm2).toBe(behind.stiffnessXNm2);
		expect(tip.massPerLengthKgM).toBeLessThan(
			bendingSectionAt(design, 3.99).massPerLengthKgM,
		);
	});

	it("breaks include tip, ferrule, joint and both ends, ascending", () => {
		const { tip, ferrule, joint } = design;
		for (const station of [
			0,
			tip.heightMm,
			tip.heightMm + ferrule.lengthMm,
			joint?.stationMm ?? -1,
			design.lengthMm,
		])
			expect(profile.breaksMm.some((end) => Math.abs(end - station) < 3)).toBe(
				true,
			);
		for (let i = 1; i < profile.breaksMm.length; i++)
			expect(profile.breaksMm[i]).toBeGreaterThan(
				profile.breaksMm[i - 1] as number,
			);
	});

	it.each(["plain", "hand-four-point", "machine-four-point"] as const)(
		"%s: the bar weighs and balances as the cue does",
		(splice) => {
			const spliced = cue({ splice });
			const beam = beamOf({ profile: beamProfileOf(spliced), fineness: 4 });
			const shift = sidewaysShift(beam);
			const momentum = new Float64Array(beam.mass.size);
			multiply(beam.mass, shift, momentum);
			const massG = 1000 * dot(shift, momentum, beam.mass.size);
			const weighed = weighCue(spliced);
			expect(massG / weighed.massG.value).toBeCloseTo(1, 3);
			const turn = new Float64Array(beam.mass.size);
			for (let n = 0; n < beam.nodes; n++) {
				turn[2 * n] = beam.stationsM[n] as number;
				turn[2 * n + 1] = 1;
			}
			const balanceMm = (1e6 * dot(turn, momentum, beam.mass.size)) / massG;
			expect(
				Math.abs(
					balanceMm - (spliced.lengthMm - weighed.balanceFromButtMm.value),
				),
			).toBeLessThan(0.5);
		},
	);
});
