import { describe, expect, it } from "vitest";
import {
	endMassFromSquirtG,
	pivotLengthMm,
	squirtDeg,
} from "@/lib/shot/deflection";
import { DIME_RADIUS, NICKEL_RADIUS } from "@/lib/shot/published";
import { inchesToMm, mmToInches, ouncesToGrams } from "@/lib/units/quantity";

const BALL_G = ouncesToGrams(6);
const BALL_MM = 57.15;
const atRatio = (ratio: number, offsetRatio = 0.5): number =>
	squirtDeg({ offsetRatio, ballMassG: BALL_G, endMassG: BALL_G / ratio });

describe("Alciatore TP A.31 eq. 13, worked numbers at x 0.5", () => {
	it.each([
		{ ratio: 15, deg: 3.466 },
		{ ratio: 20, deg: 2.709 },
		{ ratio: 40, deg: 1.446 },
		{ ratio: 160 / 3, deg: 1.103 },
	])("ball over end mass $ratio gives $deg°", ({ ratio, deg }) => {
		expect(atRatio(ratio)).toBeCloseTo(deg, 3);
	});

	it("a quarter less end mass takes off 21.8 % and 23.7 %", () => {
		expect(100 * (1 - atRatio(20) / atRatio(15))).toBeCloseTo(21.8, 1);
		expect(100 * (1 - atRatio(160 / 3) / atRatio(40))).toBeCloseTo(23.7, 1);
	});
});

describe("Alciatore TP B.1, measured cues", () => {
	it.each([
		{
			cue: "regular",
			offsetIn: 0.51,
			deg: 2.5,
			domeIn: 0.705 / 2,
			ratio: 20.151,
			endMassG: 8.44,
			pivotIn: 14.231,
			pivotMm: 361.5,
		},
		{
			cue: "break and jump",
			offsetIn: 0.3,
			deg: 2.4,
			domeIn: 0.5,
			ratio: 12.008,
			endMassG: 14.17,
			pivotIn: 9.223,
			pivotMm: 234.3,
		},
	])(
		"$cue: the measured angle means $endMassG g and a pivot of $pivotIn in",
		(row) => {
			const offsetRatio = inchesToMm(row.offsetIn) / (BALL_MM / 2);
			const endMassG = endMassFromSquirtG({
				offsetRatio,
				ballMassG: BALL_G,
				squirtDeg: row.deg,
			});
			if (endMassG === null) throw new Error("no end mass");
			expect(BALL_G / endMassG).toBeCloseTo(row.ratio, 2);
			expect(endMassG).toBeCloseTo(row.endMassG, 2);
			expect(
				squirtDeg({ offsetRatio, ballMassG: BALL_G, endMassG }),
			).toBeCloseTo(row.deg, 12);
			const pivot = pivotLengthMm({
				offsetRatio,
				squirtDeg: row.deg,
				ballDiameterMm: BALL_MM,
				domeRadiusMm: inchesToMm(row.domeIn),
			});
			expect(mmToInches(pivot)).toBeCloseTo(row.pivotIn, 3);
			expect(pivot).toBeCloseTo(row.pivotMm, 1);
		},
	);

	it("a flatter dome lengthens the pivot by 4.774 %", () => {
		const pivot = (domeRadiusMm: number): number =>
			pivotLengthMm({
				offsetRatio: 0.25,
				squirtDeg: squirtDeg({
					offsetRatio: 0.25,
					ballMassG: BALL_G,
					endMassG: BALL_G / 20.151,
				}),
				ballDiameterMm: BALL_MM,
				domeRadiusMm,
			});
		expect(
			100 * (pivot(NICKEL_RADIUS.value) / pivot(DIME_RADIUS.value) - 1),
		).toBeCloseTo(4.774, 2);
	});
});
