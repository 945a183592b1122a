/** ISO/IEC 7810, ID-1 card: 85.60 × 53.98 mm (figures from memory of the standard). */
import { expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import {
	coneReadingMm,
	gaugeStepsMm,
	ID1_CARD,
	pixelsPerMm,
	printScaleRatio,
} from "@/lib/player/gauge";

test("size of the card: 85.60 × 53.98 mm, that is 3.370 × 2.125 in", () => {
	expect(ID1_CARD).toEqual({ widthMm: 85.6, heightMm: 53.98 });
	expect(ID1_CARD.widthMm / 25.4).toBeCloseTo(3.37, 3);
	expect(ID1_CARD.heightMm / 25.4).toBeCloseTo(2.125, 3);
});

test("a 96 dpi screen shows the card 323.5 px wide: 96/25.4 px a millimetre", () => {
	const scale = must(pixelsPerMm({ cardWidthPx: (85.6 * 96) / 25.4 }));
	expect(scale).toBeCloseTo(96 / 25.4, 12);
	// A ring drawn 29 mm across at that scale.
	expect(29 * scale).toBeCloseTo(109.606, 3);
});

test("a card that is not matched is refused", () => {
	expect(pixelsPerMm({ cardWidthPx: 40 })).toMatchObject({
		ok: false,
		refusals: [{ field: "cardWidthPx", value: 40 }],
	});
	expect(pixelsPerMm({ cardWidthPx: 400, cardHeightPx: 300 })).toMatchObject({
		ok: false,
		refusals: [{ field: "cardShapeRatio" }],
	});
	expect(pixelsPerMm({ cardWidthPx: 400, cardHeightPx: 252.2 }).ok).toBe(true);
});

test("a print shrunk to fit the page (97 %) is refused; half a millimetre in 100 is taken", () => {
	expect(printScaleRatio({ rulerMm: 100, readMm: 97 })).toMatchObject({
		ok: false,
		refusals: [{ field: "readMm", value: 97, min: 99, max: 101 }],
	});
	expect(must(printScaleRatio({ rulerMm: 100, readMm: 99.5 }))).toBeCloseTo(
		0.995,
		12,
	);
});

test("a cone from 20 to 44 mm over 240 mm: a tenth of a millimetre of ring a millimetre of cone", () => {
	const at = (fromSmallEndMm: number) =>
		coneReadingMm({
			smallEndDiameterMm: 20,
			largeEndDiameterMm: 44,
			lengthMm: 240,
			fromSmallEndMm,
		});
	expect(must(at(0))).toBe(20);
	expect(must(at(95))).toBeCloseTo(29.5, 12);
	expect(at(241)).toMatchObject({
		ok: false,
		refusals: [{ field: "fromSmallEndMm", max: 240 }],
	});
});

test("gauge steps include both ends", () => {
	expect(gaugeStepsMm({ fromMm: 24, toMm: 26, stepMm: 0.5 })).toEqual([
		24, 24.5, 25, 25.5, 26,
	]);
	expect(() => gaugeStepsMm({ fromMm: 24, toMm: 26, stepMm: 0 })).toThrow(
		/steps of 0 mm/,
	);
});
