import { describe, expect, it } from "vitest";
import type { CueDesign } from "@/lib/cue/design";
import { weighCue } from "@/lib/cue/mass";
import { inchesToMm } from "@/lib/units/quantity";
import { bareRound } from "../support/designs";

/**
 * Solid cone and frustum: R. Shepard, Amateur Physics for the Amateur Pool Player, 3rd ed. 1997,
 * rigid-cue problem; β = small/large radius, lengths in m, mass in kg.
 *   mass ⅓πρLR²(1+β+β²), balance from the large end L(1+2β+3β²)/[4(1+β+β²)],
 *   inertia about the balance point ML²·3[(1+β)⁴+4β²]/[80(1+β+β²)²] + MR²·3(1+β+β²+β³+β⁴)/[20(1+β+β²)].
 * About the long axis: 3/10·MR²(1−β⁵)/(1−β³), textbook.
 * Residual seen: below 1e-13 relative.
 */
const RHO = 700;

const frustum = (p: {
	lengthMm: number;
	smallMm: number;
	largeMm: number;
}): CueDesign =>
	bareRound({
		lengthMm: p.lengthMm,
		taper: [
			{ stationMm: 0, diameterMm: p.smallMm },
			{ stationMm: p.lengthMm, diameterMm: p.largeMm },
		],
		densityKgM3: RHO,
	});

describe("solid frustum", () => {
	it.each([
		{ lengthMm: 1473, smallMm: 11.6, largeMm: 29 },
		{ lengthMm: 1473, smallMm: 29, largeMm: 29 },
		{ lengthMm: 900, smallMm: 7, largeMm: 34 },
	])(
		"weighs, balances and turns as the closed form, $smallMm to $largeMm mm",
		(size) => {
			const mass = weighCue(frustum(size));
			const L = size.lengthMm / 1000;
			const R = size.largeMm / 2000;
			const b = size.smallMm / size.largeMm;
			const sum2 = 1 + b + b * b;
			const M = (Math.PI / 3) * RHO * L * R * R * sum2;
			const balance = (L * (1 + 2 * b + 3 * b * b)) / (4 * sum2);
			const across =
				(M * L * L * 3 * ((1 + b) ** 4 + 4 * b * b)) / (80 * sum2 * sum2) +
				(M * R * R * 3 * (sum2 + b ** 3 + b ** 4)) / (20 * sum2);
			const along =
				(3 / 10) * M * R * R * ((1 + b + b * b + b ** 3 + b ** 4) / sum2);
			expect(mass.massG.value / 1000 / M).toBeCloseTo(1, 12);
			expect(mass.balanceFromButtMm.value / 1000 / balance).toBeCloseTo(1, 12);
			expect(mass.inertiaAboutBalanceKgM2.value / across).toBeCloseTo(1, 11);
			expect(mass.inertiaAboutAxisKgM2.value / along).toBeCloseTo(1, 12);
		},
	);

	it("balances at 21.19 in of 58 for β = 0.4, and its k²/L² is 0.06905819, both printed", () => {
		const lengthMm = inchesToMm(58);
		// A slim cone: the printed k² leaves the thickness out.
		const mass = weighCue(frustum({ lengthMm, smallMm: 0.4, largeMm: 1 }));
		expect(mass.balanceFromButtMm.value / lengthMm).toBeCloseTo(0.36538462, 8);
		expect(mass.balanceFromButtMm.value / 25.4).toBeCloseTo(21.19, 2);
		const k2 =
			mass.inertiaAboutBalanceKgM2.value /
			(mass.massG.value / 1000) /
			(lengthMm / 1000) ** 2;
		expect(k2).toBeCloseTo(0.06905819, 6);
	});
});

describe("cylinder with a metal plug in it", () => {
	it("adds the plug and takes out the wood it replaces", () => {
		const lengthMm = 1000;
		const rod = bareRound({
			lengthMm,
			taper: [
				{ stationMm: 0, diameterMm: 20 },
				{ stationMm: lengthMm, diameterMm: 20 },
			],
			densityKgM3: RHO,
		});
		const loaded: CueDesign = {
			...rod,
			addedWeight: [
				{
					fromStationMm: 800,
					toStationMm: 900,
					diameterMm: 10,
					metal: "brass",
				},
			],
		};
		const wood = Math.PI * 0.01 ** 2 * RHO;
		const extra = Math.PI * 0.005 ** 2 * 0.1 * (8470 - RHO);
		const mass = weighCue(loaded);
		expect(mass.massG.value).toBeCloseTo(1000 * (wood + extra), 9);
		expect(mass.balanceStationMm.value).toBeCloseTo(
			(wood * 500 + extra * 850) / (wood + extra),
			9,
		);
	});
});
