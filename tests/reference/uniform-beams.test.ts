import { describe, expect, it } from "vitest";
import { droopClampedAt } from "@/lib/mechanics/droop";
import { freeModes, heldModes } from "@/lib/mechanics/vibration";
import { rootBetween } from "@/lib/numerics/roots";
import { denseBeam, denseFrequenciesHz } from "../support/reference-beam";
import { asOmega, type RoundBar, roundProfile } from "../support/round-bars";

/** Thomson, Theory of Vibration, appendix D, prints four decimals; further digits are the roots' own. */
const FREE = [4.730040744862704, 7.853204624095838, 10.99560783800167];
const CLAMPED = [1.875104068711961, 4.694091132974175, 7.854757438237613];
const PINNED_FREE = 3.926602312047919;

const bar: RoundBar = {
	lengthMm: 1000,
	tipMm: 20,
	buttMm: 20,
	modulusGPa: 13,
	densityKgM3: 700,
};
const profile = roundProfile(bar);
const relative = (value: number, wanted: number): number =>
	Math.abs(value / wanted - 1);

describe("roots of the uniform bar's frequency equations", () => {
	const root = (f: (x: number) => number, near: number): number => {
		const found = rootBetween({
			f,
			from: near - 0.2,
			to: near + 0.2,
			tolerance: 1e-14,
		});
		if (!found.converged) throw new Error(found.reason);
		return found.root;
	};

	it("free at both ends, cos x cosh x = 1", () => {
		for (const printed of FREE)
			expect(
				Math.abs(
					root((x) => Math.cos(x) - 1 / Math.cosh(x), printed) - printed,
				),
			).toBeLessThan(1e-9);
	});

	it("clamped and free, cos x cosh x = −1", () => {
		for (const printed of CLAMPED)
			expect(
				Math.abs(
					root((x) => Math.cos(x) + 1 / Math.cosh(x), printed) - printed,
				),
			).toBeLessThan(1e-9);
	});

	it("pinned and free, tan x = tanh x", () => {
		expect(
			Math.abs(
				root((x) => Math.sin(x) - Math.cos(x) * Math.tanh(x), PINNED_FREE) -
					PINNED_FREE,
			),
		).toBeLessThan(1e-9);
	});
});

// Largest residual seen, third frequency: 1.5e-5 with the ordinary mesh, 6e-8 with four times as many.
describe("the bar in elements against those roots", () => {
	const MESHES = [
		{ fineness: 4, tolerance: 2e-5 },
		{ fineness: 16, tolerance: 1e-7 },
	];

	it.each(MESHES)(
		"free at both ends, fineness $fineness: three frequencies to $tolerance",
		({ fineness, tolerance }) => {
			const modes = freeModes({ profile, axis: "x", count: 3, fineness });
			expect(modes).toHaveLength(3);
			modes.forEach((mode, i) => {
				const wanted = (FREE[i] as number) ** 2;
				expect(relative(asOmega(bar, mode.frequencyHz), wanted)).toBeLessThan(
					tolerance,
				);
			});
		},
	);

	it("its first shape stands still at 0.224157523 and 0.775842477 of the length", () => {
		const nodes = freeModes({ profile, axis: "y", count: 1 })[0]?.nodesMm ?? [];
		expect(nodes).toHaveLength(2);
		expect((nodes[0] as number) / 1000).toBeCloseTo(0.224157523, 6);
		expect((nodes[1] as number) / 1000).toBeCloseTo(0.775842477, 6);
	});

	it.each(MESHES)(
		"clamped at the butt, fineness $fineness: three frequencies to $tolerance",
		({ fineness, tolerance }) => {
			heldModes({
				profile,
				axis: "x",
				count: 3,
				gripStationMm: 1000,
				hold: "clamped",
				fineness,
			}).forEach((mode, i) => {
				const wanted = (CLAMPED[i] as number) ** 2;
				expect(relative(asOmega(bar, mode.frequencyHz), wanted)).toBeLessThan(
					tolerance,
				);
			});
		},
	);

	it("pinned at the butt: the first way of bending to 1e-6", () => {
		const [mode] = heldModes({
			profile,
			axis: "x",
			count: 1,
			gripStationMm: 1000,
			hold: "pinned",
		});
		expect(
			relative(asOmega(bar, mode?.frequencyHz ?? 0), PINNED_FREE ** 2),
		).toBeLessThan(1e-6);
	});

	it("static: droop wL⁴/8EI and give L³/3EI to 1e-9", () => {
		const stiffness = 13e9 * (Math.PI / 4) * 0.01 ** 4;
		const weight = 700 * Math.PI * 0.01 ** 2 * 9.80665;
		const droop = droopClampedAt({ profile, axis: "x", clampStationMm: 1000 });
		expect(
			relative(droop.tipDroopMm, (1000 * weight) / (8 * stiffness)),
		).toBeLessThan(1e-9);
		expect(relative(droop.tipGiveMmPerN, 1000 / (3 * stiffness))).toBeLessThan(
			1e-9,
		);
	});

	it("the dense reference of the tests, general-purpose eigenvalues, to 1e-5", () => {
		const beam = denseBeam({ bar: profile });
		denseFrequenciesHz({ beam, rigid: 2, count: 3 }).forEach(
			(frequencyHz, i) => {
				expect(
					relative(asOmega(bar, frequencyHz), (FREE[i] as number) ** 2),
				).toBeLessThan(1e-5);
			},
		);
	});
});
