import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseLength, parseMass, parseNumber } from "@/lib/units/parse";
import {
	GRAMS_PER_OUNCE,
	inchesToMm,
	ouncesToGrams,
	type UnitSystem,
} from "@/lib/units/quantity";
import type { LengthUnit } from "@/lib/units/unit-words";

const lengthOf = (
	text: string,
	system: UnitSystem = "metric",
	[minMm, maxMm]: readonly [number, number] = [10, 3000],
	defaultUnit?: LengthUnit,
) =>
	parseLength(text, { system, minMm, maxMm, defaultUnit, field: "lengthMm" });

const massOf = (
	text: string,
	system: UnitSystem = "metric",
	[minG, maxG]: readonly [number, number] = [1, 200_000],
) => parseMass(text, { system, minG, maxG, field: "massG" });

// International yard and pound agreement of 1959, from memory: 1 in = 25.4 mm, 1 lb = 453.59237 g.
describe("lengths as people write them", () => {
	it.each([
		["175 cm", 1750],
		["175cm", 1750],
		["1.75 m", 1750],
		["1,75 m", 1750],
		["1.005 m", 1005],
		["1 m 75", 1750],
		["1m75", 1750],
		["1 m 75 cm", 1750],
		["5 ft 9", 1752.6],
		["5ft9in", 1752.6],
		["5 feet 9 inches", 1752.6],
		["5'9\"", 1752.6],
		["5′9″", 1752.6],
		["5’9”", 1752.6],
		["5' 9''", 1752.6],
		["5'9½", 1765.3],
		["6'", 1828.8],
		["57 1/2 in", 1460.5],
		["57-1/2 in", 1460.5],
		['57½"', 1460.5],
		["57 ½ in.", 1460.5],
		["57⅜ in", 1457.325],
		["57.5in", 1460.5],
		["57,5 in", 1460.5],
		["3/4 in", 19.05],
		["½ in", 12.7],
		["1450", 1450],
		["1450 mm", 1450],
		["1,450 mm", 1450],
		["1 450 mm", 1450],
		["1\u00a0450\u00a0mm", 1450],
		["1\u202f450\u202fmm", 1450],
		["1,450.5 mm", 1450.5],
		["1.450,5 mm", 1450.5],
		["29.5 mm", 29.5],
		["29,5 mm", 29.5],
		["29.5", 29.5],
		[".5 in", 12.7],
		["  29.5 MM  ", 29.5],
		["+29.5 mm", 29.5],
		["２９．５ mm", 29.5],
	])("%j is %d mm", (text, mm) => {
		const parsed = lengthOf(text);
		expect(parsed).toMatchObject({ ok: true });
		if (parsed.ok) expect(parsed.mm).toBeCloseTo(mm, 9);
	});

	it("takes a bare number in the system's unit, and says so", () => {
		expect(lengthOf("57½", "trade")).toEqual({
			ok: true,
			mm: 1460.5,
			assumedUnit: "in",
		});
		expect(lengthOf("1450", "metric")).toEqual({
			ok: true,
			mm: 1450,
			assumedUnit: "mm",
		});
		expect(lengthOf("175", "metric", [500, 2500], "cm")).toEqual({
			ok: true,
			mm: 1750,
			assumedUnit: "cm",
		});
		expect(lengthOf("5 ft 9", "metric")).toMatchObject({ assumedUnit: null });
	});
});

describe("commas that can be read two ways", () => {
	it.each([
		["1,450", [500, 2000], 1450],
		["1,450", [1, 100], 1.45],
		["29,500", [20, 40], 29.5],
		["1,450 m", [500, 2000], 1450],
	] as const)("%j within %j is %d mm", (text, bounds, mm) => {
		expect(lengthOf(text, "metric", bounds)).toMatchObject({ ok: true, mm });
	});

	it("refuses when both readings are within the bounds", () => {
		expect(lengthOf("1,450", "metric", [1, 2000])).toEqual({
			ok: false,
			refusal: {
				code: "ambiguous",
				field: "lengthMm",
				value: "1,450",
				min: 1,
				max: 2000,
			},
		});
	});

	it("reads a single point as a decimal point whatever the bounds", () => {
		expect(lengthOf("1.450", "metric", [500, 2000])).toMatchObject({
			refusal: { code: "out-of-range", value: 1.45 },
		});
	});
});

describe("refused lengths", () => {
	it.each([
		["", "empty"],
		[" \u00a0\t", "empty"],
		["abc", "not-a-number"],
		["cm 175", "not-a-number"],
		["NaN", "not-a-number"],
		["Infinity", "not-a-number"],
		["5 9", "not-a-number"],
		["5 ft 13 in", "not-a-number"],
		["5.5 ft 3 in", "not-a-number"],
		["9 in 5 ft", "not-a-number"],
		["57 5/2 in", "not-a-number"],
		["1/0 in", "not-a-number"],
		["1,45,0", "not-a-number"],
		["1.2.3", "not-a-number"],
		["1,450,00", "not-a-number"],
		["57–58 in", "not-a-number"],
		["57 in 3", "not-a-number"],
		["520 g", "unknown-unit"],
		["58 yards", "unknown-unit"],
		["1e3", "unknown-unit"],
		["12px", "unknown-unit"],
		["0", "out-of-range"],
		["-29 mm", "out-of-range"],
		["−29 mm", "out-of-range"],
		["99999999999", "out-of-range"],
		["9".repeat(400), "out-of-range"],
		["1450 m", "out-of-range"],
	])("%j: %s", (text, code) => {
		expect(lengthOf(text)).toMatchObject({
			ok: false,
			refusal: { code, field: "lengthMm", min: 10, max: 3000 },
		});
	});

	it("names the value in mm and the bounds", () => {
		expect(lengthOf("70 in", "trade", [700, 1700])).toEqual({
			ok: false,
			refusal: {
				code: "out-of-range",
				field: "lengthMm",
				value: 1778,
				min: 700,
				max: 1700,
			},
		});
	});

	it("keeps no more than forty characters of what was typed", () => {
		const parsed = lengthOf("x".repeat(5000));
		expect(parsed).toMatchObject({ refusal: { value: "x".repeat(40) } });
	});
});

