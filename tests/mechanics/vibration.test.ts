import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { beamOf } from "@/lib/mechanics/beam";
import { beamProfileOf } from "@/lib/mechanics/profile";
import {
	firstFreeFrequencyHz,
	freeModes,
	heldModes,
} from "@/lib/mechanics/vibration";
import { cue } from "../support/designs";
import { denseBeam, denseFrequenciesHz } from "../support/reference-beam";
import { type RoundBar, roundProfile } from "../support/round-bars";

const bar = fc.record({
	lengthMm: fc.double({ min: 800, max: 1600, noNaN: true }),
	tipMm: fc.double({ min: 8, max: 14, noNaN: true }),
	buttMm: fc.double({ min: 22, max: 32, noNaN: true }),
	modulusGPa: fc.double({ min: 8, max: 25, noNaN: true }),
	densityKgM3: fc.double({ min: 500, max: 1300, noNaN: true }),
});
const first = (p: RoundBar): number =>
	firstFreeFrequencyHz(beamOf({ profile: roundProfile(p), fineness: 1 }), "x");

describe("scaling of the first free frequency", () => {
	it("goes as √E, 1/√ρ and thickness", () => {
		fc.assert(
			fc.property(bar, (p) => {
				const base = first(p);
				expect(
					first({ ...p, modulusGPa: 4 * p.modulusGPa }) / base,
				).toBeCloseTo(2, 9);
				expect(
					first({ ...p, densityKgM3: 4 * p.densityKgM3 }) / base,
				).toBeCloseTo(0.5, 9);
				expect(
					first({ ...p, tipMm: 2 * p.tipMm, buttMm: 2 * p.buttMm }) / base,
				).toBeCloseTo(2, 9);
			}),
			{ numRuns: 40 },
		);
	});

	it("goes as 1/L², within the mesh's own change", () => {
		fc.assert(
			fc.property(bar, (p) => {
				expect(
					(4 * first({ ...p, lengthMm: 2 * p.lengthMm })) / first(p),
				).toBeCloseTo(1, 3);
			}),
			{ numRuns: 40 },
		);
	});

	it("reads the same from either end", () => {
		fc.assert(
			fc.property(bar, (p) => {
				expect(
					first({ ...p, tipMm: p.buttMm, buttMm: p.tipMm }) / first(p),
				).toBeCloseTo(1, 3);
			}),
			{ numRuns: 40 },
		);
	});
});

describe("a cue's frequencies", () => {
	const design = cue();
	const profile = beamProfileOf(design);

	it("the first three agree with the dense reference to 0.1 %", () => {
		const wanted = denseFrequenciesHz({
			beam: denseBeam({ bar: profile }),
			rigid: 2,
			count: 3,
		});
		freeModes({ profile, axis: "x", count: 3 }).forEach((mode, i) => {
			expect(mode.frequencyHz / (wanted[i] as number)).toBeCloseTo(1, 3);
		});
	});

	it("the quick first frequency is the first of the list", () => {
		const [mode] = freeModes({ profile, axis: "x", count: 1 });
		expect(
			firstFreeFrequencyHz(beamOf({ profile, fineness: 4 }), "x") /
				(mode?.frequencyHz ?? 0),
		).toBeCloseTo(1, 5);
	});

	it("one more still point each mode", () => {
		const still = freeModes({ profile, axis: "y", count: 3 }).map(
			(mode) => mode.nodesMm.length,
		);
		expect(still).toEqual([2, 3, 4]);
	});

	it.each(["pinned", "clamped"] as const)(
		"%s at the grip agrees with the dense reference to 0.1 %",
		(hold) => {
			const gripStationMm = 1330;
			const beam = denseBeam({ bar: profile, endsMm: [gripStationMm] });
			const node = beam.nodesMm.indexOf(gripStationMm);
			const wanted = denseFrequenciesHz({
				beam,
				rigid: hold === "pinned" ? 1 : 0,
				count: 2,
				held: hold === "pinned" ? [2 * node] : [2 * node, 2 * node + 1],
			});
			heldModes({ profile, axis: "x", count: 2, gripStationMm, hold }).forEach(
				(mode, i) => {
					expect(mode.frequencyHz / (wanted[i] as number)).toBeCloseTo(1, 3);
				},
			);
		},
	);

	it("pinned where the free cue stands still changes nothing; a clamp always lowers the first", () => {
		const [free] = freeModes({ profile, axis: "x", count: 1 });
		const still = free?.nodesMm[1] ?? 0;
		const [pinned] = heldModes({
			profile,
			axis: "x",
			count: 1,
			gripStationMm: still,
			hold: "pinned",
		});
		expect((pinned?.frequencyHz ?? 0) / (free?.frequencyHz ?? 1)).toBeCloseTo(
			1,
			4,
		);
		const [clamped] = heldModes({
			profile,
			axis: "x",
			count: 1,
			gripStationMm: 1330,
			hold: "clamped",
		});
		expect(clamped?.frequencyHz ?? 99).toBeLessThan(free?.frequencyHz ?? 0);
	});

	it("weight at the butt end lowers the free frequency", () => {
		const weighted = beamProfileOf({
			...design,
			addedWeight: [
				{
					fromStationMm: 1340,
					toStationMm: 1420,
					diameterMm: 12,
					metal: "brass",
				},
			],
		});
		expect(
			firstFreeFrequencyHz(beamOf({ profile: weighted, fineness: 2 }), "x"),
		).toBeLessThan(firstFreeFrequencyHz(beamOf({ profile, fineness: 2 }), "x"));
	});

	it("throws for a grip off the cue", () => {
		expect(() =>
			heldModes({
				profile,
				axis: "x",
				count: 1,
				gripStationMm: 2000,
				hold: "pinned",
			}),
		).toThrow(/2000 mm is off the bar/);
	});
});
