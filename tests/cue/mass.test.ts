import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CueDesign } from "@/lib/cue/design";
import { inertiaAboutStationKgM2, weighCue } from "@/lib/cue/mass";
import { materialAt } from "@/lib/cue/material";
import { densityKgM3 } from "@/lib/cue/materials";
import { regionsAt } from "@/lib/cue/regions";
import { anyRequest, cue58, SNOOKER_58 } from "../support/designs";
import { adaptiveSimpson } from "./support/adaptive";
import { normals, seeded } from "./support/random";

const DECORATED: Parameters<typeof cue58>[0] = {
	splicing: {
		pointsBetween: {
			wood: "snakewood",
			veneers: [{ wood: "sugar-maple", thicknessMm: 0.6 }],
		},
		frontWedge: {
			wood: "bocote",
			veneers: [{ wood: "black-walnut", thicknessMm: 0.8 }],
		},
	},
};

/** ∫ over the whole cue of a section figure, by adaptive Simpson that knows none of the breaks. */
function bySimpson(
	design: CueDesign,
	of: (stationMm: number, areaMm2: number, polarMm4: number) => number,
): number {
	return adaptiveSimpson({
		f: (stationMm) => {
			let sum = 0;
			for (const { material, moments } of regionsAt(design, stationMm))
				sum +=
					densityKgM3(design, material).value *
					of(stationMm, moments.area, moments.polar);
			return sum;
		},
		from: 0,
		to: design.lengthMm - 1e-9,
		tolerance: 1,
	});
}

describe("weighCue against adaptive Simpson quadrature of the sections", () => {
	it.each([
		["hand splice", cue58()],
		["machine splice", cue58({ splice: "machine-four-point" })],
		["plain butt", cue58({ splice: "plain", layout: "one-piece" })],
		["eight points, veneers and a front wedge", cue58(DECORATED)],
		[
			"all-round pattern on a machine splice",
			cue58({
				splice: "machine-four-point",
				splicing: { allRound: { wood: "bocote", count: 5 } },
			}),
		],
	])("%s: mass, balance and both inertias to 1e-6", (_name, design) => {
		const mass = weighCue(design);
		const massSum = bySimpson(design, (_z, area) => area);
		const first = bySimpson(design, (z, area) => z * area);
		const polar = bySimpson(design, (_z, _area, j) => j);
		const stationMm = first / massSum;
		const across = bySimpson(
			design,
			(z, area, j) => (z - stationMm) ** 2 * area + j / 2,
		);
		expect(mass.massG.value / (massSum * 1e-6)).toBeCloseTo(1, 6);
		expect(mass.balanceStationMm.value / stationMm).toBeCloseTo(1, 6);
		expect(mass.inertiaAboutBalanceKgM2.value / (across * 1e-15)).toBeCloseTo(
			1,
			6,
		);
		expect(mass.inertiaAboutAxisKgM2.value / (polar * 1e-15)).toBeCloseTo(1, 6);
	});
});

describe("weighCue against points thrown at materialAt", () => {
	it.each([
		[
			"hand splice with decoration",
			cue58({ ...DECORATED, layout: "one-piece" }),
		],
		["machine splice", cue58({ splice: "machine-four-point" })],
	])("%s: every part's mass within its sampling error", (_name, design) => {
		const uniform = seeded(20260101);
		const half = 14.5;
		const count = 300_000;
		const hits = new Map<string, number>();
		for (let i = 0; i < count; i++) {
			const x = (2 * uniform() - 1) * half;
			const y = (2 * uniform() - 1) * half;
			const point = materialAt({
				design,
				stationMm: uniform() * design.lengthMm,
				angleDeg: (Math.atan2(y, x) * 180) / Math.PI,
				radiusMm: Math.hypot(x, y),
			});
			if (!point) continue;
			const key = `${point.part}|${point.material}`;
			hits.set(key, (hits.get(key) ?? 0) + 1);
		}
		const boxMm3 = 4 * half * half * design.lengthMm;
		for (const { part, material, massG } of weighCue(design).parts) {
			const gramsPerHit =
				(boxMm3 / count) * 1e-6 * densityKgM3(design, material).value;
			const seen = hits.get(`${part}|${material}`) ?? 0;
			const expected = massG.value / gramsPerHit;
			expect(Math.abs(seen - expected)).toBeLessThan(
				4 * Math.sqrt(expected) + 1,
			);
		}
	});
});

