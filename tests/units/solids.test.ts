import { describe, expect, test } from "vitest";
import {
	CM3_PER_IN3,
	KGM3_PER_LBFT3,
	parseDensity,
	parseVolume,
} from "@/lib/units/solids";

const volume = (text: string, system: "metric" | "trade" = "metric") =>
	parseVolume(text, { system, field: "volumeCm3", min: 5, max: 100_000 });
const density = (text: string, system: "metric" | "trade" = "metric") =>
	parseDensity(text, { system, field: "densityKgM3", min: 300, max: 1500 });

test("factors: NIST SP 811, appendix B.9", () => {
	// Printed there: cubic inch 1.638 706 E−05 m³; pound per cubic foot 1.601 846 E+01 kg/m³.
	expect(CM3_PER_IN3).toBeCloseTo(16.387_06, 5);
	expect(KGM3_PER_LBFT3).toBeCloseTo(16.018_46, 5);
});

describe("a volume", () => {
	test.each([
		["2100", "metric", 2100, "cm³"],
		["2100 cm³", "trade", 2100, null],
		["2,1 dm³", "metric", 2100, null],
		["2.1 l", "metric", 2100, null],
		["128", "trade", 128 * CM3_PER_IN3, "in³"],
		["128 in³", "metric", 128 * CM3_PER_IN3, null],
	] as const)("%s (%s)", (text, system, value, assumedUnit) => {
		const read = volume(text, system);
		if (!read.ok) throw new Error(read.refusal.code);
		expect(read.value).toBeCloseTo(value, 9);
		expect(read.assumedUnit).toBe(assumedUnit);
	});
});

describe("a density", () => {
	test.each([
		["672", "metric", 672],
		["0.672 g/cm³", "trade", 672],
		["42 lb/ft³", "metric", 42 * KGM3_PER_LBFT3],
		["42", "trade", 42 * KGM3_PER_LBFT3],
		["672,5 kg/m3", "metric", 672.5],
	] as const)("%s (%s)", (text, system, value) => {
		const read = density(text, system);
		if (!read.ok) throw new Error(read.refusal.code);
		expect(read.value).toBeCloseTo(value, 9);
	});

	test.each([
		["", "not-a-number", ""],
		["heavy", "not-a-number", "heavy"],
		["672 stone", "unknown-unit", "672 stone"],
		["2000", "out-of-range", 2000],
		["0.2 g/cm³", "out-of-range", 200],
	])("%s is refused as %s with the bounds in kg/m³", (text, code, value) => {
		const read = density(text);
		if (read.ok) throw new Error("was read");
		expect(read.refusal).toMatchObject({
			field: "densityKgM3",
			min: 300,
			max: 1500,
		});
		if (code === "out-of-range") {
			expect(read.refusal.code).toBe(code);
			expect(read.refusal.value).toBeCloseTo(value as number, 9);
		} else if (text !== "") expect(read.refusal).toMatchObject({ code, value });
	});
});
