import { describe, expect, it } from "vitest";
import { beamOf, cutShort, sidewaysShift } from "@/lib/mechanics/beam";
import type { BeamProfile } from "@/lib/mechanics/profile";
import { multiply, STRIDE } from "@/lib/numerics/banded";
import { integratePanel } from "@/lib/numerics/quadrature";

/** Mass and stiffness that run straight, so that the element matrices are exact. */
const straight: BeamProfile = {
	lengthMm: 300,
	breaksMm: [0, 40, 300],
	sectionAt: (stationMm) => ({
		massPerLengthKgM: 0.1 + 0.0004 * stationMm,
		stiffnessXNm2: 6 + 0.1 * stationMm,
		stiffnessYNm2: 5 + 0.12 * stationMm,
	}),
};

const cubics = (h: number) => [
	(s: number) => 1 - 3 * s ** 2 + 2 * s ** 3,
	(s: number) => h * (s - 2 * s ** 2 + s ** 3),
	(s: number) => 3 * s ** 2 - 2 * s ** 3,
	(s: number) => h * (s ** 3 - s ** 2),
];
const curvatures = (h: number) => [
	(s: number) => (12 * s - 6) / h ** 2,
	(s: number) => (6 * s - 4) / h,
	(s: number) => (6 - 12 * s) / h ** 2,
	(s: number) => (6 * s - 2) / h,
];

describe("assembled bar", () => {
	const beam = beamOf({ profile: straight, fineness: 0.5 });

	it("has an element end at every break", () => {
		const ends = Array.from(beam.stationsM.subarray(0, beam.nodes));
		expect(ends[0]).toBe(0);
		expect(ends).toContain(0.04);
		expect(ends.at(-1)).toBeCloseTo(0.3, 15);
	});

	it("the first element's matrices are the integrals of its shapes", () => {
		const h = beam.stationsM[1] as number;
		const n = cubics(h);
		const c = curvatures(h);
		// The first node belongs to the first element alone.
		for (let i = 0; i < 4; i++)
			for (let j = 0; j <= Math.min(i, 1); j++) {
				const integral = (f: (s: number) => number): number =>
					integratePanel({ integrand: f, from: 0, to: 1, count: 8 }) * h;
				const at = i * STRIDE + i - j;
				const section = (s: number) => straight.sectionAt(1000 * h * s);
				const mass = integral(
					(s) =>
						section(s).massPerLengthKgM *
						(n[i]?.(s) as number) *
						(n[j]?.(s) as number),
				);
				expect((beam.mass.values[at] as number) / mass).toBeCloseTo(1, 10);
				const stiffness = integral(
					(s) =>
						section(s).stiffnessXNm2 *
						(c[i]?.(s) as number) *
						(c[j]?.(s) as number),
				);
				expect((beam.stiffness.x.values[at] as number) / stiffness).toBeCloseTo(
					1,
					10,
				);
			}
	});

	it("moves of the whole bar meet no stiffness and weigh what the bar weighs", () => {
		const shift = sidewaysShift(beam);
		const out = new Float64Array(beam.mass.size);
		for (const axis of ["x", "y"] as const) {
			multiply(beam.stiffness[axis], shift, out);
			for (const force of out) expect(Math.abs(force)).toBeLessThan(1e-6);
		}
		multiply(beam.mass, shift, out);
		let massKg = 0;
		for (let i = 0; i < out.length; i += 2) massKg += out[i] as number;
		expect(massKg).toBeCloseTo(0.3 * (0.1 + 0.0004 * 150), 12);
	});

	it("keeps the two planes apart, and shares one where they are alike", () => {
		expect(beam.isSymmetric).toBe(false);
		expect(beam.stiffness.y.values[0]).not.toBe(beam.stiffness.x.values[0]);
		const round = beamOf({
			fineness: 1,
			profile: {
				...straight,
				sectionAt: (z) => {
					const section = straight.sectionAt(z);
					return { ...section, stiffnessYNm2: section.stiffnessXNm2 };
				},
			},
		});
		expect(round.isSymmetric).toBe(true);
		expect(round.stiffness.y).toBe(round.stiffness.x);
	});

	it("cut short is the bar assembled short", () => {
		const fine = beamOf({ profile: straight, fineness: 2 });
		const nodes = 4;
		const lengthMm = 1000 * (fine.stationsM[nodes - 1] as number);
		const buffers = {
			mass: new Float64Array(200),
			stiffness: new Float64Array(200),
		};
		const short = cutShort({ beam: fine, axis: "y", nodes, into: buffers });
		const direct = beamOf({
			fineness: 0.5,
			profile: {
				...straight,
				lengthMm,
				breaksMm: Array.from(
					fine.stationsM.subarray(0, nodes),
					(station) => 1000 * station,
				),
			},
		});
		expect(direct.nodes).toBe(nodes);
		for (let i = 0; i < 2 * nodes; i++)
			for (let k = 0; k <= Math.min(3, i); k++) {
				const at = i * STRIDE + k;
				expect(short.mass.values[at]).toBeCloseTo(
					direct.mass.values[at] as number,
					12,
				);
				const wanted = direct.stiffness.y.values[at] as number;
				expect(
					Math.abs((short.stiffness.values[at] as number) - wanted),
				).toBeLessThan(1e-9 * Math.max(1, Math.abs(wanted)));
			}
	});
});