describe("masses as people write them", () => {
	it.each([
		["520", 520],
		["520 g", 520],
		["0.52 kg", 520],
		["0,52 kg", 520],
		["18.5 oz", 524.4661778125],
		["18½ oz", 524.4661778125],
		["18 1/2oz", 524.4661778125],
		["1 lb 3 oz", 19 * GRAMS_PER_OUNCE],
		["1lb 3", 19 * GRAMS_PER_OUNCE],
		["1 pound", 453.59237],
		["11 st 4 lb", 158 * 453.59237],
		["11 stone 4", 158 * 453.59237],
		["72 kg", 72_000],
	])("%j is %d g", (text, g) => {
		const parsed = massOf(text);
		expect(parsed).toMatchObject({ ok: true });
		if (parsed.ok) expect(parsed.g).toBeCloseTo(g, 9);
	});

	it.each([
		["1 lb 16 oz", "not-a-number"],
		["18 in", "unknown-unit"],
		["0 g", "out-of-range"],
		["-18 oz", "out-of-range"],
	])("%j: %s", (text, code) => {
		expect(massOf(text)).toMatchObject({ ok: false, refusal: { code } });
	});
});

describe("plain numbers", () => {
	it.each([
		["12", 12],
		["12.5", 12.5],
		["12,5", 12.5],
		["3 1/2", 3.5],
	])("%j is %d", (text, value) => {
		expect(parseNumber(text, { min: 0, max: 120 })).toEqual({
			ok: true,
			value,
		});
	});

	it.each([
		["12 cm", "unknown-unit"],
		["-1", "out-of-range"],
		["twelve", "not-a-number"],
	])("%j: %s", (text, code) => {
		expect(
			parseNumber(text, { min: 0, max: 120, field: "ageYears" }),
		).toMatchObject({ ok: false, refusal: { code, field: "ageYears" } });
	});
});

describe("round trips", () => {
	const bounds: readonly [number, number] = [700, 1700];

	it("gives back any length written in mm, cm, m or in", () => {
		fc.assert(
			fc.property(
				fc.double({ min: 700, max: 1700, noNaN: true }),
				fc.constantFrom("metric", "trade"),
				(mm, system: UnitSystem) => {
					const texts = [
						`${mm} mm`,
						`${mm / 10} cm`,
						`${mm / 1000} m`,
						`${mm / 25.4} in`,
						`${mm} mm`.replace(".", ","),
					];
					for (const text of texts) {
						if (/e/.test(text)) continue;
						const parsed = lengthOf(text, system, [699, 1701]);
						if (!parsed.ok) throw new Error(`${text}: ${parsed.refusal.code}`);
						expect(Math.abs(parsed.mm - mm)).toBeLessThan(1e-9);
					}
				},
			),
		);
	});

	it("gives back feet, inches and sixteenths exactly", () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 1, max: 8 }),
				fc.integer({ min: 0, max: 11 }),
				fc.integer({ min: 1, max: 15 }),
				(feet, inches, sixteenths) => {
					const parsed = lengthOf(`${feet} ft ${inches} ${sixteenths}/16 in`);
					expect(parsed).toMatchObject({ ok: true });
					if (parsed.ok)
						expect(parsed.mm).toBeCloseTo(
							inchesToMm(feet * 12 + inches + sixteenths / 16),
							9,
						);
				},
			),
		);
	});

	it("gives back ounces", () => {
		fc.assert(
			fc.property(fc.integer({ min: 100, max: 300 }), (tenths) => {
				expect(massOf(`${tenths / 10} oz`)).toMatchObject({
					ok: true,
					g: ouncesToGrams(tenths / 10),
				});
			}),
		);
	});

	it("takes an inclusive bound written in another unit", () => {
		for (const inches of [27.6, 36.1, 57.1, 66.9]) {
			const mm = Number((inches * 25.4).toFixed(2));
			expect(lengthOf(`${inches} in`, "metric", [mm, 1700])).toEqual({
				ok: true,
				mm,
				assumedUnit: null,
			});
		}
	});

	it("never returns a value outside the bounds, nor anything but a number", () => {
		fc.assert(
			fc.property(
				fc.string({
					unit: fc.constantFrom(..."0123456789.,' \"/-½mcinftgozlb".split("")),
					maxLength: 12,
				}),
				(text) => {
					const parsed = lengthOf(text, "trade", bounds);
					if (!parsed.ok) return;
					expect(parsed.mm).toBeGreaterThanOrEqual(bounds[0]);
					expect(parsed.mm).toBeLessThanOrEqual(bounds[1]);
				},
			),
			{ numRuns: 2000 },
		);
	});
});
