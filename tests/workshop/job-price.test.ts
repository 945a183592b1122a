import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { NO_EXTRAS } from "@/lib/workshop/job-extras";
import { jobPrice } from "@/lib/workshop/job-price";
import type { PriceRow, Prices } from "@/lib/workshop/prices";
import { askedContent } from "./support/jobs";

/** An invented list whose every amount tells its part by its digits. */
const AMOUNTS: readonly (readonly [
	PriceRow["part"],
	string,
	number,
	number,
])[] = [
	["base", "", 100_00, 41],
	["splice", "hand-four-point", 160_00, 7],
	["splice", "plain", 0, 0],
	["splice", "machine-four-point", 60_00, 0],
	["layout", "three-quarter", 65_00, 0],
	["layout", "one-piece", 0, 0],
	["layout", "centre", 60_00, 0],
	["shaft-wood", "white-ash", 0, 40_03],
	["butt-wood", "gaboon-ebony", 0, 90_09],
	["added-weight", "", 20_00, 11],
	["points-between", "", 90_00, 0],
	["front-wedge", "", 30_00, 0],
	["all-round-wedges", "", 15_00, 0],
	["veneers", "", 20_00, 0],
	["end-piece", "", 40_00, 0],
	["ferrule", "brass", 3_00, 1],
	["tip", "Layered leather", 2_00, 9_99],
	["case", "Three-quarter case", 0, 35_05],
];
const prices: Prices = {
	basis: "invented",
	currency: "EUR",
	minorPerUnit: 100,
	spreadFraction: 0.1,
	rows: AMOUNTS.map(([part, choice, labourMinor, materialMinor]) => ({
		part,
		choice,
		labourMinor,
		materialMinor,
	})),
};
const { build } = askedContent();

describe("what a job comes to", () => {
	test("the lines of the list, summed in whole minor units", () => {
		const price = must(
			jobPrice({
				prices,
				build,
				extras: {
					...NO_EXTRAS,
					tip: "Layered leather",
					case: "Three-quarter case",
				},
			}),
		);
		// By hand: 100.41 + 160.07 + 65.00 + 40.03 + 90.09 + 3.01 + 20.11 + 11.99 + 35.05.
		expect(price.totalMinor).toBe(525_76);
		expect(price).toMatchObject({ currency: "EUR", minorPerUnit: 100 });
		expect(
			price.lines.reduce((sum, { amountMinor }) => sum + amountMinor, 0),
		).toBe(price.totalMinor);
		expect(price.lines.at(-1)).toEqual({
			part: "case",
			choice: "Three-quarter case",
			count: 1,
			amountMinor: 35_05,
		});
	});

	test("nothing chosen beside the cue costs nothing", () => {
		const price = must(jobPrice({ prices, build, extras: NO_EXTRAS }));
		expect(price.totalMinor).toBe(525_76 - 11_99 - 35_05);
		expect(price.lines.map(({ part }) => part)).not.toContain("tip");
	});

	test("what the list lacks is named, not left out of the sum", () => {
		expect(
			jobPrice({
				prices,
				build,
				extras: { case: "Gold case", tip: "Felt", gripNotes: "" },
			}),
		).toEqual({
			ok: false,
			refusals: [
				{ code: "extra-not-priced", field: "tip", value: "Felt" },
				{ code: "extra-not-priced", field: "case", value: "Gold case" },
			],
		});
		expect(
			jobPrice({
				prices,
				build: askedContent({ buttWood: "snakewood" }, 560).build,
				extras: NO_EXTRAS,
			}),
		).toMatchObject({
			ok: false,
			refusals: [{ code: "not-in-price-list", value: "snakewood" }],
		});
	});
});
