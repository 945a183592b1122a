import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rectangleInDisc, stripInDisc } from "@/lib/cue/cut-disc";
import { discWithin } from "@/lib/cue/disc";
import { sectionAt } from "@/lib/cue/section";
import { cue58 } from "../support/designs";

/**
 * Circular segments. Area R²/2·(θ − sin θ) for the angle θ at the centre, textbook; the unit-radius
 * table of segments found in engineering handbooks (from memory): θ 60° height 0.1340 area 0.0906,
 * 90° 0.2929 and 0.2854, 120° 0.5000 and 0.6142, 180° 1.0000 and 1.5708.
 */
const segmentArea = (height: number) =>
	Math.PI - discWithin(1, [{ angleRad: 0.7, offset: 1 - height }]).area;

describe("circular segments", () => {
	it.each([
		[60, 0.134, 0.0906],
		[90, 0.2929, 0.2854],
		[120, 0.5, 0.6142],
		[180, 1, 1.5708],
	])("θ = %i°: height %f, area %f", (thetaDeg, height, area) => {
		const theta = (thetaDeg * Math.PI) / 180;
		const exactHeight = 1 - Math.cos(theta / 2);
		expect(exactHeight).toBeCloseTo(height, 4);
		expect(segmentArea(exactHeight)).toBeCloseTo(area, 4);
		expect(segmentArea(exactHeight)).toBeCloseTo(
			(theta - Math.sin(theta)) / 2,
			14,
		);
	});

	it("leaves the inscribed regular polygon's complement: square 2, hexagon 3√3/2", () => {
		for (const [sides, area] of [
			[4, 2],
			[6, (3 * Math.sqrt(3)) / 2],
		] as const) {
			const offset = Math.cos(Math.PI / sides);
			const planes = Array.from({ length: sides }, (_, i) => ({
				angleRad: (2 * Math.PI * i) / sides + 0.2,
				offset,
			}));
			expect(discWithin(1, planes).area).toBeCloseTo(area, 13);
			// Regular polygon, circumradius 1: J = n/24·sin(2π/n)·(2 + cos(2π/n))·2, textbook.
			const a = (2 * Math.PI) / sides;
			expect(discWithin(1, planes).polar).toBeCloseTo(
				(sides / 12) * Math.sin(a) * (2 + Math.cos(a)),
				13,
			);
		}
	});

	it("has the half disc's centroid 4R/3π and second moments πR⁴/8", () => {
		const half = discWithin(1, [{ angleRad: 0, offset: 0 }]);
		expect(-half.firstX / half.area).toBeCloseTo(4 / (3 * Math.PI), 13);
		expect(half.firstY).toBeCloseTo(0, 13);
		expect(half.polar).toBeCloseTo(Math.PI / 4, 13);
		expect(half.difference).toBeCloseTo(0, 13);
	});

	it("agrees with summing narrow chords for any four planes", () => {
		fc.assert(
			fc.property(
				fc.array(
					fc.record({
						angleRad: fc.double({ min: 0, max: 7, noNaN: true }),
						offset: fc.double({ min: -0.3, max: 1.2, noNaN: true }),
					}),
					{ minLength: 1, maxLength: 4 },
				),
				(planes) => {
					const exact = discWithin(1, planes);
					const seen = byChords(planes, 4000);
					expect(Math.abs(exact.area - seen.area)).toBeLessThan(6e-4);
					expect(Math.abs(exact.polar - seen.polar)).toBeLessThan(6e-4);
					expect(Math.abs(exact.firstX - seen.firstX)).toBeLessThan(6e-4);
					expect(Math.abs(exact.difference - seen.difference)).toBeLessThan(
						6e-4,
					);
					expect(Math.abs(exact.product - seen.product)).toBeLessThan(6e-4);
				},
			),
			{ numRuns: 200 },
		);
	});

	it("has the same closed forms for a strip and a rectangle", () => {
		const offset = fc.double({ min: 0.05, max: 1.3, noNaN: true });
		fc.assert(
			fc.property(offset, offset, (p, q) => {
				const right = { angleRad: 0, offset: p };
				const left = { angleRad: Math.PI, offset: p };
				const up = { angleRad: Math.PI / 2, offset: q };
				const down = { angleRad: -Math.PI / 2, offset: q };
				const out = { area: 0, polar: 0 };
				stripInDisc(1, p, out);
				const strip = discWithin(1, [right, left]);
				expect(out.area).toBeCloseTo(strip.area, 12);
				expect(out.polar).toBeCloseTo(strip.polar, 12);
				rectangleInDisc(1, p, q, out);
				const box = discWithin(1, [right, left, up, down]);
				expect(out.area).toBeCloseTo(box.area, 12);
				expect(out.polar).toBeCloseTo(box.polar, 12);
			}),
		);
	});
});

/** ∬ over the cut disc by the midpoint rule in x and exact chords in y. */
function byChords(
	planes: readonly { angleRad: number; offset: number }[],
	count: number,
) {
	const sums = { area: 0, polar: 0, firstX: 0, difference: 0, product: 0 };
	for (let i = 0; i < count; i++) {
		const x = -1 + (2 * (i + 0.5)) / count;
		let high = Math.sqrt(1 - x * x);
		let low = -high;
		for (const { angleRad, offset } of planes) {
			const room = offset - x * Math.cos(angleRad);
			const lean = Math.sin(angleRad);
			if (Math.abs(lean) < 1e-14) {
				if (room < 0) low = high;
			} else if (lean > 0) high = Math.min(high, room / lean);
			else low = Math.max(low, room / lean);
		}
		if (high <= low) continue;
		const dx = 2 / count;
		const one = high - low;
		const two = (high * high - low * low) / 2;
		const three = (high ** 3 - low ** 3) / 3;
		sums.area += dx * one;
		sums.polar += dx * (x * x * one + three);
		sums.firstX += dx * x * one;
		sums.difference += dx * (x * x * one - three);
		sums.product += dx * 2 * x * two;
	}
	return sums;
}

describe("a four-point hand splice's section", () => {
	it("is the disc less four segments before the corners meet the surface", () => {
		const design = cue58({ layout: "one-piece" });
		const [first] = design.splice.cuts;
		if (!first) throw new Error("no cuts");
		const stationMm = 900;
		const section = sectionAt(design, stationMm);
		const R = section.diameterMm / 2;
		const p =
			first.buttOffsetMm +
			(design.lengthMm - stationMm) *
				Math.tan((first.angleDeg * Math.PI) / 180);
		expect(2 * p * p).toBeGreaterThan(R * R);
		const theta = 2 * Math.acos(p / R);
		const segments = 4 * ((R * R) / 2) * (theta - Math.sin(theta));
		expect(section.buttWoodShare).toBeCloseTo(segments / (Math.PI * R * R), 12);
		expect(section.shaftWoodShare + section.buttWoodShare).toBeCloseTo(1, 12);
	});

	it("leaves a rectangle of shaft wood after that", () => {
		const design = cue58({ layout: "one-piece" });
		const stationMm = 1400;
		const section = sectionAt(design, stationMm);
		const [first, , second] = design.splice.cuts;
		if (!first || !second) throw new Error("no cuts");
		const offset = (cut: typeof first) =>
			cut.buttOffsetMm +
			(design.lengthMm - stationMm) * Math.tan((cut.angleDeg * Math.PI) / 180);
		expect(section.shaftWoodShare * section.areaMm2).toBeCloseTo(
			4 * offset(first) * offset(second),
			9,
		);
	});
});
