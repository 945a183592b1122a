import { describe, expect, it } from "vitest";
import { bendingModulusGPa } from "@/lib/cue/materials";
import { WOOD_IDS, WOODS, type WoodId } from "@/lib/reference/woods";

/**
 * U.S. Forest Products Laboratory, Wood Handbook, FPL-GTR-282 (2021), table 5-3 (specific gravity and
 * modulus at 12 %) and its units note (add 10 % for shear-free bending); FPL-GTR-190 (2010), table
 * 13-5 (coefficients of dimensional change).
 */
describe("Wood Handbook", () => {
	it.each([
		["white-ash", 0.6, 1.74],
		["sugar-maple", 0.63, 1.83],
		["black-walnut", 0.55, 1.68],
	] as const)("%s: G12 %f and %f Mpsi", (id, gravity, mpsi) => {
		const wood = WOODS[id];
		// Mass at 12 % over volume at 12 %: ρ = 1000·G12·1.12.
		expect(wood.density12KgM3.value).toBe(Math.round(1120 * gravity));
		expect(wood.modulusGPa?.value).toBeCloseTo(mpsi * 6.894757, 1);
		expect(wood.modulusLoading).toBe("centre");
		expect(bendingModulusGPa(id).value).toBeCloseTo(
			1.1 * (wood.modulusGPa?.value ?? 0),
			12,
		);
	});

	it("ash 13.2 GPa and maple 13.9 GPa free of shear", () => {
		expect(bendingModulusGPa("white-ash").value).toBeCloseTo(13.2, 10);
		expect(bendingModulusGPa("sugar-maple").value).toBeCloseTo(13.86, 10);
	});

	it.each(["white-ash", "sugar-maple", "black-walnut"] as const)(
		"%s: C = 1/(3000/S − 20) gives back the printed coefficients",
		(id) => {
			const wood = WOODS[id];
			const change = (shrinkPct: number) => 1 / (3000 / shrinkPct - 20);
			expect(change(wood.shrinkRadialPct)).toBeCloseTo(
				wood.changeRadialPerPct,
				5,
			);
			expect(change(wood.shrinkTangentialPct)).toBeCloseTo(
				wood.changeTangentialPerPct,
				5,
			);
		},
	);

	it.each(WOOD_IDS.filter((id) => WOODS[id].changeStanding !== "published"))(
		"%s: coefficients follow from its shrinkage",
		(id: WoodId) => {
			const wood = WOODS[id];
			for (const [shrinkPct, change] of [
				[wood.shrinkRadialPct, wood.changeRadialPerPct],
				[wood.shrinkTangentialPct, wood.changeTangentialPerPct],
			] as const)
				expect(Math.abs(1 / (3000 / shrinkPct - 20) - change)).toBeLessThan(
					6e-6,
				);
		},
	);
});

describe("every wood", () => {
	it.each(WOOD_IDS)(
		"%s: plausible figures with a spread and a source",
		(id) => {
			const wood = WOODS[id];
			expect(wood.id).toBe(id);
			expect(wood.density12KgM3.value).toBeGreaterThan(550);
			expect(wood.density12KgM3.value).toBeLessThan(1300);
			const cov = wood.density12KgM3.sd / wood.density12KgM3.value;
			expect(cov).toBeGreaterThan(0.03);
			expect(cov).toBeLessThanOrEqual(0.1000001);
			const modulus = bendingModulusGPa(id);
			expect(modulus.value).toBeGreaterThan(10);
			expect(modulus.value).toBeLessThan(25);
			expect(modulus.sd).toBeGreaterThan(0);
			expect(wood.shrinkTangentialPct).toBeGreaterThan(wood.shrinkRadialPct);
		},
	);

	it("lists no wood of CITES Appendix I, and Dalbergia only with its notice", () => {
		for (const id of WOOD_IDS) {
			expect(WOODS[id].latin).not.toContain("nigra, Dalbergia");
			expect(WOODS[id].latin).not.toBe("Dalbergia nigra");
			if (WOODS[id].latin.startsWith("Dalbergia"))
				expect(WOODS[id].protection?.appendix).toBe("II");
		}
	});
});
