import { describe, expect, it } from "vitest";
import { weighCue } from "@/lib/cue/mass";
import { settledAt, yearSwing } from "@/lib/cue/moisture";
import { must } from "@/lib/numerics/outcome";
import { PLACES } from "@/lib/reference/climate";
import { cue58 } from "../support/designs";

const still = (value: number) => ({
	value,
	sd: 0,
	standing: "measured" as const,
	sources: [],
});

describe("settledAt", () => {
	it("changes nothing at 12 %", () => {
		const design = cue58();
		const mass = weighCue(design);
		const settled = settledAt(design, mass, still(12));
		expect(settled.massG.value).toBeCloseTo(mass.massG.value, 10);
		expect(settled.massG.sd).toBeCloseTo(mass.massG.sd, 10);
		expect(settled.balanceFromButtMm.value).toBeCloseTo(
			mass.balanceFromButtMm.value,
			9,
		);
	});

	it("makes the wood 3.7 % heavier from 8 to 12 %, the metal no heavier", () => {
		const design = cue58();
		const mass = weighCue(design);
		const at = (moisturePct: number) =>
			settledAt(design, mass, still(moisturePct)).massG.value;
		const notWoodG = mass.parts
			.filter((part) => ["tip", "ferrule", "joint"].includes(part.part))
			.reduce((sum, part) => sum + part.massG.value, 0);
		expect((at(12) - notWoodG) / (at(8) - notWoodG)).toBeCloseTo(
			1.12 / 1.08,
			10,
		);
	});

	it("widens with the spread of the moisture", () => {
		const design = cue58({
			densities: {
				"white-ash": { kgM3: 672, sd: 0 },
				"gaboon-ebony": { kgM3: 955, sd: 0 },
			},
		});
		const mass = weighCue(design);
		const { massG } = settledAt(design, mass, { ...still(12), sd: 1 });
		const woodG = mass.parts
			.filter((part) => !["tip", "ferrule", "joint"].includes(part.part))
			.reduce((sum, part) => sum + part.massG.value, 0);
		expect(massG.sd).toBeCloseTo(Math.hypot(woodG / 112, mass.massG.sd), 6);
	});
});

describe("yearSwing", () => {
	const seasons = [
		{
			name: "heated winter room",
			air: { temperatureC: 21, relativeHumidityPct: 35 },
		},
		{
			name: "damp summer room",
			air: { temperatureC: 21, relativeHumidityPct: 65 },
		},
	];

	it("shows some 3 % of the weight and tenths of a millimetre between 35 and 65 %", () => {
		const design = cue58();
		const swing = must(yearSwing(design, seasons));
		const [dry, damp] = swing.seasons;
		if (!dry || !damp) throw new Error("two seasons expected");
		expect(dry.massG.value).toBeLessThan(damp.massG.value);
		const share = swing.massSwingG / damp.massG.value;
		expect(share).toBeGreaterThan(0.02);
		expect(share).toBeLessThan(0.06);
		// D·C·ΔM with ebony's coefficients from the table.
		const change = damp.moisturePct.value - dry.moisturePct.value;
		expect(damp.buttTangentialMm - dry.buttTangentialMm).toBeCloseTo(
			29 * 0.00403 * change,
			9,
		);
		expect(damp.buttRadialMm - dry.buttRadialMm).toBeCloseTo(
			29 * 0.00293 * change,
			9,
		);
		expect(swing.buttSwingMm).toBeCloseTo(29 * 0.00403 * change, 9);
	});

	it.each(Object.values(PLACES))(
		"gets heavier and thicker in the damp half: $name",
		({ seasons: halves }) => {
			const [dry, damp] = must(yearSwing(cue58(), halves)).seasons;
			if (!dry || !damp) throw new Error("two halves expected");
			expect(damp.moisturePct.value).toBeGreaterThan(dry.moisturePct.value);
			expect(damp.massG.value).toBeGreaterThan(dry.massG.value);
			expect(damp.buttTangentialMm).toBeGreaterThan(dry.buttTangentialMm);
		},
	);

	it("warns where a place leaves the range the coefficients hold in", () => {
		const swing = must(
			yearSwing(cue58(), [
				{
					name: "desert",
					air: { temperatureC: 30, relativeHumidityPct: 12 },
				},
			]),
		);
		expect(swing.cautions[0]?.code).toBe("moisture-outside-change-range");
	});

	it("refuses air outside the equation with the season's place in the field", () => {
		const outcome = yearSwing(cue58(), [
			...seasons,
			{ name: "sauna", air: { temperatureC: 80, relativeHumidityPct: 20 } },
		]);
		expect(outcome.ok).toBe(false);
		if (outcome.ok) return;
		expect(outcome.refusals[0]).toEqual({
			code: "out-of-range",
			field: "seasons.2.air.temperatureC",
			value: 80,
			min: -5,
			max: 60,
		});
		expect(yearSwing(cue58(), []).ok).toBe(false);
	});
});
