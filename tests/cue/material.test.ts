import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { materialAt } from "@/lib/cue/material";
import { regionsAt } from "@/lib/cue/regions";
import { outlineRadiusMm } from "@/lib/cue/taper";
import { anyRequest, cue58 } from "../support/designs";
import { seeded } from "./support/random";

const part = (
	design: ReturnType<typeof cue58>,
	fromButtMm: number,
	angleDeg: number,
	share = 0.999,
) => {
	const stationMm = design.lengthMm - fromButtMm;
	return materialAt({
		design,
		stationMm,
		angleDeg,
		radiusMm: share * outlineRadiusMm(design, stationMm),
	});
};

describe("materialAt along a hand-spliced cue", () => {
	const design = cue58();

	it("answers leather, metal sleeve, tenon, shaft, wedges, joint in turn", () => {
		const at = (stationMm: number, radiusMm: number) =>
			materialAt({ design, stationMm, angleDeg: 10, radiusMm });
		expect(at(3, 2)).toEqual({ part: "tip", material: "tip-leather" });
		expect(at(9, 4.6)).toEqual({ part: "ferrule", material: "brass" });
		expect(at(9, 3)).toEqual({ part: "shaft", material: "white-ash" });
		expect(at(300, 3)).toEqual({ part: "shaft", material: "white-ash" });
		expect(at(design.joint?.stationMm ?? 0, 10)).toEqual({
			part: "joint",
			material: "brass",
		});
	});

	it("shows four wedges on the faces and shaft wood between them below the points", () => {
		for (const angleDeg of [0, 180])
			expect(part(design, 600, angleDeg)?.part).toBe("first splice pair");
		for (const angleDeg of [90, 270])
			expect(part(design, 600, angleDeg)?.part).toBe("second splice pair");
		for (const angleDeg of [45, 135, 225, 315])
			expect(part(design, 600, angleDeg)?.part).toBe("shaft");
	});

	it("lets the second pair run over the first where they meet", () => {
		expect(part(design, 50, 46)?.part).toBe("second splice pair");
		expect(part(design, 50, 44)?.part).toBe("second splice pair");
		expect(part(design, 50, 20)?.part).toBe("first splice pair");
	});

	it("keeps a rectangular core at the butt end", () => {
		expect(part(design, 1, 0, 0.1)?.part).toBe("shaft");
		expect(part(design, 1, 0, 0.9)?.material).toBe("gaboon-ebony");
	});

	it("has nothing outside the turned surface or off the ends", () => {
		expect(part(design, 300, 0, 1.001)).toBeNull();
		expect(
			materialAt({ design, stationMm: -1, angleDeg: 0, radiusMm: 0 }),
		).toBeNull();
		expect(
			materialAt({ design, stationMm: 1474, angleDeg: 0, radiusMm: 0 }),
		).toBeNull();
		// In the rounded edge and beside the dome.
		expect(
			materialAt({ design, stationMm: 1472.9, angleDeg: 0, radiusMm: 14 }),
		).toBeNull();
		expect(
			materialAt({ design, stationMm: 0.1, angleDeg: 0, radiusMm: 4 }),
		).toBeNull();
	});
});

describe("points", () => {
	/** Half-width of a wedge on the surface, as an angle, a little behind its point. */
	const halfWidthDeg = (
		design: ReturnType<typeof cue58>,
		fromButtMm: number,
	) => {
		let inside = 0;
		let outside = 45;
		for (let i = 0; i < 50; i++) {
			const middle = (inside + outside) / 2;
			if (part(design, fromButtMm, middle, 1 - 1e-12)?.part === "shaft")
				outside = middle;
			else inside = middle;
		}
		return inside;
	};

	it("come out rounded in a hand splice: width grows like the root of the distance", () => {
		const design = cue58({ layout: "one-piece" });
		const point = 0.475 * design.lengthMm;
		const ratio =
			halfWidthDeg(design, point - 4) / halfWidthDeg(design, point - 1);
		expect(ratio).toBeCloseTo(2, 1);
	});

	it("come out sharp in a machine splice: width grows like the distance", () => {
		const design = cue58({ layout: "one-piece", splice: "machine-four-point" });
		const point = 0.42 * design.lengthMm;
		const ratio =
			halfWidthDeg(design, point - 4) / halfWidthDeg(design, point - 1);
		expect(ratio).toBeCloseTo(4, 1);
	});

	it("interlock in a machine splice: the shaft's prongs end in points too", () => {
		const design = cue58({ layout: "one-piece", splice: "machine-four-point" });
		const end = 0.19 * design.lengthMm;
		expect(part(design, end + 2, 45)?.part).toBe("shaft");
		expect(part(design, end + 2, 47)?.part).toBe("butt");
		expect(part(design, end - 1, 45)?.part).toBe("butt");
	});
});

