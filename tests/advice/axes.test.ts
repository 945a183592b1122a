import { describe, expect, test } from "vitest";
import {
	type Axes,
	axesFor,
	candidateAt,
	candidateCount,
	isEverythingFixed,
} from "@/lib/advice/axes";
import {
	checkedCatalogue,
	inventedCatalogue,
	withWishes,
} from "@/lib/advice/catalogue";
import type { Wishes } from "@/lib/advice/input";
import { STEP } from "@/lib/advice/judgement";
import { limitsFor, naturalMeetsWish } from "@/lib/advice/limits";
import { scan } from "@/lib/advice/scan";
import { designFrom } from "@/lib/cue/template";
import { withStature } from "../support/inputs";
import { prepared } from "./support";

const one = prepared(withStature(1750));
const axes = axesFor({ ...one, wantedCount: 20_000 });

describe("axes", () => {
	test("have as many candidates as wanted, on the bench's steps, rising", () => {
		expect(candidateCount(axes)).toBeGreaterThanOrEqual(20_000);
		for (const [values, step] of [
			[axes.lengthMm, STEP.lengthMm],
			[axes.buttDiameterMm, STEP.diameterMm],
			[axes.tipDiameterMm, STEP.diameterMm],
			[axes.massG, STEP.massG],
			[axes.forwardMm, STEP.balanceMm],
		] as const) {
			values.forEach((value, i) => {
				expect(Math.abs(value / step - Math.round(value / step))).toBeLessThan(
					1e-9,
				);
				if (i > 0) expect(value).toBeGreaterThan(values[i - 1] ?? 0);
			});
		}
		expect(axes.forwardMm[0]).toBe(0);
	});
	test("span the need on both sides", () => {
		const need = one.needs.length.exact;
		expect(axes.lengthMm[0]).toBeLessThan(need);
		expect(axes.lengthMm.at(-1)).toBeGreaterThan(need);
	});
	test("are one value where the customer fixed it", () => {
		const wished = prepared(
			withStature(1750, { wishes: { lengthMm: 1471, tipDiameterMm: 9.3 } }),
		);
		const fixed = axesFor({ ...wished, wantedCount: 50_000 });
		expect(fixed.lengthMm).toEqual([1471]);
		expect(fixed.tipDiameterMm).toEqual([9.3]);
		expect(candidateCount(fixed)).toBeGreaterThanOrEqual(50_000);
	});
	test("stop at the bench's steps where wishes fix every length, diameter and weight", () => {
		const wishes = {
			lengthMm: 1471,
			buttDiameterMm: 29,
			tipDiameterMm: 9.5,
			massG: 510,
			buttWood: "indian-rosewood",
			splice: "plain",
			layout: "centre",
			taperShape: "even",
		} as const;
		const few = axesFor({
			...prepared(withStature(1750, { wishes })),
			wantedCount: 50_000,
		});
		expect(candidateCount(few)).toBeLessThan(50);
		expect(isEverythingFixed(few)).toBe(true);
	});
	describe("with one figure free, whatever else is fixed, are parts of the bench's steps", () => {
		const fixed = {
			lengthMm: 1471,
			buttDiameterMm: 29,
			tipDiameterMm: 9.5,
			massG: 510,
		} as const;
		const figures = Object.keys(fixed) as (keyof typeof fixed)[];
		const subsets = Array.from({ length: 15 }, (_, mask) =>
			figures.filter((__, i) => (mask >> i) % 2 === 1),
		);
		const choices = {
			buttWood: "indian-rosewood",
			shaftWood: "white-ash",
			splice: "hand-four-point",
			layout: "three-quarter",
			taperShape: "even",
		} as const;
		test.each(
			subsets.map((names) => [names.join(", ") || "nothing", names] as const),
		)("fixed: %s", (_, names) => {
			const wishes: Wishes = {
				...choices,
				...Object.fromEntries(names.map((name) => [name, fixed[name]])),
			};
			const made = axesFor({
				...prepared(withStature(1750, { wishes })),
				wantedCount: 50_000,
			});
			expect(isEverythingFixed(made)).toBe(false);
			expect(candidateCount(made)).toBeGreaterThanOrEqual(50_000);
			expect(candidateCount(made)).toBeLessThan(150_000);
			for (const [values, step, wish] of [
				[made.lengthMm, STEP.lengthMm, wishes.lengthMm],
				[made.buttDiameterMm, STEP.diameterMm, wishes.buttDiameterMm],
				[made.tipDiameterMm, STEP.diameterMm, wishes.tipDiameterMm],
				[made.massG, STEP.massG, wishes.massG],
				[made.forwardMm, STEP.balanceMm, undefined],
			] as const) {
				if (wish !== undefined) {
					expect(values).toEqual([wish]);
					continue;
				}
				const [low = 0] = values;
				const high = values.at(-1) ?? 0;
				const steps = Math.round((high - low) / step);
				// Rising, and never coarser than it need be where another is finer than the bench.
				values.forEach((value, i) => {
					if (i > 0) expect(value).toBeGreaterThan(values[i - 1] ?? 0);
				});
				if (values.length > steps + 1) {
					const parts = (values.length - 1) / steps;
					expect(Number.isInteger(parts)).toBe(true);
					values.forEach((value, i) => {
						expect(value).toBeCloseTo(low + (i * step) / parts, 9);
					});
				}
			}
		});
	});
	test("number every candidate once, and refuse places beyond", () => {
		const small: Axes = {
			...axes,
			lengthMm: [1450, 1460],
			buttDiameterMm: [28, 29],
			tipDiameterMm: [9.5],
			massG: [500, 510],
			forwardMm: [0, 12.7],
		};
		const count = candidateCount(small);
		const seen = new Set(
			Array.from({ length: count }, (_, i) =>
				JSON.stringify(candidateAt(small, i)),
			),
		);
		expect(seen.size).toBe(count);
		expect(() => candidateAt(small, count)).toThrow(/no candidate/);
		expect(() => candidateAt(small, -1)).toThrow();
	});
});

