import { describe, expect, test } from "vitest";
import {
	blend,
	type Evidence,
	figureFrom,
	surenessOf,
} from "@/lib/advice/figure";

const seen = (
	value: number,
	sd: number,
	basis: Evidence["basis"] = "derived",
): Evidence => ({
	code: `at-${value}`,
	value,
	sd,
	basis,
	sources: ["project-judgement"],
});

describe("blend", () => {
	test("is the inverse-variance weighted mean (textbook estimator of independent normal errors)", () => {
		// Weights 1 and 1/4: (10 + 12/4)/(1 + 1/4) = 10.4, variance 1/1.25.
		const { value, sd, weighed } = blend([seen(12, 2), seen(10, 1)]);
		expect(value).toBeCloseTo(10.4, 12);
		expect(sd).toBeCloseTo(Math.sqrt(0.8), 12);
		expect(weighed.map(({ shareFraction }) => shareFraction)).toEqual([
			0.8, 0.2,
		]);
	});
	test("evidence that disagrees beyond its bands leaves a wider band than either", () => {
		// chi² = 2·(5/1)²: a Birge ratio of 50 on a variance of 1/2.
		expect(blend([seen(0, 1), seen(10, 1)]).sd).toBeCloseTo(5, 12);
	});
	test("a wish replaces the estimates and keeps them to be told", () => {
		const { value, sd, weighed } = blend([seen(10, 1), seen(14, 0, "wish")]);
		expect([value, sd]).toEqual([14, 0]);
		expect(weighed.map(({ shareFraction }) => shareFraction)).toEqual([1, 0]);
	});
	test("refuses evidence without a spread, and no evidence", () => {
		expect(() => blend([seen(10, 0)])).toThrow(/at-10/);
		expect(() => blend([seen(Number.NaN, 1)])).toThrow(RangeError);
		expect(() => blend([])).toThrow(RangeError);
	});
});

describe("figureFrom", () => {
	test("snaps an estimate to the step and leaves a wish as it was said", () => {
		const steps = { step: 0.25, feltDifference: 1 };
		expect(figureFrom({ evidence: [seen(10.4, 1)], ...steps }).value).toBe(
			10.5,
		);
		expect(
			figureFrom({ evidence: [seen(10.4, 0, "wish")], ...steps }),
		).toMatchObject({
			value: 10.4,
			sureness: "chosen",
		});
	});
	test("keeps the need beside the limited value", () => {
		const figure = figureFrom({
			evidence: [seen(33, 1)],
			step: 0.25,
			feltDifference: 1,
			limit: (v) => Math.min(31, v),
		});
		expect(figure).toMatchObject({ value: 31, exact: 33 });
	});
});

test("sureness compares the 90 % half-width with what can be felt", () => {
	const halfWidth = 1.6448536269514722;
	expect(surenessOf({ sd: 1, feltDifference: halfWidth + 1e-9 })).toBe("firm");
	expect(surenessOf({ sd: 1, feltDifference: halfWidth - 1e-9 })).toBe("fair");
	expect(surenessOf({ sd: 1, feltDifference: halfWidth / 2 - 1e-9 })).toBe(
		"rough",
	);
});
