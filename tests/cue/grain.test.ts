import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	arrowSpacingMm,
	arrowsSeenAt,
	grainArrows,
	hidingTiltsDeg,
	ringSpacingForMm,
} from "@/lib/cue/grain";
import { must } from "@/lib/numerics/outcome";
import { bareRound, cue58 } from "../support/designs";

/**
 * Worked example, derived and not published: r 4.75 → 14.5 mm over 1473 mm, rings 2 mm apart.
 * θ = 0.3792435°; untilted spacing 302.1538 mm, 4.875 a face; tilts of 0.1°, 0.5° and 1° give the
 * front and back spacings below, the back's arrows turned over past θ.
 */
const LENGTH = 1473;
const cone = bareRound({
	lengthMm: LENGTH,
	taper: [
		{ stationMm: 0, diameterMm: 9.5 },
		{ stationMm: LENGTH, diameterMm: 29 },
	],
});
const taperDeg = (Math.atan(9.75 / LENGTH) * 180) / Math.PI;
const picture = (tiltDeg: number, phaseShare = 0) =>
	must(
		grainArrows({
			design: cone,
			grain: { ringSpacingMm: 2, tiltDeg, phaseShare },
			fromStationMm: 0,
			toStationMm: LENGTH,
		}),
	);

describe("grain arrows on a straight taper", () => {
	it("stand 302.1538 mm apart without tilt, four or five a face, all pointing to the tip", () => {
		const { front, back } = picture(0);
		expect(front.meanSpacingMm).toBeCloseTo(302.1538, 4);
		expect(back.meanSpacingMm).toBeCloseTo(302.1538, 4);
		expect([4, 5]).toContain(front.arrows.length);
		for (const arrow of [...front.arrows, ...back.arrows])
			expect(arrow.pointsTo).toBe("tip");
		expect(9.75 / 2).toBe(4.875);
	});

	it.each([
		[0.1, 239.107, 410.357, "tip"],
		[0.5, 130.332, 948.927, "butt"],
		[1, 83.089, 184.599, "butt"],
	] as const)(
		"with %f° of tilt: front %f mm, back %f mm and pointing to the %s",
		(tiltDeg, frontMm, backMm, backPointsTo) => {
			const { front, back } = picture(tiltDeg);
			expect(front.meanSpacingMm).toBeCloseTo(frontMm, 2);
			expect(
				arrowSpacingMm({ ringSpacingMm: 2, taperDeg, tiltDeg, face: "back" }),
			).toBeCloseTo(backMm, 2);
			if (back.meanSpacingMm !== null)
				expect(back.meanSpacingMm).toBeCloseTo(backMm, 2);
			for (const arrow of front.arrows) expect(arrow.pointsTo).toBe("tip");
			for (const arrow of back.arrows)
				expect(arrow.pointsTo).toBe(backPointsTo);
		},
	);

	it("have no end where the rings lie along the back's surface", () => {
		const spacing = arrowSpacingMm({
			ringSpacingMm: 2,
			taperDeg,
			tiltDeg: taperDeg,
			face: "back",
		});
		expect(spacing).toBeGreaterThan(1e12);
		const { back } = picture(taperDeg);
		expect(back.arrows.length).toBeLessThanOrEqual(1);
	});

	it("depend on no taper when there is none: t/sin α on both faces", () => {
		for (const face of ["front", "back"] as const)
			expect(
				arrowSpacingMm({ ringSpacingMm: 2, taperDeg: 0, tiltDeg: 1, face }),
			).toBeCloseTo(2 / Math.sin(Math.PI / 180), 9);
	});

	it("change faces when the tilt is turned round", () => {
		const one = picture(0.5);
		const other = picture(-0.5);
		expect(one.front.arrows.length).toBe(other.back.arrows.length);
		expect(other.front.arrows.every((a) => a.pointsTo === "butt")).toBe(true);
	});
});

