import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CueRequest } from "@/lib/cue/design";
import { must } from "@/lib/numerics/outcome";
import { estimatePrice, priceListRefusals } from "@/lib/price/estimate";
import { INVENTED_PRICE_LIST, type PriceList } from "@/lib/price/list";
import { WOODS } from "@/lib/reference/woods";
import { SNOOKER_REQUEST } from "../support/designs";

const list = INVENTED_PRICE_LIST;
const priced = (
	change: Partial<CueRequest> = {},
	hasAddedWeight = false,
	of: PriceList = list,
) =>
	must(
		estimatePrice({
			list: of,
			request: { ...SNOOKER_REQUEST, ...change },
			hasAddedWeight,
		}),
	);

describe("an estimate from a price list", () => {
	// 14,000 base + 16,000 hand splice + 6,500 three-quarter + 4,000 ash + 9,000 ebony, added by hand.
	test("is the sum of its lines", () => {
		const { totalMinor, lines, currency, basis } = priced();
		expect(totalMinor).toBe(49_500);
		expect(lines.reduce((sum, one) => sum + one.amountMinor, 0)).toBe(49_500);
		expect(currency).toBe("GBP");
		expect(basis).toBe("invented");
	});
	test("names only what costs something", () => {
		const { lines } = priced({ layout: "one-piece", splice: "plain" });
		expect(lines.map(({ part }) => part)).toEqual([
			"base",
			"shaft-wood",
			"butt-wood",
		]);
	});
	test("adds weight, decoration and an end piece, veneers on each set of flats", () => {
		const veneer = { wood: "sugar-maple", thicknessMm: 0.6 } as const;
		const { lines, totalMinor } = priced(
			{
				splicing: {
					points: { veneers: [veneer, veneer] },
					pointsBetween: { wood: "indian-rosewood" },
					frontWedge: { wood: "sugar-maple", veneers: [veneer] },
					allRound: { wood: "sugar-maple", count: 4 },
				},
				fittings: { endPieceMm: 150 },
			},
			true,
		);
		const of = (part: string) => lines.find((line) => line.part === part);
		expect(of("veneers")).toMatchObject({ count: 3, amountMinor: 6000 });
		expect(of("all-round-wedges")).toMatchObject({
			count: 4,
			amountMinor: 6000,
		});
		expect(totalMinor).toBe(49_500 + 2000 + 9000 + 3000 + 6000 + 6000 + 4000);
	});
	test("stays whole, its band round it, for any list of whole amounts", () => {
		fc.assert(
			fc.property(
				fc.nat({ max: 1_000_000 }),
				fc.nat({ max: 1_000_000 }),
				fc.double({ min: 0, max: 1, noNaN: true }),
				(baseMinor, weightMinor, spreadFraction) => {
					const { totalMinor, lowMinor, highMinor } = priced({}, true, {
						...list,
						baseMinor,
						addedWeightMinor: weightMinor,
						spreadFraction,
					});
					for (const one of [totalMinor, lowMinor, highMinor])
						expect(Number.isInteger(one)).toBe(true);
					expect(lowMinor).toBeLessThanOrEqual(totalMinor);
					expect(highMinor).toBeGreaterThanOrEqual(totalMinor);
				},
			),
		);
	});
	test("a wood without an amount is refused by name", () => {
		const found = estimatePrice({
			list: { ...list, buttWoodMinor: {}, shaftWoodMinor: {} },
			request: SNOOKER_REQUEST,
			hasAddedWeight: false,
		});
		if (found.ok) throw new Error("expected a refusal");
		expect(found.refusals).toMatchObject([
			{ code: "not-in-price-list", field: "shaftWood", value: "white-ash" },
			{ code: "not-in-price-list", field: "buttWood", value: "gaboon-ebony" },
		]);
	});
	test("broken and negative amounts are refused with their place", () => {
		const flawed: PriceList = {
			...list,
			baseMinor: 10.5,
			spliceMinor: { ...list.spliceMinor, plain: -1 },
			spreadFraction: 2,
			minorPerUnit: 0,
		};
		expect(
			priceListRefusals(flawed).map(({ field, code }) => [field, code]),
		).toEqual([
			["priceList.baseMinor", "not-whole"],
			["priceList.spliceMinor.plain", "out-of-range"],
			["priceList.spreadFraction", "out-of-range"],
			["priceList.minorPerUnit", "out-of-range"],
		]);
	});
});

// Common practice of the trade, no source: what costs more than what.
describe("the invented list keeps the trade's order", () => {
	test("hand over machine over plain splice", () => {
		const at = (splice: CueRequest["splice"]) => priced({ splice }).totalMinor;
		expect(at("hand-four-point")).toBeGreaterThan(at("machine-four-point"));
		expect(at("machine-four-point")).toBeGreaterThan(at("plain"));
	});
	test("ebony over rosewood over walnut", () => {
		const at = (buttWood: CueRequest["buttWood"]) =>
			priced({ buttWood }).totalMinor;
		expect(at("gaboon-ebony")).toBeGreaterThan(at("indian-rosewood"));
		expect(at("indian-rosewood")).toBeGreaterThan(at("black-walnut"));
	});
	test("has an amount for every wood of a butt, and every wood made for shafts", () => {
		for (const { id, uses } of Object.values(WOODS)) {
			if (uses.includes("shaft"))
				expect(list.shaftWoodMinor[id], id).toBeDefined();
			if (uses.includes("butt"))
				expect(list.buttWoodMinor[id], id).toBeDefined();
		}
	});
});
