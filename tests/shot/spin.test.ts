import { describe, expect, it } from "vitest";
import {
	cueLineOffsetMm,
	frictionNeededRatio,
	maxOffsetRatioForTip,
	miscueOffsetRatio,
	spinRatio,
} from "@/lib/shot/spin";

describe("spin and reach", () => {
	it("rolls at once at two fifths of the radius (Shepard 1997 P3.5)", () => {
		expect(spinRatio(0.4)).toBe(1);
	});

	it("friction needed and friction's limit invert each other", () => {
		for (let x = 0; x < 0.95; x += 0.05)
			expect(miscueOffsetRatio(frictionNeededRatio(x))).toBeCloseTo(x, 12);
	});

	it("a dome's edge meets the ball where their normals agree, by plain geometry", () => {
		// Tip edge at (r cos θ, d/2) from the dome's centre; the ball's centre lies R beyond it on that line.
		const p = { tipDiameterMm: 9.5, domeRadiusMm: 8.954 };
		const ballRadiusMm = 26.25;
		const lean = Math.asin(p.tipDiameterMm / 2 / p.domeRadiusMm);
		const ballCentreAcrossMm = (p.domeRadiusMm + ballRadiusMm) * Math.sin(lean);
		const contactAcrossMm = ballCentreAcrossMm - p.tipDiameterMm / 2;
		expect(maxOffsetRatioForTip(p)).toBeCloseTo(
			contactAcrossMm / ballRadiusMm,
			12,
		);
		expect(
			cueLineOffsetMm({
				offsetRatio: maxOffsetRatioForTip(p),
				ballDiameterMm: 2 * ballRadiusMm,
				domeRadiusMm: p.domeRadiusMm,
			}),
		).toBeCloseTo(ballCentreAcrossMm, 12);
	});

	it("a half-sphere reaches the limb of the ball and nothing reaches past it", () => {
		expect(maxOffsetRatioForTip({ tipDiameterMm: 12, domeRadiusMm: 6 })).toBe(
			1,
		);
		expect(maxOffsetRatioForTip({ tipDiameterMm: 12, domeRadiusMm: 5 })).toBe(
			1,
		);
	});

	it("throws on an offset off the ball", () => {
		expect(() => spinRatio(1)).toThrow(/offsetRatio/);
		expect(() => spinRatio(Number.NaN)).toThrow(/offsetRatio/);
		expect(() => miscueOffsetRatio(-0.1)).toThrow(/frictionRatio/);
	});
});
