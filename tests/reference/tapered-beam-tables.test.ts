import { describe, expect, it } from "vitest";
import { freeModes, heldModes } from "@/lib/mechanics/vibration";
import { asOmega, roundProfile } from "../support/round-bars";

const relative = (value: number, wanted: number): number =>
	Math.abs(value / wanted - 1);

/**
 * Table 1 of Int. J. Mech. Mater. Eng. 2015, doi 10.1186/s40712-015-0040-0: clamped bars of breadth and
 * depth falling by the same share τ to the tip, first and second Ω. Equal straight tapers of breadth and
 * depth have the equation of a cone with β = 1 − τ. The table's entry for no taper, 3.15601, is a slip
 * of digits for 3.51602, which its own reference line prints.
 */
describe("double-taper table, clamped at the large end", () => {
	it.each([
		{ taper: 0, first: 3.51602, second: null },
		{ taper: 0.2, first: 3.85512, second: 21.0567 },
		{ taper: 0.4, first: 4.31878, second: 20.05 },
		{ taper: 0.6, first: 5.00903, second: 19.0649 },
		{ taper: 0.8, first: 6.19639, second: 18.3855 },
	])(
		"taper $taper: $first, $second (within 2e-5 of the printed digits)",
		({ taper, first, second }) => {
			const bar = {
				lengthMm: 1000,
				tipMm: 30 * (1 - taper),
				buttMm: 30,
				modulusGPa: 12,
				densityKgM3: 680,
			};
			const modes = heldModes({
				profile: roundProfile(bar),
				axis: "x",
				count: 2,
				gripStationMm: 1000,
				hold: "clamped",
				fineness: 16,
			}).map((mode) => asOmega(bar, mode.frequencyHz));
			expect(relative(modes[0] ?? 0, first)).toBeLessThan(2e-5);
			if (second !== null)
				expect(relative(modes[1] ?? 0, second)).toBeLessThan(2e-5);
		},
	);
});

/**
 * Validation case SDLL09 of a public finite-element code (V2.02.009), after Mabie & Rogers 1972:
 * clamped-free bar whose breadth and depth grow fourfold, f = λ h₁/(2πL²)·√(E/12ρ) with h₁ the depth at
 * the small end. Its λ are 0.014–0.034 % below the exact solution of the cone's equation.
 */
describe("fourfold taper of breadth and depth, clamped at the large end", () => {
	const bar = {
		lengthMm: 1000,
		tipMm: 10,
		buttMm: 40,
		modulusGPa: 12,
		densityKgM3: 680,
	};
	// λ is Ω of the small end: Ω(large end)·(d_large/d_small).
	const lambdas = heldModes({
		profile: roundProfile(bar),
		axis: "y",
		count: 5,
		gripStationMm: 1000,
		hold: "clamped",
		fineness: 16,
	}).map((mode) => 4 * asOmega(bar, mode.frequencyHz));

	it.each([
		[0, 23.289],
		[1, 73.9],
		[2, 165.23],
		[3, 299.7],
		[4, 478.1],
	])("mode %d: %f within 0.05 %", (mode, lambda) => {
		expect(relative(lambdas[mode] ?? 0, lambda)).toBeLessThan(5e-4);
	});

	it("the exact first three, 23.29226, 73.91882, 165.28537, to 5e-6", () => {
		[23.29226, 73.91882, 165.28537].forEach((lambda, i) => {
			expect(relative(lambdas[i] ?? 0, lambda)).toBeLessThan(5e-6);
		});
	});
});

describe("complete cone", () => {
	it("clamped at its base: 8.719258855, 21.14566239, 38.45377123 in the limit of a vanishing tip", () => {
		const bar = {
			lengthMm: 1000,
			tipMm: 0.006,
			buttMm: 30,
			modulusGPa: 12,
			densityKgM3: 680,
		};
		const modes = heldModes({
			profile: roundProfile(bar),
			axis: "x",
			count: 3,
			gripStationMm: 1000,
			hold: "clamped",
			fineness: 64,
		}).map((mode) => asOmega(bar, mode.frequencyHz));
		[8.719258855, 21.14566239, 38.45377123].forEach((wanted, i) => {
			expect(relative(modes[i] ?? 0, wanted)).toBeLessThan(5e-4);
		});
	});

	it("a free cue-like cone lies between its β neighbours", () => {
		const omega = (tipMm: number): number => {
			const bar = {
				lengthMm: 1450,
				tipMm,
				buttMm: 29,
				modulusGPa: 13,
				densityKgM3: 672,
			};
			const [mode] = freeModes({
				profile: roundProfile(bar),
				axis: "x",
				count: 1,
			});
			return asOmega(bar, mode?.frequencyHz ?? 0);
		};
		// β 0.4 and 0.5 of the exact solution: 16.1726 and 17.0793.
		expect(omega(0.45 * 29)).toBeGreaterThan(16.1726);
		expect(omega(0.45 * 29)).toBeLessThan(17.0793);
	});
});
