import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	endMassFromSquirtG,
	pivotLengthMm,
	squirtDeg,
} from "@/lib/shot/deflection";

const hit = fc.record({
	offsetRatio: fc.double({ min: 0.02, max: 0.6, noNaN: true }),
	ballMassG: fc.double({ min: 80, max: 230, noNaN: true }),
	endMassG: fc.double({ min: 1, max: 30, noNaN: true }),
});

describe("cue-ball deflection", () => {
	it("mirrors with the side of the hit", () => {
		fc.assert(
			fc.property(hit, (p) => {
				expect(squirtDeg({ ...p, offsetRatio: -p.offsetRatio })).toBe(
					-squirtDeg(p),
				);
			}),
		);
	});

	it("grows with end mass and with offset up to the miscue limit", () => {
		fc.assert(
			fc.property(hit, (p) => {
				expect(squirtDeg({ ...p, endMassG: p.endMassG * 1.1 })).toBeGreaterThan(
					squirtDeg(p),
				);
				const further = p.offsetRatio + 0.01;
				expect(squirtDeg({ ...p, offsetRatio: further })).toBeGreaterThan(
					squirtDeg(p),
				);
			}),
		);
	});

	it("depends on the masses through their ratio alone", () => {
		fc.assert(
			fc.property(hit, (p) => {
				expect(
					squirtDeg({
						...p,
						ballMassG: 3 * p.ballMassG,
						endMassG: 3 * p.endMassG,
					}),
				).toBeCloseTo(squirtDeg(p), 12);
			}),
		);
	});

	it("gives the end mass back", () => {
		fc.assert(
			fc.property(hit, (p) => {
				const back = endMassFromSquirtG({ ...p, squirtDeg: squirtDeg(p) });
				expect((back ?? 0) / p.endMassG).toBeCloseTo(1, 9);
			}),
		);
	});

	it("has no end mass for an angle beyond the rigid limit", () => {
		expect(
			endMassFromSquirtG({ offsetRatio: 0.5, ballMassG: 142, squirtDeg: 30 }),
		).toBeNull();
		expect(
			endMassFromSquirtG({ offsetRatio: 0.5, ballMassG: 142, squirtDeg: 0 }),
		).toBe(0);
	});

	it("satisfies its own momentum balance", () => {
		// Impulse along the cue J, across it S: ball centre (J, −S)/m, end mass S/m_e, tip and ball
		// surface moving sideways together at the end of contact.
		fc.assert(
			fc.property(hit, (p) => {
				const tangent = Math.tan((squirtDeg(p) * Math.PI) / 180);
				const x = p.offsetRatio;
				const c = Math.sqrt(1 - x * x);
				const along = p.ballMassG;
				const across = tangent * p.ballMassG;
				const spin = (2.5 / p.ballMassG) * (along * x - across * c);
				const surfaceAcross = spin * c - across / p.ballMassG;
				expect(across / p.endMassG).toBeCloseTo(surfaceAcross, 9);
			}),
		);
	});

	it("a pivot is not defined without offset", () => {
		expect(() =>
			pivotLengthMm({
				offsetRatio: 0,
				squirtDeg: 0,
				ballDiameterMm: 52.5,
				domeRadiusMm: 9,
			}),
		).toThrow(/offsetRatio/);
	});
});
