import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	AT,
	CRITERION_COUNT,
	CRITERION_IDS,
	type Criterion,
} from "@/lib/advice/criteria";
import {
	criterionAbout,
	criterionTitle,
	formatMeasure,
} from "@/lib/present/criterion-words";
import {
	axesIn,
	bestOf,
	correlation,
	givenUp,
	isWithin,
	keptCount,
	type Points,
	rangeOf,
	tradeOffText,
} from "@/lib/present/trade-off-view";
import { INVENTED_PRICE_LIST } from "@/lib/price/list";
import type { Reader } from "@/lib/words/reader";
import { METRIC, TRADE } from "@/tests/support/readers";

const pointsOf = (
	rows: readonly Partial<Record<keyof typeof AT, number>>[],
): Points => {
	const measures = new Float32Array(rows.length * CRITERION_COUNT);
	rows.forEach((row, k) => {
		for (const id of CRITERION_IDS)
			measures[k * CRITERION_COUNT + AT[id]] = row[id] ?? 0;
	});
	return { count: rows.length, measures };
};

const weightOf = (ideal: number): Criterion => ({
	id: "weight",
	unit: "g",
	shape: {
		low: { ideal: ideal - 5, limit: ideal - 50 },
		high: { ideal: ideal + 5, limit: ideal + 50 },
	},
	weight: 1,
	role: "counts",
	basis: "measured",
	sources: ["project-judgement"],
	facts: {},
});

const THREE = pointsOf([
	{ weight: 500, price: 40_000 },
	{ weight: 520, price: 30_000 },
	{ weight: 540, price: 20_000 },
]);

describe("a bound", () => {
	test("on price takes the best weight away", () => {
		const [row] = givenUp({
			points: THREE,
			criteria: [weightOf(500)],
			bound: { id: "price", side: "most", value: 30_000 },
			reader: METRIC,
			money: INVENTED_PRICE_LIST,
		});
		expect(row).toMatchObject({
			name: "Weight",
			bestBefore: "500\u00a0g",
			bestAfter: "520\u00a0g",
			givesUp: "500\u00a0g becomes 520\u00a0g",
			before: "500\u00a0g to 540\u00a0g",
			after: "520\u00a0g to 540\u00a0g",
		});
	});
	test("that leaves the best takes nothing; one that leaves none says so", () => {
		const under = (value: number) =>
			givenUp({
				points: THREE,
				criteria: [weightOf(540)],
				bound: { id: "price", side: "most", value },
				reader: METRIC,
				money: INVENTED_PRICE_LIST,
			})[0]?.givesUp;
		expect(under(30_000)).toBe("nothing");
		expect(under(10_000)).toBe("no cue is left");
	});
	test("never widens a range, and tightening it never brings a cue back", () => {
		fc.assert(
			fc.property(
				fc.array(
					fc.record({
						weight: fc.float({ min: 300, max: 700, noNaN: true }),
						price: fc.float({ min: 1, max: 1e5, noNaN: true }),
					}),
					{ minLength: 1, maxLength: 40 },
				),
				fc.double({ min: 0, max: 1, noNaN: true }),
				fc.double({ min: 0, max: 1, noNaN: true }),
				(rows, a, b) => {
					const points = pointsOf(rows);
					const range = rangeOf(points, "price");
					if (range === null) throw new Error("no range");
					const at = (share: number) =>
						range.low + share * (range.high - range.low);
					const bound = (share: number) =>
						({ id: "price", side: "most", value: at(share) }) as const;
					const [tight, loose] = [Math.min(a, b), Math.max(a, b)];
					expect(keptCount(points, bound(tight))).toBeLessThanOrEqual(
						keptCount(points, bound(loose)),
					);
					expect(keptCount(points, bound(1))).toBe(points.count);
					const kept = rangeOf(
						points,
						"weight",
						isWithin(points, bound(tight)),
					);
					const all = rangeOf(points, "weight");
					if (kept && all) {
						expect(kept.low).toBeGreaterThanOrEqual(all.low);
						expect(kept.high).toBeLessThanOrEqual(all.high);
					}
				},
			),
		);
	});
});

test("the best is the one nearest to the ideal stretch", () => {
	expect(bestOf(THREE, weightOf(531))).toBe(540);
	expect(bestOf(THREE, weightOf(524))).toBe(520);
	expect(bestOf(pointsOf([]), weightOf(524))).toBeNull();
});

test("only criteria that differ are axes", () => {
	expect(axesIn(THREE)).toEqual(["weight", "price"]);
});

// Four points of the textbook kind, worked by hand: Σdxdy = 3, Σdx² = 5, Σdy² = 5, r = 0.6.
test("the coefficient of four points", () => {
	const points = pointsOf([
		{ weight: 1, price: 2 },
		{ weight: 2, price: 1 },
		{ weight: 3, price: 4 },
		{ weight: 4, price: 3 },
	]);
	expect(correlation(points, "weight", "price")).toBeCloseTo(0.6, 10);
	expect(correlation(THREE, "weight", "price")).toBeCloseTo(-1, 10);
	expect(correlation(THREE, "weight", "tip")).toBe(0);
});

test("in words: both ranges, and whether the one costs the other", () => {
	expect(
		tradeOffText({
			points: THREE,
			across: "weight",
			up: "price",
			reader: METRIC,
			money: INVENTED_PRICE_LIST,
		}).replaceAll("\u00a0", " "),
	).toBe(
		"Weight runs from 500 g to 540 g, price from 200 GBP to 400 GBP; among these cues more of the one mostly means less of the other.",
	);
});

describe("criteria", () => {
	test("each has a name of its own and says what it is", () => {
		const names = CRITERION_IDS.map((id) => criterionTitle(id, METRIC));
		expect(new Set(names).size).toBe(CRITERION_COUNT);
		for (const id of CRITERION_IDS)
			expect(criterionAbout(id, METRIC)).toMatch(/^[A-Z].*\.$/);
	});
	test.each([
		["weight", 510.3, "510 g", "18.0 oz"],
		["reach", 1466.85, "1467 mm", "57¾ in"],
		["closure", -2.5, "−2.5 mm", "−0.10 in"],
		["steadiness", 0.0933, "0.0933 kg m²", "0.0933 kg m²"],
		["forgiveness", 0.986, "98.6%", "98.6%"],
		["deflection", 1.956, "1.96°", "1.96°"],
		["price", 40_500, "405 GBP", "405 GBP"],
		["stiffness", 8.51, "8.5 mm/N", "8.5 mm/N"],
	] as const)("%s is written in its unit", (id, value, metric, trade) => {
		const say = (reader: Reader) =>
			formatMeasure(id, value, reader).replaceAll("\u00a0", " ");
		expect([say(METRIC), say(TRADE)]).toEqual([metric, trade]);
	});
});
