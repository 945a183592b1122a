import { describe, expect, it } from "vitest";
import type { CueDesign } from "@/lib/cue/design";
import { materialAt } from "@/lib/cue/material";
import { bendingModulusGPa, densityKgM3 } from "@/lib/cue/materials";
import { bendingSectionAt, sectionAt } from "@/lib/cue/section";
import { outlineRadiusMm } from "@/lib/cue/taper";
import { bareRound, cue58 } from "../support/designs";

const rod = (diameterMm: number) =>
	bareRound({
		lengthMm: 1000,
		taper: [
			{ stationMm: 0, diameterMm },
			{ stationMm: 1000, diameterMm },
		],
	});

describe("bendingSectionAt", () => {
	it("is E·πd⁴/64 and ρ·πd²/4 for a plain rod", () => {
		const section = bendingSectionAt(rod(20), 500);
		expect(section.stiffnessXNm2).toBeCloseTo(
			13.2e9 * ((Math.PI * 0.02 ** 4) / 64),
			9,
		);
		expect(section.stiffnessYNm2).toBeCloseTo(section.stiffnessXNm2, 9);
		expect(section.massPerLengthKgM).toBeCloseTo(
			672 * ((Math.PI * 0.02 ** 2) / 4),
			12,
		);
	});

	it("adds a metal core by parts", () => {
		const cored: CueDesign = {
			...rod(20),
			addedWeight: [
				{
					fromStationMm: 400,
					toStationMm: 600,
					diameterMm: 10,
					metal: "brass",
				},
			],
		};
		const core = (Math.PI * 0.01 ** 4) / 64;
		const whole = (Math.PI * 0.02 ** 4) / 64;
		expect(bendingSectionAt(cored, 500).stiffnessXNm2).toBeCloseTo(
			97e9 * core + 13.2e9 * (whole - core),
			9,
		);
		expect(bendingSectionAt(cored, 700).stiffnessXNm2).toBeCloseTo(
			13.2e9 * whole,
			9,
		);
	});

	it("leaves the wood between a ring and the axis in place", () => {
		const ringed: CueDesign = {
			...rod(20),
			addedWeight: [
				{
					fromStationMm: 400,
					toStationMm: 600,
					diameterMm: 14,
					annulusInnerMm: 10,
					metal: "brass",
				},
			],
		};
		const area = (d: number) => (Math.PI * d * d) / 4;
		const section = sectionAt(ringed, 500);
		expect(section.areaByMaterialMm2.brass).toBeCloseTo(area(14) - area(10), 9);
		expect(section.areaByMaterialMm2["white-ash"]).toBeCloseTo(
			area(20) - area(14) + area(10),
			9,
		);
	});

	it("is the same about both axes for a four-point splice of equal pairs", () => {
		for (const splice of ["hand-four-point", "machine-four-point"] as const) {
			const design = cue58({ splice, layout: "one-piece" });
			for (const stationMm of [500, 900, 1100, 1300, 1460]) {
				const section = bendingSectionAt(design, stationMm);
				expect(section.stiffnessXNm2 / section.stiffnessYNm2).toBeCloseTo(
					1,
					10,
				);
			}
		}
	});

	it("agrees with a grid of points through materialAt, front wedge and all", () => {
		const design = cue58({
			layout: "one-piece",
			splicing: {
				frontWedge: {
					wood: "snakewood",
					veneers: [{ wood: "sugar-maple", thicknessMm: 1 }],
				},
			},
		});
		for (const stationMm of [700, 1000, 1350, 1440]) {
			const radiusMm = outlineRadiusMm(design, stationMm);
			const count = 700;
			const cell = ((2 * radiusMm) / count) ** 2 * 1e-6;
			let mass = 0;
			let e = 0;
			let ex = 0;
			let exx = 0;
			let eyy = 0;
			for (let i = 0; i < count; i++)
				for (let j = 0; j < count; j++) {
					const x = radiusMm * (-1 + (2 * (i + 0.5)) / count);
					const y = radiusMm * (-1 + (2 * (j + 0.5)) / count);
					const point = materialAt({
						design,
						stationMm,
						angleDeg: (Math.atan2(y, x) * 180) / Math.PI,
						radiusMm: Math.hypot(x, y),
					});
					if (!point) continue;
					const modulus = bendingModulusGPa(point.material).value * 1e9;
					mass += densityKgM3(design, point.material).value * cell;
					e += modulus * cell;
					ex += modulus * cell * x * 1e-3;
					exx += modulus * cell * x * x * 1e-6;
					eyy += modulus * cell * y * y * 1e-6;
				}
			const section = bendingSectionAt(design, stationMm);
			expect(section.massPerLengthKgM / mass).toBeCloseTo(1, 3);
			// The neutral axis has moved towards the stiffer front.
			expect(section.stiffnessXNm2 / (exx - (ex * ex) / e)).toBeCloseTo(1, 2.5);
			expect(section.stiffnessYNm2 / eyy).toBeCloseTo(1, 2.5);
		}
	});

	it("carries next to nothing in the leather and weighs nothing at the crown", () => {
		const tip = bendingSectionAt(cue58(), 3);
		const shaft = bendingSectionAt(cue58(), 40);
		expect(tip.stiffnessXNm2).toBeLessThan(0.05 * shaft.stiffnessXNm2);
		expect(bendingSectionAt(cue58(), 0).massPerLengthKgM).toBe(0);
	});
});

describe("sectionAt", () => {
	it("shares out the whole section", () => {
		const design = cue58();
		for (const stationMm of [2, 8, 200, 900, 1031, 1045, 1300, 1470]) {
			const section = sectionAt(design, stationMm);
			expect(
				section.shaftWoodShare + section.buttWoodShare + section.otherShare,
			).toBeCloseTo(1, 12);
			const sum = Object.values(section.areaByMaterialMm2).reduce(
				(all, area) => all + area,
				0,
			);
			expect(sum).toBeCloseTo(section.areaMm2, 9);
		}
		expect(sectionAt(design, 2).otherShare).toBeCloseTo(1, 12);
		expect(sectionAt(design, 200).shaftWoodShare).toBeCloseTo(1, 12);
		expect(sectionAt(design, 1031).otherShare).toBeCloseTo(1, 12);
	});

	it("throws off the cue", () => {
		expect(() => sectionAt(cue58(), 1474)).toThrow(RangeError);
		expect(() => bendingSectionAt(cue58(), -5)).toThrow(RangeError);
	});
});

describe("bendingModulusGPa", () => {
	it("has a figure with a spread for a wood without a printed modulus", () => {
		const olive = bendingModulusGPa("olive");
		// 16.5·G^0.7 at G12 = 870/1120.
		expect(olive.value).toBeCloseTo(16.5 * (870 / 1120) ** 0.7, 9);
		expect(olive.standing).toBe("derived");
		expect(olive.sd / olive.value).toBeCloseTo(0.3, 9);
	});
});
