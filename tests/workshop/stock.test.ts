import fc from "fast-check";
import { jStat } from "jstat";
import { describe, expect, test } from "vitest";
import { billetDensity } from "@/lib/build/billet";
import { must } from "@/lib/numerics/outcome";
import { WOODS } from "@/lib/reference/woods";
import {
	billetKgM3,
	densitiesOf,
	densityOfStock,
	type StockBillet,
	type StockWood,
	WEIGHING_CV,
} from "@/lib/workshop/stock";
import { tableDensity, woodBand } from "@/lib/workshop/wood-evidence";

const weighed = (densityKgM3: number): StockBillet => ({
	label: "",
	moisturePct: null,
	densityKgM3,
});
const stock = (
	densities: readonly number[],
	change: Partial<StockWood> = {},
): StockWood => ({
	wood: "white-ash",
	grade: "",
	ringSpacingMm: null,
	count: densities.length,
	billets: densities.map(weighed),
	stated: null,
	...change,
});
const densities = fc.array(fc.double({ min: 500, max: 900, noNaN: true }), {
	minLength: 2,
	maxLength: 12,
});

describe("one billet", () => {
	test("weighs its mass over its volume: 1.2 kg in 1.8 dm³ are 667 kg/m³", () => {
		const billet = {
			label: "",
			moisturePct: null,
			massG: 1200,
			volumeCm3: 1800,
		};
		expect(billetKgM3(billet)).toBeCloseTo(666.667, 3);
	});

	test("is brought to 12 % as a squared billet is", () => {
		const squared = {
			massG: 1450,
			lengthMm: 1500,
			widthMm: 36,
			thicknessMm: 37,
			moisturePct: { value: 9, sd: 0 },
		};
		expect(
			billetKgM3({
				label: "",
				moisturePct: 9,
				massG: 1450,
				volumeCm3: (1500 * 36 * 37) / 1000,
			}),
		).toBeCloseTo(must(billetDensity(squared)).kgM3, 9);
	});
});

describe("the billets at hand", () => {
	test("all weighed: mean and spread are those of the list, by jStat", () => {
		fc.assert(
			fc.property(densities, (values) => {
				const density = densityOfStock(stock(values));
				const mean = jStat.mean(values);
				expect(density?.kgM3).toBeCloseTo(mean, 9);
				expect(density?.sd).toBeCloseTo(
					Math.hypot(jStat.stdev(values), WEIGHING_CV * mean),
					9,
				);
			}),
		);
	});

	test("hardly any weighed: the spread is wider than theirs, and settles on theirs as they become many", () => {
		const of = (copies: number) => {
			const values = Array.from({ length: copies }, () => [640, 680]).flat();
			return there(densityOfStock(stock(values, { count: 10_000 }))).sd;
		};
		// The billets themselves: their readings' spread of 20 less the error of weighing.
		const theirs = Math.sqrt(20 ** 2 - (WEIGHING_CV * 660) ** 2);
		expect(of(1)).toBeGreaterThan(of(4));
		expect(of(4)).toBeGreaterThan(of(40));
		expect(Math.abs(of(100) / theirs - 1)).toBeLessThan(0.05);
	});

	test("one weighed of many: the rest have the wood's band after that one reading", () => {
		const many = there(densityOfStock(stock([650], { count: 1e9 })));
		const { next } = woodBand(tableDensity("white-ash"), [
			{ kgM3: 650, sd: WEIGHING_CV * 650 },
		]);
		expect(many.kgM3).toBeCloseTo(next.kgM3, 5);
		expect(many.sd).toBeCloseTo(next.sd, 5);
		expect(many.kgM3).toBeGreaterThan(650);
		expect(many.sd).toBeLessThan(WOODS["white-ash"].density12KgM3.sd);
	});

	test("finished cues narrow the billets not yet weighed, and a wood that is not in stock", () => {
		const evidence = Array.from({ length: 12 }, (_, i) => ({
			kgM3: 720 + 12 * (i % 3),
			sd: 9,
		}));
		const alone = there(densityOfStock(stock([650], { count: 20 })));
		const taught = there(densityOfStock(stock([650], { count: 20 }), evidence));
		expect(taught.sd).toBeLessThan(alone.sd);
		expect(taught.kgM3).toBeGreaterThan(alone.kgM3);
		const allWeighed = stock([650, 660]);
		expect(densityOfStock(allWeighed, evidence)).toEqual(
			densityOfStock(allWeighed),
		);
		expect(
			densitiesOf({ basis: "workshop", woods: [] }, { "white-ash": evidence }),
		).toEqual({
			"white-ash": woodBand(tableDensity("white-ash"), evidence).next,
		});
		expect(
			densitiesOf({ basis: "workshop", woods: [] }, { "white-ash": [] }),
		).toEqual({});
	});

	test("none weighed: what is stated, or nothing", () => {
		const stated = { kgM3: 700, sd: 20 };
		expect(densityOfStock(stock([], { count: 5, stated }))).toEqual({
			...stated,
			weighedCount: 0,
		});
		expect(densityOfStock(stock([], { count: 5 }))).toBeNull();
		expect(densitiesOf({ basis: "workshop", woods: [stock([])] })).toEqual({});
	});

	test("grades of one wood, all weighed, are together the whole list", () => {
		fc.assert(
			fc.property(densities, densities, (a, b) => {
				const { "white-ash": both } = densitiesOf({
					basis: "workshop",
					woods: [stock(a, { grade: "A" }), stock(b, { grade: "B" })],
				});
				const all = [...a, ...b];
				const weighing =
					(a.length * (WEIGHING_CV * jStat.mean(a)) ** 2 +
						b.length * (WEIGHING_CV * jStat.mean(b)) ** 2) /
					all.length;
				expect(both?.kgM3).toBeCloseTo(jStat.mean(all), 8);
				expect(both?.sd).toBeCloseTo(
					Math.sqrt(jStat.variance(all) + weighing),
					6,
				);
			}),
		);
	});
});

const there = <T>(value: T | null): T => {
	if (value === null) throw new Error("a density was expected");
	return value;
};
