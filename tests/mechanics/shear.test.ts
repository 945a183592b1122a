import { describe, expect, it } from "vitest";
import { diameterAtMm } from "@/lib/cue/taper";
import { beamProfileOf } from "@/lib/mechanics/profile";
import { cue } from "../support/designs";
import {
	type DenseBeam,
	denseBeam,
	denseEndMassG,
	denseFrequenciesHz,
	denseModes,
	type Thickness,
} from "../support/reference-beam";
import { diameterOf, type RoundBar, roundProfile } from "../support/round-bars";

/**
 * Ash: E/G along the grain 9.2–13 (elastic ratios G_LR 0.109, G_LT 0.077 of E, Wood Handbook table 5-1);
 * shear coefficient of a round section 0.925 (Hutchinson 2001, isotropic, ν 0.3). 11/0.925 ≈ 12.
 */
const ASH_SHEAR_RATIO = 12;

const first = (beam: DenseBeam): number =>
	denseFrequenciesHz({ beam, rigid: 2, count: 1 })[0] ?? 0;

describe("the thick-bar element of the tests", () => {
	const bar: RoundBar = {
		lengthMm: 500,
		tipMm: 60,
		buttMm: 60,
		modulusGPa: 10,
		densityKgM3: 700,
	};
	const thickness: Thickness = {
		diameterMm: (z) => diameterOf(bar, z),
		shearRatio: ASH_SHEAR_RATIO,
		rotary: true,
	};

	it("is free to move and turn as a whole", () => {
		const { squares } = denseModes(
			denseBeam({ bar: roundProfile(bar), thickness, elements: 20 }),
		);
		expect(Math.abs(squares[0] ?? 1)).toBeLessThan(1e-5 * (squares[2] ?? 0));
		expect(Math.abs(squares[1] ?? 1)).toBeLessThan(1e-5 * (squares[2] ?? 0));
	});

	it("pinned at both ends it has the closed-form frequency of a thick bar", () => {
		// Simply supported Timoshenko bar: (ρr²/κG)ω⁴ − [EI/m′·… ] reduces, with a = r²(π/L)², s = E/κG, to
		// a s Ω⁴ − (1 + a + a s)Ω² + 1 = 0 in units of the thin bar's ω² (Timoshenko, from memory).
		const beam = denseBeam({ bar: roundProfile(bar), thickness, elements: 40 });
		const last = beam.mass.rows - 2;
		const hz = denseFrequenciesHz({
			beam,
			rigid: 0,
			count: 1,
			held: [0, last],
		})[0] as number;
		const gyration = 0.015;
		const a = (gyration * Math.PI) ** 2 / 0.25;
		const s = ASH_SHEAR_RATIO;
		const b = 1 + a + a * s;
		const square = (b - Math.sqrt(b * b - 4 * a * a * s)) / (2 * a * a * s);
		const thin =
			((Math.PI / 0.5) ** 2 * gyration * Math.sqrt(10e9 / 700)) / (2 * Math.PI);
		expect(hz / (thin * Math.sqrt(square))).toBeCloseTo(1, 4);
	});
});

describe("what leaving out shear and rotary inertia costs a cue", () => {
	const cost = (lengthMm: number, tipDiameterMm: number) => {
		const design = cue({ lengthMm, tipDiameterMm });
		const bar = beamProfileOf(design);
		const thin = denseBeam({ bar });
		const thick = denseBeam({
			bar,
			thickness: {
				diameterMm: (z) => diameterAtMm(design, z),
				shearRatio: ASH_SHEAR_RATIO,
				rotary: true,
			},
		});
		return {
			frequency: first(thick) / first(thin) - 1,
			endMass: denseEndMassG(thick, 1.2) / denseEndMassG(thin, 1.2) - 1,
		};
	};

	// Seen: −0.065 % and −0.08 %.
	it("a full-length cue: under 0.1 % on the first frequency and on the end mass", () => {
		const { frequency, endMass } = cost(1460, 9.5);
		expect(frequency).toBeLessThan(0);
		expect(Math.abs(frequency)).toBeLessThan(1e-3);
		expect(Math.abs(endMass)).toBeLessThan(1e-3);
	});

	// Seen: −0.27 % and −0.1 %.
	it("the shortest cue built: under 0.4 % and 0.3 %", () => {
		const { frequency, endMass } = cost(700, 8);
		expect(Math.abs(frequency)).toBeLessThan(4e-3);
		expect(Math.abs(endMass)).toBeLessThan(3e-3);
	});
});