describe("bands", () => {
	it("are what 20,000 draws of independent densities give", () => {
		const design = cue58();
		const mass = weighCue(design);
		const normal = normals(seeded(7));
		const draws = Array.from({ length: 20_000 }, () => {
			let sum = 0;
			let first = 0;
			let second = 0;
			let polar = 0;
			for (const one of mass.materials) {
				const density = one.densityKgM3.value + one.densityKgM3.sd * normal();
				sum += density * one.volumeMm3;
				first += density * one.firstMm4;
				second += density * one.secondMm5;
				polar += density * one.polarMm5;
			}
			const z = first / sum;
			return {
				massG: sum * 1e-6,
				balanceMm: z,
				across: (second - z * z * sum + polar / 2) * 1e-15,
				along: polar * 1e-15,
			};
		});
		const spread = (of: (draw: (typeof draws)[number]) => number) => {
			const mean = draws.reduce((s, d) => s + of(d), 0) / draws.length;
			return Math.sqrt(
				draws.reduce((s, d) => s + (of(d) - mean) ** 2, 0) / (draws.length - 1),
			);
		};
		// Sampling error of an SD from n draws is 1/√(2n) = 0.5 %; balance is not quite linear.
		expect(mass.massG.sd / spread((d) => d.massG)).toBeCloseTo(1, 1.5);
		expect(mass.balanceFromButtMm.sd / spread((d) => d.balanceMm)).toBeCloseTo(
			1,
			1.5,
		);
		expect(
			mass.inertiaAboutBalanceKgM2.sd / spread((d) => d.across),
		).toBeCloseTo(1, 1.5);
		expect(mass.inertiaAboutAxisKgM2.sd / spread((d) => d.along)).toBeCloseTo(
			1,
			1.5,
		);
	});

	it("shrink to the billets' own once those are weighed", () => {
		const published = weighCue(cue58());
		const weighed = weighCue(
			cue58({
				densities: {
					"white-ash": { kgM3: 690, sd: 6 },
					"gaboon-ebony": { kgM3: 1040, sd: 8 },
				},
			}),
		);
		expect(weighed.massG.sd).toBeLessThan(0.15 * published.massG.sd);
		expect(weighed.massG.standing).toBe("measured");
		expect(published.massG.standing).toBe("derived");
		expect(published.massG.sources).toContain("wood-handbook-2021");
	});
});

