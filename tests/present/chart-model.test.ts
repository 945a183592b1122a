import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	axisTicks,
	innerTicks,
	lineAt,
	panelRange,
	tickText,
} from "@/lib/present/chart-model";
import { METRIC } from "@/tests/support/readers";

describe("ticks of an axis", () => {
	it.each([
		[0, 100, [0, 25, 50, 75, 100]],
		[1372, 1503, [1350, 1400, 1450, 1500, 1550]],
		[0.32, 0.41, [0.3, 0.325, 0.35, 0.375, 0.4, 0.425]],
		[-3.2, 4.1, [-4, -2, 0, 2, 4, 6]],
	])("%d to %d: %j", (from, to, ticks) => {
		expect(axisTicks({ from, to }).ticks).toEqual(ticks);
	});

	it("enclose the range, with steps of 1, 2, 2.5 or 5", () => {
		fc.assert(
			fc.property(
				fc.double({ min: -1e4, max: 1e4, noNaN: true }),
				fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
				(from, width) => {
					const { ticks, step } = axisTicks({ from, to: from + width });
					const slack = step * 1e-6;
					expect(ticks[0]).toBeLessThanOrEqual(from + slack);
					expect(ticks.at(-1)).toBeGreaterThanOrEqual(from + width - slack);
					expect(ticks.length).toBeLessThanOrEqual(7);
					expect(ticks.length).toBeGreaterThanOrEqual(2);
					const lead = step / 10 ** Math.floor(Math.log10(step * 1.000001));
					expect(
						[1, 2, 2.5, 5, 10].some((known) => Math.abs(known - lead) < 1e-6),
					).toBe(true);
				},
			),
		);
	});

	it("give a single value some room, and refuse what is not a range", () => {
		expect(axisTicks({ from: 5, to: 5 }).domain).toEqual([4.5, 5.5]);
		expect(() => axisTicks({ from: 2, to: 1 })).toThrow(RangeError);
		expect(() => axisTicks({ from: Number.NaN, to: 1 })).toThrow(RangeError);
	});

	it("stay inside a fixed range", () => {
		expect(innerTicks([1372, 1503]).ticks).toEqual([1400, 1450, 1500]);
		expect(innerTicks([24, 31]).ticks).toEqual([24, 26, 28, 30]);
	});

	it("are written with the decimals of their step", () => {
		expect(tickText(0.35, { step: 0.025, unit: "in" }, METRIC)).toBe("0.350");
		expect(tickText(57.5, { step: 0.5, unit: "in" }, METRIC)).toBe("57½");
		expect(tickText(58, { step: 1, unit: "in" }, METRIC)).toBe("58");
		expect(tickText(1450, { step: 50, unit: "mm" }, METRIC)).toBe("1450");
		expect(tickText(9.5, { step: 0.5, unit: "mm" }, METRIC)).toBe("9.5");
		expect(tickText(-2.5, { step: 2.5, unit: "mm" }, METRIC)).toBe("−2.5");
	});
});

describe("a panel", () => {
	const points = [
		{ x: 0, y: 1, low: 0.5, high: 1.5 },
		{ x: 2, y: 5 },
		{ x: 4, y: 3 },
	];

	it("spans lines, bands and the zones along y", () => {
		expect(
			panelRange({
				lines: [{ name: "a", points }],
				zones: [
					{ axis: "y", from: -2, to: 1, label: "b", kind: "wanted" },
					{ axis: "x", from: -9, to: 9, label: "c", kind: "limit" },
				],
			}),
		).toEqual({ from: -2, to: 5 });
		expect(() => panelRange({ lines: [], zones: [] })).toThrow(RangeError);
	});

	it("reads a line between its points", () => {
		expect(lineAt(points, 1)).toBe(3);
		expect(lineAt(points, 2)).toBe(5);
		expect(lineAt(points, 3)).toBe(4);
		expect(lineAt(points, 4)).toBe(3);
		expect(lineAt(points, 4.1)).toBeNull();
		expect(lineAt(points, -1)).toBeNull();
	});
});