describe("a scan", () => {
	const small: Axes = {
		...axes,
		lengthMm: axes.lengthMm.slice(0, 2),
		buttDiameterMm: axes.buttDiameterMm.slice(-2),
		tipDiameterMm: axes.tipDiameterMm.slice(0, 1),
	};
	test("visits rising places, counts what it visits, each a cue that can be designed", () => {
		let last = -1;
		let visited = 0;
		const built = scan({
			...one,
			axes: small,
			visit: (place, row) => {
				expect(place).toBeGreaterThan(last);
				last = place;
				visited++;
				if (visited % 97 === 0) {
					const { request, massG } = candidateAt(small, place);
					expect(designFrom(request).ok).toBe(true);
					if (massG !== null) expect(row[2]).toBeCloseTo(massG, 6);
					expect(row.every(Number.isFinite)).toBe(true);
				}
			},
		});
		expect(built).toBe(visited);
		expect(built).toBeGreaterThan(100);
	});
	test("ends early when enough was found", () => {
		let visited = 0;
		scan({
			...one,
			axes: small,
			enough: 1,
			visit: () => {
				visited++;
			},
		});
		expect(visited).toBeLessThan(200);
	});
	test("lets nothing pass a hard limit", () => {
		const visitAll = (limits: typeof one.limits) => {
			let count = 0;
			scan({
				...one,
				axes: small,
				limits,
				visit: () => {
					count++;
				},
			});
			return count;
		};
		expect(visitAll({ ...one.limits, lengthMinMm: 2000 })).toBe(0);
		expect(visitAll({ ...one.limits, massMaxG: 100 })).toBe(0);
		expect(visitAll({ ...one.limits, tipMaxMm: 5 })).toBe(0);
		expect(visitAll({ ...one.limits, priceMaxMinor: 100 })).toBe(0);
		expect(visitAll({ ...one.limits, pieceMaxMm: 100 })).toBe(0);
		const short = visitAll({ ...one.limits, pieceMaxMm: 1100 });
		expect(short).toBeGreaterThan(0);
		expect(short).toBeLessThan(visitAll(one.limits));
	});
});

test("wood passes for a wished weight when it may turn out so light, and only then", () => {
	expect(naturalMeetsWish(500, 20, null)).toBe(true);
	expect(naturalMeetsWish(500, 20, 470)).toBe(true);
	expect(naturalMeetsWish(500, 20, 460)).toBe(false);
	expect(naturalMeetsWish(500, 20, 510)).toBe(false);
});

test("limits are the game's and the customer's", () => {
	expect(
		limitsFor({ gameId: "american-pool", wishes: { massG: 500 } }),
	).toMatchObject({
		lengthMinMm: 1016,
		massMaxG: 708.75,
		tipMaxMm: 14,
		wishedMassG: 500,
	});
	expect(limitsFor({ gameId: "carom", wishes: {} })).toMatchObject({
		lengthMinMm: 0,
		massMaxG: Number.POSITIVE_INFINITY,
		wishedMassG: null,
	});
});

describe("a catalogue", () => {
	const plain = inventedCatalogue("snooker");
	test("keeps a wish even where it is not offered, ranked in the middle", () => {
		const wished = withWishes(plain, {
			buttWood: "snakewood",
			layout: "centre",
		});
		expect(wished.buttWoods).toEqual([{ id: "snakewood", tier: 1 }]);
		expect(wished.layouts).toEqual(["centre"]);
		expect(wished.splices).toEqual(plain.splices);
		const thick = withWishes(plain, { buttDiameterMm: 33, tipDiameterMm: 9 });
		expect(thick.buttDiameterMm).toEqual([plain.buttDiameterMm[0], 33]);
		expect(thick.tipDiameterMm).toEqual(plain.tipDiameterMm);
	});
	test("that offers nothing, or wood for the wrong part, is refused", () => {
		const found = checkedCatalogue({
			...plain,
			layouts: [],
			shaftWoods: ["gaboon-ebony"],
			lengthMm: [1500, 1400],
		});
		if (found.ok) throw new Error("expected a refusal");
		expect(found.refusals.map(({ field }) => field)).toEqual([
			"catalogue.layouts",
			"catalogue.shaftWoods",
			"catalogue.lengthMm.0",
		]);
	});
	test("of every game is one the project can compute", () => {
		for (const gameId of [
			"snooker",
			"english-eight-ball",
			"american-pool",
			"carom",
		] as const)
			expect(checkedCatalogue(inventedCatalogue(gameId)).ok).toBe(true);
	});
});
