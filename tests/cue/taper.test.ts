import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { TaperShapeId } from "@/lib/cue/design";
import {
	buttDiameterForMm,
	diameterAtMm,
	domeDepthMm,
	outlineRadiusMm,
	TAPER_SHAPES,
} from "@/lib/cue/taper";
import { must } from "@/lib/numerics/outcome";
import { anyRequest, bareRound, cue58, SNOOKER_58 } from "../support/designs";

const SHAPES = Object.keys(TAPER_SHAPES) as TaperShapeId[];

describe("diameterAtMm", () => {
	it("runs from the tip's to the butt's diameter and never thins on the way", () => {
		fc.assert(
			fc.property(anyRequest, (request) => {
				const design = cue58(request);
				expect(diameterAtMm(design, 0)).toBeCloseTo(request.tipDiameterMm, 9);
				expect(diameterAtMm(design, design.lengthMm)).toBeCloseTo(
					request.buttDiameterMm,
					9,
				);
				let last = 0;
				for (let i = 0; i <= 100; i++) {
					const next = diameterAtMm(
						design,
						Math.min(design.lengthMm, (design.lengthMm * i) / 100),
					);
					expect(next).toBeGreaterThanOrEqual(last - 1e-9);
					last = next;
				}
			}),
			{ numRuns: 50 },
		);
	});

	it("orders the named shapes as their names say, half-way along", () => {
		const half = (taperShape: TaperShapeId) =>
			diameterAtMm(cue58({ taperShape }), SNOOKER_58.lengthMm / 2);
		expect(half("slim-forward")).toBeLessThan(half("even"));
		expect(half("even")).toBeLessThan(half("straight"));
		expect(half("straight")).toBeLessThan(half("full-forward"));
		expect(half("straight")).toBeCloseTo((9.5 + 29) / 2, 10);
	});

	it("throws off the cue", () => {
		expect(() => diameterAtMm(cue58(), -1)).toThrow(RangeError);
		expect(() => diameterAtMm(cue58(), 1474)).toThrow(RangeError);
	});
});

describe("buttDiameterForMm", () => {
	it.each(SHAPES)("undoes diameterAtMm for %s", (taperShape) => {
		const design = cue58({ taperShape });
		for (const stationMm of [400, 900, 1353, 1473]) {
			const butt = must(
				buttDiameterForMm({
					taperShape,
					tipDiameterMm: 9.5,
					lengthMm: 1473,
					stationMm,
					diameterMm: diameterAtMm(design, stationMm),
				}),
			);
			expect(butt).toBeCloseTo(29, 9);
		}
	});

	it("is linear in the wanted diameter", () => {
		const at = (diameterMm: number) =>
			must(
				buttDiameterForMm({
					taperShape: "even",
					tipDiameterMm: 9.5,
					lengthMm: 1473,
					stationMm: 1300,
					diameterMm,
				}),
			);
		expect(at(25) - at(24)).toBeCloseTo(at(27) - at(26), 9);
	});

	it("names field, value and bound where the answer cannot be built", () => {
		const answer = buttDiameterForMm({
			taperShape: "even",
			tipDiameterMm: 9.5,
			lengthMm: 1473,
			stationMm: 700,
			diameterMm: 30,
		});
		expect(answer.ok).toBe(false);
		if (answer.ok) return;
		expect(answer.refusals[0]).toMatchObject({
			code: "out-of-range",
			field: "buttDiameterMm",
			min: 22,
			max: 34,
		});
		expect(answer.refusals[0]?.value).toBeGreaterThan(34);
	});

	it("refuses stations near the tip, where the answer would run away", () => {
		const answer = buttDiameterForMm({
			taperShape: "even",
			tipDiameterMm: 9.5,
			lengthMm: 1473,
			stationMm: 20,
			diameterMm: 12,
		});
		expect(answer.ok).toBe(false);
		if (answer.ok) return;
		expect(answer.refusals[0]?.field).toBe("stationMm");
		expect(answer.refusals[0]?.min).toBeCloseTo(147.3, 9);
	});
});

describe("outlineRadiusMm", () => {
	it("follows the dome's circle, then the taper", () => {
		const design = cue58();
		const depthMm = domeDepthMm(design);
		for (const stationMm of [0.2, 0.7, depthMm * 0.999]) {
			const radiusMm = outlineRadiusMm(design, stationMm);
			expect((9 - stationMm) ** 2 + radiusMm ** 2).toBeCloseTo(81, 9);
		}
		expect(outlineRadiusMm(design, 0)).toBe(0);
		expect(outlineRadiusMm(design, depthMm * 1.001)).toBeCloseTo(
			diameterAtMm(design, depthMm * 1.001) / 2,
			12,
		);
	});

	it("rounds the butt edge with a quarter circle", () => {
		const design = cue58();
		const { buttEndRadiusMm, lengthMm } = design;
		expect(outlineRadiusMm(design, lengthMm)).toBeCloseTo(
			14.5 - buttEndRadiusMm,
			9,
		);
		const into = 0.6 * buttEndRadiusMm;
		const stationMm = lengthMm - buttEndRadiusMm + into;
		expect(
			diameterAtMm(design, stationMm) / 2 - outlineRadiusMm(design, stationMm),
		).toBeCloseTo(buttEndRadiusMm * (1 - 0.8), 9);
	});

	it("is the bare taper where neither exists", () => {
		const rod = bareRound({
			lengthMm: 100,
			taper: [
				{ stationMm: 0, diameterMm: 10 },
				{ stationMm: 100, diameterMm: 10 },
			],
		});
		expect(outlineRadiusMm(rod, 0)).toBe(5);
		expect(outlineRadiusMm(rod, 100)).toBe(5);
	});
});
