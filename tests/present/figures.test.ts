import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	formatAngle,
	formatBoth,
	formatLength,
	formatLengthBand,
	formatLengthDifference,
	formatMass,
	formatMassBand,
	formatMassDifference,
	formatNumber,
	formatNumberBand,
	formatPercent,
	formatQuarters,
	formatRatio,
	type LengthKind,
	lengthUnitOf,
	type MassKind,
	massUnitOf,
} from "@/lib/present/figures";
import { parseLength, parseMass } from "@/lib/units/parse";
import {
	inchesToMm,
	ouncesToGrams,
	type UnitSystem,
} from "@/lib/units/quantity";
import type { Reader } from "@/lib/words/reader";
import { METRIC, reading, TRADE } from "@/tests/support/readers";

/** With plain spaces, so that the expectations below stay readable. */
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, " ");

const READERS = [
	METRIC,
	TRADE,
	reading("metric", "de"),
	reading("trade", "de"),
];
const KINDS: readonly LengthKind[] = [
	"length",
	"diameter",
	"station",
	"gap",
	"body",
	"limb",
];
const MASS_KINDS: readonly MassKind[] = ["cue", "added", "body"];

describe("lengths", () => {
	it.each<[number, UnitSystem, LengthKind, string]>([
		[1460.5, "trade", "length", "57½ in"],
		[1460.5, "metric", "length", "1461 mm"],
		[1447.8, "trade", "length", "57 in"],
		[1454.15, "trade", "length", "57¼ in"],
		[1450, "trade", "length", "57 in"],
		[6.35, "trade", "length", "¼ in"],
		[0, "trade", "length", "0 in"],
		[29.46, "metric", "diameter", "29.5 mm"],
		[29, "metric", "diameter", "29.0 mm"],
		[29.5, "trade", "diameter", "1.161 in"],
		[914.4, "trade", "station", "36.00 in"],
		[-1.26, "metric", "gap", "−1.3 mm"],
		[-0.04, "metric", "gap", "0.0 mm"],
		[1752.6, "trade", "body", "5 ft 9 in"],
		[1828.7, "trade", "body", "6 ft 0 in"],
		[1752.6, "metric", "body", "175.5 cm"],
		[1750, "metric", "body", "175 cm"],
		[188, "metric", "limb", "19 cm"],
		[193, "metric", "limb", "19.5 cm"],
		[12345, "metric", "length", "12 345 mm"],
	])("%d mm, %s, %s: %s", (mm, system, kind, text) => {
		expect(plain(formatLength(mm, reading(system), kind))).toBe(text);
	});

	it("shares the unit in a band, and joins ends that round alike", () => {
		const band = { low: 1454.2, high: 1473.2 };
		expect(plain(formatLengthBand(band, TRADE))).toBe("57¼–58 in");
		expect(plain(formatLengthBand(band, METRIC))).toBe("1454–1473 mm");
		expect(plain(formatLengthBand({ low: 1460, high: 1461 }, TRADE))).toBe(
			"57½ in",
		);
		expect(plain(formatLengthBand({ low: -4, high: 2.5 }, METRIC, "gap"))).toBe(
			"−4.0 to 2.5 mm",
		);
		expect(
			plain(formatLengthBand({ low: 1700, high: 1800 }, TRADE, "body")),
		).toBe("5 ft 7 in–5 ft 10¾ in");
	});

	it("signs a difference, except where it rounds to nothing", () => {
		expect(plain(formatLengthDifference(12.4, METRIC))).toBe("+12 mm");
		expect(plain(formatLengthDifference(-12.7, TRADE))).toBe("−½ in");
		expect(plain(formatLengthDifference(0.3, METRIC))).toBe("0 mm");
		expect(plain(formatLengthDifference(-0.3, METRIC))).toBe("0 mm");
		expect(plain(formatMassDifference(14.2, TRADE))).toBe("+0.5 oz");
	});
});

describe("masses", () => {
	it.each<[number, UnitSystem, MassKind, string]>([
		[ouncesToGrams(18.5), "trade", "cue", "18.5 oz"],
		[ouncesToGrams(18.5), "metric", "cue", "524 g"],
		[ouncesToGrams(18.25), "trade", "cue", "18.25 oz"],
		[ouncesToGrams(17.75), "trade", "cue", "17.75 oz"],
		[ouncesToGrams(18), "trade", "cue", "18.0 oz"],
		[ouncesToGrams(18.26), "trade", "cue", "18.3 oz"],
		[22, "trade", "added", "0.78 oz"],
		[72_300, "metric", "body", "72.5 kg"],
		[72_000, "trade", "body", "159 lb"],
	])("%d g, %s, %s: %s", (g, system, kind, text) => {
		expect(plain(formatMass(g, reading(system), kind))).toBe(text);
	});

	it("writes a band", () => {
		expect(plain(formatMassBand({ low: 498, high: 541 }, TRADE))).toBe(
			"17.6–19.1 oz",
		);
	});
});

