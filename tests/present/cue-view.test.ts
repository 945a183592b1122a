import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { diameterAtMm, outlineRadiusMm } from "@/lib/cue/taper";
import {
	acrossAtPx,
	angleYPx,
	type CueView,
	firstButtWoodMm,
	frameFor,
	heightForPx,
	readableStretch,
	stationAtPx,
	stationsShownMm,
	surfaceAtPx,
	xPx,
	yPx,
} from "@/lib/present/cue-view";
import { anyCue, cue } from "../support/designs";

const WHOLE: CueView = { part: "whole", isUnrolled: false, stretch: 1 };
const anyView: fc.Arbitrary<CueView> = fc.record({
	part: fc.constantFrom("whole", "front", "butt"),
	isUnrolled: fc.boolean(),
	stretch: fc.integer({ min: 1, max: 8 }),
});
const anyFrame = fc
	.record({
		design: anyCue,
		view: anyView,
		widthPx: fc.integer({ min: 100, max: 1000 }),
		angleDeg: fc.double({ min: 0, max: 360, noNaN: true }),
	})
	.map((p) => ({
		...p,
		frame: frameFor({ ...p, heightPx: heightForPx(p) }),
	}));

describe("coordinates", () => {
	test("to scale, a millimetre across is as many pixels as a millimetre along", () => {
		const design = cue();
		const frame = frameFor({
			design,
			view: WHOLE,
			angleDeg: 0,
			widthPx: 1460,
			heightPx: heightForPx({ design, view: WHOLE, widthPx: 1460 }),
		});
		expect(frame.pxPerMm).toBe(1);
		expect(frame.pxAcross).toBe(1);
		expect(frame.heightPx).toBe(31);
		expect(xPx(frame, 1460)).toBe(1460);
		expect(yPx(frame, -14.5)).toBe(1);
	});
	test("there and back", () => {
		fc.assert(
			fc.property(
				anyFrame,
				fc.double({ min: 0, max: 1, noNaN: true }),
				({ frame }, share) => {
					const x = share * frame.widthPx;
					expect(xPx(frame, stationAtPx(frame, x))).toBeCloseTo(x, 8);
					const y = share * frame.heightPx;
					if (!frame.view.isUnrolled)
						expect(yPx(frame, acrossAtPx(frame, y))).toBeCloseTo(y, 8);
				},
			),
		);
	});
	test("a point of the surface comes back to its own pixel, whichever way it is drawn", () => {
		fc.assert(
			fc.property(
				anyFrame,
				fc.double({ min: 0.01, max: 0.99, noNaN: true }),
				fc.double({ min: 0.01, max: 0.99, noNaN: true }),
				({ design, frame }, across, along) => {
					const x = along * frame.widthPx;
					const point = surfaceAtPx({
						design,
						frame,
						x,
						y: across * frame.heightPx,
					});
					if (point === null) {
						const rim = outlineRadiusMm(design, stationAtPx(frame, x));
						expect(
							Math.abs(acrossAtPx(frame, across * frame.heightPx)),
						).toBeGreaterThan(rim);
						return;
					}
					const y = frame.view.isUnrolled
						? angleYPx(frame, point.angleDeg)
						: yPx(
								frame,
								point.radiusMm *
									Math.sin(((point.angleDeg - frame.angleDeg) * Math.PI) / 180),
							);
					expect(y).toBeCloseTo(across * frame.heightPx, 6);
					expect(xPx(frame, point.stationMm)).toBeCloseTo(x, 6);
				},
			),
		);
	});
	test("the thickest part always fits the height proposed", () => {
		fc.assert(
			fc.property(anyFrame, ({ design, frame }) => {
				if (frame.view.isUnrolled) return;
				const thick = diameterAtMm(design, frame.toMm) * frame.pxAcross;
				expect(thick).toBeLessThanOrEqual(frame.heightPx - 2);
				expect(thick).toBeGreaterThan(frame.heightPx - 4);
			}),
		);
	});
	test("unrolled, the facing meridian is in the middle and a turn wraps", () => {
		const design = cue();
		const frame = frameFor({
			design,
			view: { part: "whole", isUnrolled: true, stretch: 1 },
			angleDeg: 30,
			widthPx: 800,
			heightPx: 360,
		});
		expect(angleYPx(frame, 30)).toBe(180);
		expect(angleYPx(frame, 120)).toBe(270);
		expect(angleYPx(frame, 209)).toBe(359);
		expect(angleYPx(frame, 211)).toBe(1);
		expect(angleYPx(frame, 30 + 720)).toBe(180);
	});
});

describe("stretch", () => {
	test("whole, never under to scale, and readable on a phone as on a desk", () => {
		fc.assert(
			fc.property(
				anyCue,
				fc.constantFrom("whole", "front", "butt"),
				fc.integer({ min: 240, max: 1600 }),
				(design, part, widthPx) => {
					const stretch = readableStretch({ design, part, widthPx });
					expect(Number.isInteger(stretch)).toBe(true);
					expect(stretch).toBeGreaterThanOrEqual(1);
					expect(stretch).toBeLessThanOrEqual(8);
					const view = { part, isUnrolled: false, stretch } as const;
					const heightPx = heightForPx({ design, view, widthPx });
					if (stretch > 1 && stretch < 8) {
						expect(heightPx).toBeGreaterThan(45);
						expect(heightPx).toBeLessThan(105);
					}
				},
			),
		);
	});
});

describe("what is shown", () => {
	test.each([
		["hand-four-point", 700],
		["machine-four-point", 0.42 * 1473],
		["plain", 0.3 * 1473],
	] as const)(
		"the enlarged butt of %s begins just before the first wood of it",
		(splice, fromButtMm) => {
			const design = cue({
				lengthMm: 1473,
				splice,
				splicing:
					splice === "hand-four-point"
						? { points: { pointFromButtMm: 700 } }
						: undefined,
			});
			expect(1473 - firstButtWoodMm(design)).toBeCloseTo(fromButtMm, 6);
			const [fromMm, toMm] = stationsShownMm(design, "butt");
			expect(toMm).toBe(1473);
			expect(1473 - fromMm).toBeCloseTo(1.06 * fromButtMm, 6);
		},
	);
	test("the front is what a player sights along", () => {
		expect(stationsShownMm(cue(), "front")).toEqual([0, 300]);
		expect(stationsShownMm(cue({ lengthMm: 1000 }), "whole")).toEqual([
			0, 1000,
		]);
	});
	test.each([
		[{ widthPx: 99 }, /widthPx must be 100 to 4000, got 99/],
		[{ heightPx: 1601 }, /heightPx must be 4 to 1600, got 1601/],
		[{ angleDeg: Number.NaN }, /angleDeg must be -360 to 720, got NaN/],
		[{ view: { ...WHOLE, stretch: 0 } }, /stretch must be 1 to 30, got 0/],
		[{ heightPx: 12 }, /heightPx must hold .* px of cue, got 12 px/],
	])("%j is refused with its name and bounds", (change, message) => {
		expect(() =>
			frameFor({
				design: cue(),
				view: WHOLE,
				angleDeg: 0,
				widthPx: 1000,
				heightPx: 40,
				...change,
			}),
		).toThrow(message);
	});
});