describe("laws", () => {
	it("parts add up to the whole, in mass and in moment", () => {
		fc.assert(
			fc.property(anyRequest, (request) => {
				const mass = weighCue(cue58(request));
				const sum = mass.parts.reduce((s, p) => s + p.massG.value, 0);
				const moment = mass.parts.reduce(
					(s, p) => s + p.massG.value * p.centroidStationMm,
					0,
				);
				expect(sum).toBeCloseTo(mass.massG.value, 8);
				expect(moment / sum).toBeCloseTo(mass.balanceStationMm.value, 7);
			}),
			{ numRuns: 60 },
		);
	});

	it("a denser butt weighs more and balances farther back", () => {
		fc.assert(
			fc.property(
				anyRequest,
				fc.double({ min: 20, max: 300, noNaN: true }),
				(request, more) => {
					fc.pre(request.shaftWood !== request.buttWood);
					const at = (kgM3: number) =>
						weighCue(
							cue58({
								...request,
								densities: { [request.buttWood]: { kgM3, sd: 0 } },
							}),
						);
					const light = at(800);
					const dense = at(800 + more);
					expect(dense.massG.value).toBeGreaterThan(light.massG.value);
					expect(dense.balanceFromButtMm.value).toBeLessThan(
						light.balanceFromButtMm.value,
					);
				},
			),
			{ numRuns: 60 },
		);
	});

	it("a heavier end weight raises the inertia about a grip forward of it", () => {
		const design = cue58();
		const gripStationMm = design.lengthMm - 250;
		let last = 0;
		for (const slugMm of [0, 20, 60, 120]) {
			const loaded: CueDesign = {
				...design,
				addedWeight:
					slugMm === 0
						? []
						: [
								{
									fromStationMm: design.lengthMm - 15 - slugMm,
									toStationMm: design.lengthMm - 15,
									diameterMm: 12,
									metal: "brass",
								},
							],
			};
			const inertia = inertiaAboutStationKgM2(
				weighCue(loaded),
				gripStationMm,
			).value;
			expect(inertia).toBeGreaterThan(last);
			last = inertia;
		}
	});

	it("inertia about a station follows the parallel axes", () => {
		const mass = weighCue(cue58());
		for (const stationMm of [0, 700, 1400]) {
			const distance = (stationMm - mass.balanceStationMm.value) / 1000;
			expect(inertiaAboutStationKgM2(mass, stationMm).value).toBeCloseTo(
				mass.inertiaAboutBalanceKgM2.value +
					(mass.massG.value / 1000) * distance ** 2,
				12,
			);
		}
	});

	it("scales: mass with density, mass with size cubed, inertia with size to the fifth", () => {
		const design = cue58({ layout: "one-piece" });
		const factor = 1.3;
		const grown: CueDesign = {
			...design,
			lengthMm: design.lengthMm * factor,
			taper: design.taper.map((p) => ({
				stationMm: p.stationMm * factor,
				diameterMm: p.diameterMm * factor,
			})),
			tip: {
				heightMm: design.tip.heightMm * factor,
				domeRadiusMm: design.tip.domeRadiusMm * factor,
			},
			ferrule: {
				...design.ferrule,
				lengthMm: design.ferrule.lengthMm * factor,
				wallMm: design.ferrule.wallMm * factor,
			},
			splice: {
				...design.splice,
				cuts: design.splice.cuts.map((cut) => ({
					...cut,
					buttOffsetMm: cut.buttOffsetMm * factor,
				})),
			},
			buttEndRadiusMm: design.buttEndRadiusMm * factor,
		};
		const before = weighCue(design);
		const after = weighCue(grown);
		expect(after.massG.value / before.massG.value).toBeCloseTo(factor ** 3, 9);
		expect(
			after.balanceFromButtMm.value / before.balanceFromButtMm.value,
		).toBeCloseTo(factor, 9);
		expect(
			after.inertiaAboutBalanceKgM2.value /
				before.inertiaAboutBalanceKgM2.value,
		).toBeCloseTo(factor ** 5, 8);
		expect(
			after.inertiaAboutAxisKgM2.value / before.inertiaAboutAxisKgM2.value,
		).toBeCloseTo(factor ** 5, 8);
	});

	it("does not change when the cue is turned about its axis or mirrored", () => {
		const design = cue58(DECORATED);
		const turned = (change: (deg: number) => number): CueDesign => ({
			...design,
			splice: {
				...design.splice,
				cuts: design.splice.cuts.map((cut) => ({
					...cut,
					faceAngleDeg: change(cut.faceAngleDeg),
				})),
			},
		});
		const before = weighCue(design);
		for (const other of [turned((a) => a + 33), turned((a) => -a)]) {
			const after = weighCue(other);
			expect(after.massG.value).toBeCloseTo(before.massG.value, 7);
			expect(after.inertiaAboutBalanceKgM2.value).toBeCloseTo(
				before.inertiaAboutBalanceKgM2.value,
				12,
			);
		}
	});

	it("gives the same whatever was weighed before", () => {
		const first = weighCue(cue58());
		weighCue(cue58({ lengthMm: 1200, splice: "plain" }));
		expect(weighCue(cue58(SNOOKER_58))).toEqual(first);
	});
});
