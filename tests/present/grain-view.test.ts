import { describe, expect, test } from "vitest";
import { type Grain, grainArrows } from "@/lib/cue/grain";
import { must } from "@/lib/numerics/outcome";
import { grainView, meanTaperDeg } from "@/lib/present/grain-view";
import { METRIC } from "@/tests/support/readers";
import { cue } from "../support/designs";

/** The worked cone of the ring geometry: r 4.75 to 14.5 mm over 1473 mm, θ = 0.3792435°. */
const design = cue({
	lengthMm: 1473,
	taperShape: "straight",
	tipDiameterMm: 9.5,
	buttDiameterMm: 29,
	splice: "plain",
});
const plain = (text: string) => text.replaceAll("\u00a0", " ");
const view = (grain: Grain, more: { turn?: number; wanted?: number } = {}) => {
	const seen = grainView({
		design,
		grain,
		picture: must(grainArrows({ design, grain })),
		sightTurnDeg: more.turn ?? 0,
		wantedSpacingMm: more.wanted ?? 250,
		reader: METRIC,
	});
	return {
		...seen,
		told: seen.told.map(plain),
		advice: seen.advice.map(plain),
	};
};

test("the mean taper of a straight cue is its half-angle", () => {
	expect(meanTaperDeg(design)).toBeCloseTo(0.3792435, 6);
});

describe("what stands where", () => {
	test("rings along the axis, 2 mm apart: arrows 302 mm apart, all to the tip", () => {
		const { told, rows, advice } = view({ ringSpacingMm: 2, tiltDeg: 0 });
		expect(told[0]).toMatch(
			/^Front: 3 arrows, 302 mm apart.*pointing to the tip/,
		);
		expect(told[1]).toMatch(/^Back: 3 arrows, 302 mm apart/);
		expect(advice[1]).toContain("302 mm apart on both faces");
		expect(rows).toHaveLength(6);
		expect(rows.every(({ points }) => points === "to the tip")).toBe(true);
	});
	test("tilted half a degree the back turns over, as the worked example has it", () => {
		const { told } = view({ ringSpacingMm: 2, tiltDeg: 0.5 });
		expect(told[0]).toMatch(/130 mm apart on average, pointing to the tip/);
		expect(told[1]).toMatch(/pointing to the butt/);
	});
	test("an arrow near the tip is told with its place", () => {
		// On the back r = 2·(3 − 0.4) = 5.2 mm, z = (5.2 − 4.75)/tan θ = 68 mm; on the front 4.8 mm is in the ferrule.
		const { told, rows } = view({
			ringSpacingMm: 2,
			tiltDeg: 0,
			phaseShare: 0.4,
		});
		expect(told[2]).toBe(
			"In the 150 mm behind the ferrule one falls: 68 mm from the tip, back.",
		);
		expect(rows.filter(({ near }) => near === "in sight")).toHaveLength(1);
	});
	test("none near the tip is told so", () => {
		// The first on both faces is at r = 6 mm, z = 189 mm.
		const { told, rows } = view({ ringSpacingMm: 2, tiltDeg: 0 });
		expect(told[2]).toBe("None falls in the 150 mm behind the ferrule.");
		expect(plain(rows[0]?.fromTip ?? "")).toBe("189 mm");
		expect(rows.every(({ near }) => near === "")).toBe(true);
	});
	test("no arrow at all is told so", () => {
		const { told, rows } = view({
			ringSpacingMm: 15,
			tiltDeg: 0,
			phaseShare: 0.9,
		});
		expect(rows).toEqual([]);
		expect(told.slice(0, 2)).toEqual([
			"Front: no arrow on the shaft.",
			"Back: no arrow on the shaft.",
		]);
	});
});

describe("sighting", () => {
	const turned = (turn: number) =>
		view({ ringSpacingMm: 2, tiltDeg: 0 }, { turn }).told[3];
	test.each([
		[0, "Turned by 0°, the front’s arrows stand on the sight line."],
		[
			30,
			"Turned by 30°, the front’s arrows stand 50% of the half thickness beside the sight line.",
		],
		[180, "Turned by 180°, the back’s arrows stand on the sight line."],
	])("%d°", (turn, words) => {
		expect(turned(turn)).toBe(words);
	});
});

describe("what to look for", () => {
	test("wanted spacing over the cone's tangent gives the ring spacing", () => {
		// t = 250 mm · tan 0.3792435° = 1.6548 mm.
		expect(view({ ringSpacingMm: 2, tiltDeg: 0 }).advice[0]).toContain(
			"rings 1.7 mm apart",
		);
		expect(
			view({ ringSpacingMm: 2, tiltDeg: 0 }, { wanted: 302.1538 }).advice[0],
		).toContain("rings 2.0 mm apart");
	});
	test("tilts that hide the front's arrows lie about the taper, turned against it", () => {
		// sin(α + θ) within ±2·cos θ/150: −0.3792° ± 0.7639°.
		expect(view({ ringSpacingMm: 2, tiltDeg: 0 }).advice[2]).toContain(
			"between −1.14° and 0.38°",
		);
	});
});
