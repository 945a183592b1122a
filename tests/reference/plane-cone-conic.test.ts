import { describe, expect, it } from "vitest";
import type { CueDesign } from "@/lib/cue/design";
import { materialAt } from "@/lib/cue/material";
import { bareRound } from "../support/designs";

/**
 * A plane cutting a cone. Derived here, no published source: on the taper r₀ + z tan θ the plane
 * x = p + z tan ψ leaves the surface along φ(z) = acos[(p + z tan ψ)/(r₀ + z tan θ)], with its point at
 * z = (r₀ − p)/(tan ψ − tan θ). Worked example: r 4.75 → 14.5 mm over 1473 mm, ψ = 1.2°, p = 2 mm:
 * point at 191.9336 mm; a veneer of 0.6 mm moves it by v cos θ/sin(ψ − θ) = 41.88562 mm.
 * The curve is an ellipse, parabola or hyperbola as ψ >, =, < θ (eccentricity cos ψ/cos θ).
 */
const LENGTH = 1473;
const SMALL = 4.75;
const LARGE = 14.5;
const PSI = (1.2 * Math.PI) / 180;
const THETA = Math.atan((LARGE - SMALL) / LENGTH);

/** The worked example's plane opens towards the butt, so its flat's angle is negative here. */
const coneWithFlat = (offsetAtTipMm: number): CueDesign => ({
	...bareRound({
		lengthMm: LENGTH,
		taper: [
			{ stationMm: 0, diameterMm: 2 * SMALL },
			{ stationMm: LENGTH, diameterMm: 2 * LARGE },
		],
	}),
	splice: {
		id: "plain",
		base: { kind: "through" },
		cuts: [
			{
				part: "wedge",
				wood: "gaboon-ebony",
				faceAngleDeg: 0,
				buttOffsetMm: offsetAtTipMm + LENGTH * Math.tan(PSI),
				angleDeg: -1.2,
			},
		],
	},
});

const radiusAt = (stationMm: number) =>
	SMALL + (stationMm * (LARGE - SMALL)) / LENGTH;

/** The last station at which the wedge shows on the surface's meridian, by bisection on materialAt. */
function pointStationMm(design: CueDesign): number {
	let wedge = 0;
	let shaft = 400;
	for (let i = 0; i < 60; i++) {
		const middle = (wedge + shaft) / 2;
		const part = materialAt({
			design,
			stationMm: middle,
			angleDeg: 0,
			radiusMm: radiusAt(middle) * (1 - 1e-12),
		})?.part;
		if (part === "wedge") wedge = middle;
		else shaft = middle;
	}
	return wedge;
}

describe("a planed flat on a round taper", () => {
	it("has θ = 0.3792435° in the worked example", () => {
		expect((THETA * 180) / Math.PI).toBeCloseTo(0.3792435, 7);
	});

	it("comes to its point at 191.9336 mm", () => {
		expect(pointStationMm(coneWithFlat(2))).toBeCloseTo(191.9336, 4);
	});

	it("moves its point 41.88562 mm for a veneer of 0.6 mm", () => {
		// A veneer of thickness v lies between planes v/cos ψ apart along x.
		const bare = pointStationMm(coneWithFlat(2));
		const behind = pointStationMm(coneWithFlat(2 + 0.6 / Math.cos(PSI)));
		expect(bare - behind).toBeCloseTo(41.88562, 4);
		expect((0.6 * Math.cos(THETA)) / Math.sin(PSI - THETA)).toBeCloseTo(
			41.88562,
			5,
		);
	});

	it.each([20, 75, 150, 190])(
		"leaves the surface at φ(z) = acos of offset over radius, z = %i mm",
		(stationMm) => {
			const design = coneWithFlat(2);
			const expected = Math.acos(
				(2 + stationMm * Math.tan(PSI)) / radiusAt(stationMm),
			);
			let inside = 0;
			let outside = Math.PI / 2;
			for (let i = 0; i < 60; i++) {
				const middle = (inside + outside) / 2;
				const part = materialAt({
					design,
					stationMm,
					angleDeg: (middle * 180) / Math.PI,
					radiusMm: radiusAt(stationMm) * (1 - 1e-13),
				})?.part;
				if (part === "wedge") inside = middle;
				else outside = middle;
			}
			expect(inside).toBeCloseTo(expected, 9);
		},
	);
});