describe("the arrows of a shaped cue", () => {
	it("are closer where the taper is quicker", () => {
		const { front } = must(
			grainArrows({
				design: cue58({ taperShape: "slim-forward", layout: "one-piece" }),
				grain: { ringSpacingMm: 0.5, tiltDeg: 0 },
			}),
		);
		const gaps = front.arrows
			.slice(1)
			.map((arrow, i) => arrow.stationMm - (front.arrows[i]?.stationMm ?? 0));
		expect(gaps.length).toBeGreaterThan(4);
		expect(gaps[0]).toBeGreaterThan(gaps[gaps.length - 1] ?? 0);
	});

	it("count (r_end − r_start)/t to within one", () => {
		fc.assert(
			fc.property(
				fc.double({ min: 0.4, max: 4, noNaN: true }),
				fc.double({ min: 0, max: 1, noNaN: true }),
				(ringSpacingMm, phaseShare) => {
					const { front, back } = must(
						grainArrows({
							design: cone,
							grain: { ringSpacingMm, tiltDeg: 0, phaseShare },
							fromStationMm: 0,
							toStationMm: LENGTH,
						}),
					);
					for (const { arrows } of [front, back])
						expect(Math.abs(arrows.length - 9.75 / ringSpacingMm)).toBeLessThan(
							1.0001,
						);
				},
			),
		);
	});

	it("say whether one falls near the tip, and moving the ring moves it", () => {
		const near = (phaseShare: number) =>
			must(
				grainArrows({
					design: cone,
					grain: { ringSpacingMm: 2, tiltDeg: 0, phaseShare },
					fromStationMm: 0,
					toStationMm: LENGTH,
					nearTipMm: 100,
				}),
			).nearTip;
		// r = 4.75 at the tip: a ring at 5 mm, 37.8 mm on, is phase 0.5.
		expect(near(0.5).some((arrow) => arrow.face === "front")).toBe(true);
		expect(near(0.5).map((arrow) => arrow.stationMm)[0]).toBeCloseTo(
			(0.25 * LENGTH) / 9.75,
			6,
		);
		expect(near(0.25)).toEqual([]);
	});

	it("end at the splice points unless asked otherwise", () => {
		const design = cue58({ layout: "one-piece" });
		const { front } = must(
			grainArrows({ design, grain: { ringSpacingMm: 0.4, tiltDeg: 0 } }),
		);
		const last = front.arrows[front.arrows.length - 1]?.stationMm ?? 0;
		expect(last).toBeLessThan(0.525 * design.lengthMm + 1);
		expect(last).toBeGreaterThan(0.45 * design.lengthMm);
	});

	it("refuses rings, tilts and stations it cannot draw", () => {
		const outcome = grainArrows({
			design: cone,
			grain: { ringSpacingMm: 0, tiltDeg: 40 },
		});
		expect(outcome.ok).toBe(false);
		if (outcome.ok) return;
		expect(outcome.refusals.map((refusal) => refusal.field)).toEqual([
			"grain.ringSpacingMm",
			"grain.tiltDeg",
		]);
	});
});

describe("choosing wood and turning the cue", () => {
	it("gives the ring spacing to look for", () => {
		for (const face of ["front", "back"] as const) {
			const ringSpacingMm = ringSpacingForMm({
				arrowSpacingMm: 250,
				taperDeg,
				tiltDeg: 0.2,
				face,
			});
			expect(
				arrowSpacingMm({ ringSpacingMm, taperDeg, tiltDeg: 0.2, face }),
			).toBeCloseTo(250, 9);
		}
	});

	it("finds the tilts that leave one arrow at most on a face", () => {
		for (const face of ["front", "back"] as const) {
			const tilts = hidingTiltsDeg({
				ringSpacingMm: 2,
				taperDeg,
				lengthMm: 700,
				face,
			});
			for (const tiltDeg of [tilts.lowDeg, tilts.highDeg])
				expect(
					arrowSpacingMm({ ringSpacingMm: 2, taperDeg, tiltDeg, face }),
				).toBeCloseTo(700, 6);
			const middle = (tilts.lowDeg + tilts.highDeg) / 2;
			expect(
				arrowSpacingMm({ ringSpacingMm: 2, taperDeg, tiltDeg: middle, face }),
			).toBeGreaterThan(1e6);
			expect(middle).toBeCloseTo(face === "front" ? -taperDeg : taperDeg, 9);
		}
	});

	it("carries the arrows off the top when the cue is turned, and shows the other face upside down", () => {
		expect(arrowsSeenAt(0).front).toEqual({ sidewaysShare: 0, seen: true });
		expect(arrowsSeenAt(30).front.sidewaysShare).toBeCloseTo(0.5, 12);
		expect(arrowsSeenAt(100).front.seen).toBe(false);
		expect(arrowsSeenAt(100).back.seen).toBe(true);
	});
});