describe("both systems", () => {
	it("puts the chosen one first", () => {
		const both = formatBoth({ mm: 1460.5 }, TRADE);
		expect(plain(both.main)).toBe("57½ in");
		expect(plain(both.other)).toBe("1461 mm");
		const mass = formatBoth({ g: 520 }, METRIC);
		expect(plain(mass.main)).toBe("520 g");
		expect(plain(mass.other)).toBe("18.3 oz");
	});
});

describe("other numbers", () => {
	it("writes angles, shares, ratios and bands", () => {
		expect(formatAngle(-1.25, METRIC)).toBe("−1.3°");
		expect(formatPercent(0.125, METRIC, 1)).toBe("12.5%");
		expect(formatPercent(0.9, METRIC)).toBe("90%");
		expect(formatRatio(0.516, METRIC)).toBe("0.52");
		expect(formatNumber(-0.001, METRIC, 2)).toBe("0.00");
		expect(formatQuarters(57.9, METRIC)).toBe("58");
		expect(
			plain(formatNumberBand({ low: 10, high: 12.5 }, METRIC, 1, "°")),
		).toBe("10.0–12.5°");
	});

	it("throws rather than write what is not a number", () => {
		for (const value of [Number.NaN, Infinity, -Infinity]) {
			expect(() => formatNumber(value, METRIC)).toThrow(RangeError);
			expect(() => formatQuarters(value, METRIC)).toThrow(RangeError);
			expect(() => formatAngle(value, METRIC)).toThrow(/angleDeg/);
			expect(() => formatPercent(value, METRIC)).toThrow(RangeError);
			expect(() => formatRatio(value, METRIC)).toThrow(RangeError);
			for (const reader of [METRIC, TRADE]) {
				for (const kind of KINDS)
					expect(() => formatLength(value, reader, kind)).toThrow(RangeError);
				for (const kind of MASS_KINDS)
					expect(() => formatMass(value, reader, kind)).toThrow(RangeError);
				expect(() => formatLengthBand({ low: 0, high: value }, reader)).toThrow(
					RangeError,
				);
			}
		}
	});
});

it("writes what the bench gauges to the hundredth, and odd quarters of a millimetre as they are", () => {
	expect(formatLength(0.05, METRIC, "bench")).toBe("0.05\u00a0mm");
	expect(formatLength(28.25, METRIC, "diameter")).toBe("28.25\u00a0mm");
	expect(formatLength(28.2, METRIC, "diameter")).toBe("28.2\u00a0mm");
});

describe("what is written can be read back", () => {
	/** Half a step of each format, in mm, and the bits a conversion loses. */
	const stepMm = (reader: Reader, kind: LengthKind): number => {
		if (reader.system === "metric")
			return {
				length: 1,
				diameter: 0.1,
				station: 1,
				gap: 0.1,
				bench: 0.01,
				body: 5,
				limb: 5,
			}[kind];
		return inchesToMm(
			{
				length: 0.25,
				diameter: 0.001,
				station: 0.01,
				gap: 0.01,
				bench: 0.001,
				body: 0.25,
				limb: 0.25,
			}[kind],
		);
	};

	it("within half a step, for lengths", () => {
		fc.assert(
			fc.property(
				fc.double({ min: 7, max: 2500, noNaN: true }),
				fc.constantFrom(...READERS),
				fc.constantFrom(...KINDS),
				(mm, reader, kind) => {
					const parsed = parseLength(formatLength(mm, reader, kind), {
						system: reader.system,
						minMm: 0,
						maxMm: 3000,
					});
					if (!parsed.ok) throw new Error(parsed.refusal.code);
					expect(Math.abs(parsed.mm - mm)).toBeLessThanOrEqual(
						stepMm(reader, kind) / 2 + 1e-9,
					);
				},
			),
		);
	});

	it("within half a step, for masses", () => {
		fc.assert(
			fc.property(
				fc.double({ min: 5, max: 1000, noNaN: true }),
				fc.constantFrom(...READERS),
				(g, reader) => {
					const parsed = parseMass(formatMass(g, reader), {
						system: reader.system,
						minG: 0,
						maxG: 2000,
					});
					if (!parsed.ok) throw new Error(parsed.refusal.code);
					const step = reader.system === "metric" ? 1 : ouncesToGrams(0.1);
					expect(Math.abs(parsed.g - g)).toBeLessThanOrEqual(step / 2 + 1e-9);
				},
			),
		);
	});

	it("in the unit that the field shows", () => {
		expect(lengthUnitOf(METRIC, "body")).toBe("cm");
		expect(lengthUnitOf(METRIC, "diameter")).toBe("mm");
		expect(lengthUnitOf(TRADE, "length")).toBe("in");
		expect(massUnitOf(TRADE, "cue")).toBe("oz");
		expect(massUnitOf(METRIC, "body")).toBe("kg");
	});
});