describe("veneers, front wedge, patterns and end pieces", () => {
	it("lays veneer between core and wedge, at its thickness", () => {
		const design = cue58({
			layout: "one-piece",
			splicing: {
				frontWedge: {
					wood: "cocobolo",
					veneers: [
						{ wood: "sugar-maple", thicknessMm: 0.6 },
						{ wood: "black-walnut", thicknessMm: 1 },
					],
				},
			},
		});
		const sheets = design.splice.cuts.filter((cut) =>
			cut.part.startsWith("front wedge"),
		);
		expect(sheets.map((cut) => cut.wood)).toEqual([
			"sugar-maple",
			"black-walnut",
			"cocobolo",
		]);
		const offset = sheets[0]?.buttOffsetMm ?? 0;
		const lean = Math.cos(((sheets[0]?.angleDeg ?? 0) * Math.PI) / 180);
		const at = (radiusMm: number) =>
			materialAt({
				design,
				stationMm: design.lengthMm - 1e-9 - design.buttEndRadiusMm,
				angleDeg: 0,
				radiusMm,
			})?.material;
		const slack =
			(design.buttEndRadiusMm + 1e-9) *
			Math.tan(((sheets[0]?.angleDeg ?? 0) * Math.PI) / 180);
		expect(at(offset + slack - 0.01)).toBe("gaboon-ebony");
		expect(at(offset + slack + 0.01)).toBe("sugar-maple");
		expect(at(offset + slack + 0.6 / lean - 0.01)).toBe("sugar-maple");
		expect(at(offset + slack + 0.6 / lean + 0.01)).toBe("black-walnut");
		expect(at(offset + slack + 1.6 / lean + 0.01)).toBe("cocobolo");
	});

	it("repeats an all-round pattern with its symmetry", () => {
		const design = cue58({
			layout: "one-piece",
			splicing: { allRound: { wood: "bocote", count: 6 } },
		});
		for (let i = 0; i < 6; i++) {
			expect(part(design, 150, 30 + 60 * i)?.part).toBe("all-round wedges");
			expect(part(design, 150, 60 * i)?.part).not.toBe("all-round wedges");
		}
	});

	it("puts eight points round an eight-point butt", () => {
		const design = cue58({
			layout: "one-piece",
			splicing: { pointsBetween: { wood: "snakewood" } },
		});
		const seen = Array.from({ length: 8 }, (_, i) => part(design, 400, 45 * i));
		expect(seen.map((one) => one?.material)).toEqual(
			Array.from({ length: 8 }, (_, i) =>
				i % 2 === 0 ? "gaboon-ebony" : "snakewood",
			),
		);
	});

	it("shows a screw-in end piece's thread", () => {
		const design = cue58({
			layout: "one-piece",
			fittings: { endPieceMm: 120 },
		});
		expect(part(design, 120, 0)?.part).toBe("end joint");
		expect(part(design, 110, 0, 0.1)?.part).toBe("end joint");
		expect(part(design, 110, 0, 0.9)?.part).not.toBe("end joint");
	});
});

describe("regionsAt agrees with materialAt", () => {
	it("in every part's area, at random stations of random cues", () => {
		const uniform = seeded(3);
		fc.assert(
			fc.property(
				anyRequest,
				fc.double({ min: 0.01, max: 0.99, noNaN: true }),
				(request, share) => {
					const design = cue58({
						...request,
						splicing: { allRound: { wood: "bocote", count: 4 } },
					});
					const stationMm = share * design.lengthMm;
					const radiusMm = outlineRadiusMm(design, stationMm);
					const count = 4000;
					const seen = new Map<string, number>();
					for (let i = 0; i < count; i++) {
						const point = materialAt({
							design,
							stationMm,
							angleDeg: 360 * uniform(),
							radiusMm: radiusMm * Math.sqrt(uniform()),
						});
						if (point) seen.set(point.part, (seen.get(point.part) ?? 0) + 1);
					}
					const areas = new Map<string, number>();
					for (const { part: name, moments } of regionsAt(design, stationMm))
						areas.set(name, (areas.get(name) ?? 0) + moments.area);
					const whole = Math.PI * radiusMm * radiusMm;
					for (const [name, area] of areas) {
						const p = area / whole;
						const error = Math.sqrt(Math.max(0, p * (1 - p)) / count);
						expect(Math.abs((seen.get(name) ?? 0) / count - p)).toBeLessThan(
							5 * error + 1e-3,
						);
					}
				},
			),
			{ numRuns: 60 },
		);
	});

	it("always fills the whole disc", () => {
		fc.assert(
			fc.property(
				anyRequest,
				fc.double({ min: 0.001, max: 0.999, noNaN: true }),
				(request, share) => {
					const design = cue58(request);
					const stationMm = share * design.lengthMm;
					const radiusMm = outlineRadiusMm(design, stationMm);
					const sum = regionsAt(design, stationMm).reduce(
						(s, region) => s + region.moments.area,
						0,
					);
					expect(sum).toBeCloseTo(Math.PI * radiusMm * radiusMm, 8);
				},
			),
		);
	});
});
