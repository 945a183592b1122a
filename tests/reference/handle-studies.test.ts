/**
 * Published handle research, context only: Kong & Lowe 2005 (19.7 % of hand length), Sancho-Bru et al.
 * 2003 (33 mm), Cal/OSHA–NIOSH 2004-164 (power 1¼–2 in, precision ¼–½ in); largest inside grip 52/189,
 * 48/174 mm from memory of Bodyspace.
 */
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import {
	gripCircleFrom,
	LARGEST_GRIP_SHARE,
	LIGHT_RING_SHARE,
} from "@/lib/player/hand";
import {
	HANDLE_STUDIES,
	HARD_GRIP_SHARE_OF_HAND,
	UNPUBLISHED_GAP_MM,
} from "@/lib/reference/handles";

describe("best cylinder for the hardest grip, from survey hand lengths", () => {
	// Survey hands at 5, 50 and 95 %: 177/193/210 men, 165/180/199 women.
	test.each([
		[177, 34.9],
		[193, 38.0],
		[210, 41.4],
		[165, 32.5],
		[180, 35.5],
		[199, 39.2],
	])("hand of %i mm: %d mm", (handMm, diameterMm) => {
		expect(HARD_GRIP_SHARE_OF_HAND * handMm).toBeCloseTo(diameterMm, 1);
	});
});

test("inch figures are exact in millimetres", () => {
	const guide = HANDLE_STUDIES.filter((s) => s.source === "niosh-2004-164").map(
		(s) => s.diameterMm,
	);
	expect(guide).toContainEqual([1.25 * 25.4, 2 * 25.4]);
	expect(guide).toContainEqual([0.25 * 25.4, 0.5 * 25.4]);
});

test("the light ring lies under the largest grip and under the hard-grip optimum, as a light hold must", () => {
	expect(LIGHT_RING_SHARE.ratio).toBeLessThan(HARD_GRIP_SHARE_OF_HAND);
	expect(LIGHT_RING_SHARE.ratio).toBeLessThan(LARGEST_GRIP_SHARE);
	for (const [grip, hand] of [
		[52, 189],
		[48, 174],
		[49, 180],
	] as const)
		expect(Math.abs(grip / hand / LARGEST_GRIP_SHARE - 1)).toBeLessThan(0.02);
});

test("a mean adult's assumed ring fits a 29 mm butt held 105 mm up an even taper, in the gap no study covers", () => {
	const ring = must(
		gripCircleFrom({
			readingsMm: [],
			handLengthMm: {
				value: 193.3,
				sd: 0,
				standing: "measured",
				sources: ["measured-here"],
			},
		}),
	).circleMm;
	// Common practice: 29 mm at the butt end, about 0.015 mm of taper a millimetre.
	expect(Math.abs(ring.value - (29 - 0.015 * 105))).toBeLessThan(0.2);
	expect(ring.value).toBeGreaterThan(UNPUBLISHED_GAP_MM[0]);
	expect(ring.value).toBeLessThan(UNPUBLISHED_GAP_MM[1]);
	for (const study of HANDLE_STUDIES)
		expect(
			study.diameterMm[0] >= 30 || study.diameterMm[1] < UNPUBLISHED_GAP_MM[0],
		).toBe(true);
});
