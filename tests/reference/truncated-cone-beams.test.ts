import { describe, expect, it } from "vitest";
import { droopClampedAt } from "@/lib/mechanics/droop";
import { freeModes, heldModes } from "@/lib/mechanics/vibration";
import { asOmega, type RoundBar, roundProfile } from "../support/round-bars";

/**
 * Truncated cones, Ω = ωL²√(m′/EI) of the large end, β small over large diameter. The figures are an
 * exact solution in Bessel functions w = s⁻¹{J₂, Y₂, I₂, K₂}(2k√s), worked out for this project; no
 * printed table of the free cone was found. Static closed forms: Gere, Mechanics of Materials, from
 * memory for the end load; the rest derived by integration.
 */
const TABLE = [
	{
		beta: 0.8,
		clamped: [3.855116795, 21.05674543, 56.63034506],
		free: [20.17064819, 55.46506595, 108.6200902],
		still: [0.21575, 0.7666],
	},
	{
		beta: 0.5,
		clamped: [4.625150252, 19.54761318, 48.57889933],
		free: [17.07933375, 45.96298218, 89.21387634],
		still: [0.20078, 0.74482],
	},
	{
		beta: 0.4,
		clamped: [5.009033317, 19.06486084, 45.73836133],
		free: [16.1726004, 42.73833695, 82.35625393],
		still: [0.19488, 0.73364],
	},
] as const;

const cone = (beta: number, lengthMm = 1200): RoundBar => ({
	lengthMm,
	tipMm: 25 * beta,
	buttMm: 25,
	modulusGPa: 12.5,
	densityKgM3: 690,
});
const relative = (value: number, wanted: number): number =>
	Math.abs(value / wanted - 1);

// Largest residual seen, third frequency: 4e-5 with the ordinary mesh, 9e-7 with four times as many.
describe.each(
	TABLE.flatMap((row) => [
		{ ...row, fineness: 4, tolerance: 5e-5 },
		{ ...row, fineness: 16, tolerance: 2e-6 },
	]),
)(
	"cone of β $beta, fineness $fineness",
	({ beta, clamped, free, still, fineness, tolerance }) => {
		const bar = cone(beta);
		const profile = roundProfile(bar);

		it("clamped at the large end: three frequencies", () => {
			heldModes({
				profile,
				axis: "x",
				count: 3,
				gripStationMm: bar.lengthMm,
				hold: "clamped",
				fineness,
			}).forEach((mode, i) => {
				expect(
					relative(asOmega(bar, mode.frequencyHz), clamped[i] as number),
				).toBeLessThan(tolerance);
			});
		});

		it("free: three frequencies and the two still points", () => {
			const modes = freeModes({ profile, axis: "x", count: 3, fineness });
			expect(modes).toHaveLength(3);
			modes.forEach((mode, i) => {
				expect(
					relative(asOmega(bar, mode.frequencyHz), free[i] as number),
				).toBeLessThan(tolerance);
			});
			const fromLarge = (modes[0]?.nodesMm ?? [])
				.map((station) => 1 - station / bar.lengthMm)
				.sort((a, b) => a - b);
			// Given to five decimals, two of them one unit low in the last: a dense model of 200 elements
			// has 0.766611 and 0.733653 where 0.76660 and 0.73364 are given.
			for (const i of [0, 1] as const)
				expect(Math.abs((fromLarge[i] ?? 0) - still[i])).toBeLessThan(
					1.5e-5 + tolerance,
				);
		});
	},
);

describe("clamped cone, static", () => {
	it("1 kgf on 0.7 m of 9.5 to 20.5 mm at 12.5 GPa gives 22.326901 mm", () => {
		const bar = { ...cone(0.5, 700), tipMm: 9.5, buttMm: 20.5 };
		const { tipGiveMmPerN } = droopClampedAt({
			profile: roundProfile(bar),
			axis: "x",
			clampStationMm: 700,
			fineness: 8,
		});
		expect(relative(tipGiveMmPerN * 9.80665, 22.326901)).toBeLessThan(1e-5);
	});

	it("own weight: ρgL⁴(1 + 2β)/(6E R₀²)", () => {
		for (const beta of [0.3, 0.4, 0.5, 0.8, 1]) {
			const bar = cone(beta);
			const wanted =
				(1000 * 690 * 9.80665 * 1.2 ** 4 * (1 + 2 * beta)) /
				(6 * 12.5e9 * 0.0125 ** 2);
			const { tipDroopMm } = droopClampedAt({
				profile: roundProfile(bar),
				axis: "y",
				clampStationMm: 1200,
				fineness: 16,
			});
			expect(relative(tipDroopMm, wanted)).toBeLessThan(5e-6);
		}
	});

	it("end load: 64PL³/(3πE d₁d₀³) for the same cone cut shorter and shorter", () => {
		for (const lengthMm of [1200, 900, 500]) {
			const buttMm = 25;
			const tipMm = buttMm - (12.5 * lengthMm) / 1200;
			const closed =
				(64 * (lengthMm / 1000) ** 3) /
				(3 * Math.PI * 12.5e9 * (tipMm / 1000) * (buttMm / 1000) ** 3);
			const { tipGiveMmPerN } = droopClampedAt({
				profile: roundProfile({ ...cone(0.5), lengthMm, tipMm }),
				axis: "x",
				clampStationMm: lengthMm,
				fineness: 8,
			});
			expect(relative(tipGiveMmPerN, 1000 * closed)).toBeLessThan(1e-5);
		}
	});
});
