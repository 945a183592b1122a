import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { splicePointStationsMm } from "@/lib/build/stations";
import type { CueRequest, SplicingRequest } from "@/lib/cue/design";
import { flatFrom, PLANING } from "@/lib/cue/flat";
import { sectionAt } from "@/lib/cue/section";
import { taperCurve, taperPoints } from "@/lib/cue/taper";
import { designFrom } from "@/lib/cue/template";
import { must } from "@/lib/numerics/outcome";
import { cue58, SNOOKER_58 } from "../support/designs";

const taper = taperPoints(SNOOKER_58);
const round = {
	lengthMm: SNOOKER_58.lengthMm,
	radiusAt: (stationMm: number) => taperCurve(taper).at(stationMm) / 2,
};
const usual = { pointFromButtMm: 700, coreHalfWidthMm: 5 };
const flat = (request: Parameters<typeof flatFrom>[0]["request"]) =>
	flatFrom({ round, request, usual, field: "splicing.points" });

const refused = (
	splicing: SplicingRequest,
	change: Partial<CueRequest> = {},
) => {
	const outcome = designFrom({ ...SNOOKER_58, ...change, splicing });
	return outcome.ok ? null : (outcome.refusals[0] ?? null);
};

describe("flatFrom", () => {
	it("finds the third figure from any two, and they agree", () => {
		fc.assert(
			fc.property(
				fc.double({ min: 300, max: 800, noNaN: true }),
				fc.double({ min: 3, max: 6, noNaN: true }),
				(pointFromButtMm, coreHalfWidthMm) => {
					const first = must(flat({ pointFromButtMm, coreHalfWidthMm }));
					expect(round.radiusAt(round.lengthMm - pointFromButtMm)).toBeCloseTo(
						coreHalfWidthMm +
							pointFromButtMm * Math.tan((first.planeAngleDeg * Math.PI) / 180),
						9,
					);
					const second = must(
						flat({ pointFromButtMm, planeAngleDeg: first.planeAngleDeg }),
					);
					expect(second.coreHalfWidthMm).toBeCloseTo(coreHalfWidthMm, 9);
					const third = must(
						flat({ coreHalfWidthMm, planeAngleDeg: first.planeAngleDeg }),
					);
					expect(third.pointFromButtMm).toBeCloseTo(pointFromButtMm, 6);
				},
			),
		);
	});

	it("takes the usual figures for what is not named", () => {
		expect(must(flat({}))).toMatchObject(usual);
	});

	it("puts points lower for a thicker core or a steeper plane", () => {
		const point = (request: Parameters<typeof flat>[0]) =>
			must(flat(request)).pointFromButtMm;
		expect(point({ planeAngleDeg: 0.5 })).toBeLessThan(
			point({ planeAngleDeg: 0.4 }),
		);
		expect(point({ planeAngleDeg: 0.4, coreHalfWidthMm: 6 })).toBeLessThan(
			point({ planeAngleDeg: 0.4, coreHalfWidthMm: 5 }),
		);
	});

	it("refuses all three at once", () => {
		const outcome = flat({
			pointFromButtMm: 600,
			coreHalfWidthMm: 5,
			planeAngleDeg: 0.4,
		});
		expect(!outcome.ok && outcome.refusals[0]?.code).toBe("one-too-many");
	});

	it.each([
		[{ pointFromButtMm: 40 }, "splicing.points.pointFromButtMm"],
		[{ pointFromButtMm: 1300 }, "splicing.points.pointFromButtMm"],
		[{ planeAngleDeg: 9 }, "splicing.points.planeAngleDeg"],
		[{ coreHalfWidthMm: 1 }, "splicing.points.coreHalfWidthMm"],
		[{ coreHalfWidthMm: 14 }, "splicing.points.coreHalfWidthMm"],
		// The plane that joins them would run through the core and out.
		[
			{ pointFromButtMm: 900, planeAngleDeg: 1 },
			"splicing.points.coreHalfWidthMm",
		],
	])("refuses %j", (request, field) => {
		const outcome = flat(request);
		expect(outcome.ok).toBe(false);
		if (outcome.ok) return;
		expect(outcome.refusals[0]?.field).toBe(field);
		expect(outcome.refusals[0]?.min).toBeTypeOf("number");
		expect(outcome.refusals[0]?.max).toBeTypeOf("number");
	});
});

describe("cuts of a design", () => {
	it("come to their points where asked", () => {
		const design = cue58({
			layout: "one-piece",
			splicing: {
				points: { pointFromButtMm: 650 },
				pointsBetween: { wood: "snakewood", pointFromButtMm: 480 },
			},
		});
		const points = splicePointStationsMm(design).map(
			(stationMm) => design.lengthMm - stationMm,
		);
		expect(points[0]).toBeCloseTo(650, 4);
		expect(points[1]).toBeCloseTo(480, 4);
		expect(points).toHaveLength(2);
	});

	it("keep the core that was asked for at the butt end", () => {
		const design = cue58({
			layout: "one-piece",
			fittings: { buttEndRadiusMm: 0 },
			splicing: { points: { coreHalfWidthMm: 6 } },
		});
		const section = sectionAt(design, design.lengthMm);
		expect(section.areaByMaterialMm2["white-ash"]).toBeCloseTo(144, 6);
	});

	it("let the butt's share of the section grow along the splice", () => {
		const design = cue58({ layout: "one-piece" });
		let last = 0;
		for (let fromButtMm = 690; fromButtMm > 10; fromButtMm -= 20) {
			const { buttWoodShare } = sectionAt(design, design.lengthMm - fromButtMm);
			expect(buttWoodShare).toBeGreaterThan(last);
			last = buttWoodShare;
		}
		expect(last).toBeGreaterThan(0.7);
	});

	it("are for hand splices only where they are hand-splice points", () => {
		expect(
			refused({ points: {} }, { splice: "machine-four-point" })?.code,
		).toBe("hand-splice-only");
		expect(
			refused({ pointsBetween: { wood: "bocote" } }, { splice: "plain" })
				?.field,
		).toBe("splicing.pointsBetween");
	});

	it("refuse veneers and counts that cannot be made", () => {
		expect(
			refused({
				frontWedge: {
					wood: "bocote",
					veneers: [{ wood: "sugar-maple", thicknessMm: 9 }],
				},
			}),
		).toMatchObject({
			field: "splicing.frontWedge.veneers.0.thicknessMm",
			...PLANING.veneerMm,
		});
		expect(refused({ allRound: { wood: "bocote", count: 2 } })).toMatchObject({
			field: "splicing.allRound.count",
			value: 2,
			min: 3,
			max: 12,
		});
		expect(refused({ allRound: { wood: "bocote", count: 4.5 } })?.code).toBe(
			"not-whole",
		);
	});
});
