/**
 * The ring of thumb and forefinger in closed form: a ring of inside diameter C laid round a cue of
 * diameter D leaves π(D − C). Checked against the girth of a many-sided polygon (2N·r·tan(π/N) outside,
 * 2N·r·sin(π/N) inside), which needs no π·D.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { closureMm, diameterForClosureMm } from "@/lib/player/hand";

const SIDES = 100_000;
const insideGirth = (d: number) => SIDES * d * Math.sin(Math.PI / SIDES);
const outsideGirth = (d: number) => SIDES * d * Math.tan(Math.PI / SIDES);

describe("closure", () => {
	test.each([
		[29, 29],
		[29, 30],
		[29, 28],
		[24.3, 31],
		[33, 26.5],
	])(
		"ring %d on %d mm lies between the polygons' girths",
		(circleMm, diameterMm) => {
			const gap = closureMm({ circleMm, diameterMm });
			expect(gap).toBeGreaterThanOrEqual(
				insideGirth(diameterMm) - outsideGirth(circleMm),
			);
			expect(gap).toBeLessThanOrEqual(
				outsideGirth(diameterMm) - insideGirth(circleMm),
			);
			expect(gap).toBeCloseTo(
				insideGirth(diameterMm) - insideGirth(circleMm),
				6,
			);
		},
	);

	test("just touching at the ring itself; a millimetre of diameter is 3.14 mm of pads", () => {
		expect(closureMm({ circleMm: 28.4, diameterMm: 28.4 })).toBe(0);
		expect(closureMm({ circleMm: 28, diameterMm: 29 })).toBeCloseTo(22 / 7, 2);
	});
});

test("along an even taper the closure is a straight line, so a sliding hand meets it evenly", () => {
	const diameterAt = (mm: number) => 29 - 0.014 * mm;
	const at = (mm: number) =>
		closureMm({ circleMm: 28, diameterMm: diameterAt(mm) });
	expect(at(100) - at(50)).toBeCloseTo(at(50) - at(0), 10);
	expect(at(0)).toBeGreaterThan(0);
	expect(at(100)).toBeLessThan(0);
});

test("diameter from closure is the exact inverse over the whole range", () => {
	fc.assert(
		fc.property(
			fc.double({ min: 15, max: 70, noNaN: true }),
			fc.double({ min: -30, max: 30, noNaN: true }),
			(circleMm, wanted) => {
				const diameterMm = diameterForClosureMm({
					circleMm,
					closureMm: wanted,
				});
				expect(closureMm({ circleMm, diameterMm })).toBeCloseTo(wanted, 9);
			},
		),
		{ seed: 3 },
	);
});
