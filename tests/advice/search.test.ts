import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { candidateAt } from "@/lib/advice/axes";
import { CRITERION_COUNT, CRITERION_IDS } from "@/lib/advice/criteria";
import { evaluator } from "@/lib/advice/evaluator";
import type { FittingInput } from "@/lib/advice/input";
import { STEP } from "@/lib/advice/judgement";
import { seededUniform } from "@/lib/advice/normal";
import { searchCues } from "@/lib/advice/search";
import { must } from "@/lib/numerics/outcome";
import { countsText } from "@/lib/present/search-view";
import {
	gramsToOunces,
	inchesToMm,
	mmToInches,
	ouncesToGrams,
} from "@/lib/units/quantity";
import { anyInput, unsaid, withStature } from "../support/inputs";
import { METRIC } from "../support/readers";
import { searched } from "./support";

const best = (input: FittingInput, options = {}) => {
	const [first] = searched(input, options).report.options;
	if (!first) throw new Error("no cue");
	return first;
};

describe("wishes that fix nearly everything", () => {
	const nearly = {
		lengthMm: 1471,
		buttDiameterMm: 29,
		tipDiameterMm: 9.5,
		buttWood: "indian-rosewood",
		splice: "hand-four-point",
		layout: "three-quarter",
		taperShape: "even",
	} as const;
	test("leave 50,000 candidates and more, and a cue on the bench's steps", () => {
		const { counts, options } = searched(
			withStature(1750, { wishes: nearly }),
			{ candidateCount: 90_000 },
		).report;
		expect(counts.candidates).toBeGreaterThanOrEqual(50_000);
		expect(counts.isEverythingFixed).toBe(false);
		expect(options).toHaveLength(1);
		const massG = options[0]?.wantedMassG ?? 0;
		expect(
			Math.abs(massG / STEP.massG - Math.round(massG / STEP.massG)),
		).toBeLessThan(1e-9);
	}, 30_000);
	test("all four figures fixed is said, with what is left to look through", () => {
		const { counts } = searched(
			withStature(1750, { wishes: { ...nearly, massG: 510 } }),
		).report;
		expect(counts.isEverythingFixed).toBe(true);
		expect(counts.candidates).toBeLessThan(50);
		expect(countsText({ counts }, METRIC)).toMatch(/are all fixed by wishes/);
	}, 30_000);
});

// Common practice of the trade, no source: what a search without wishes must come near.
describe("a snooker player with no wishes gets what the trade would make", () => {
	const whole = { candidateCount: 90_000 };
	test("1.75 m: 57–58 in, 17–18.5 oz, 9–10 mm", () => {
		const { request, results } = best(withStature(1750), whole);
		const inches = mmToInches(request.lengthMm);
		expect(inches).toBeGreaterThanOrEqual(57);
		expect(inches).toBeLessThanOrEqual(58);
		const ounces = gramsToOunces(results.weight.value);
		expect(ounces).toBeGreaterThanOrEqual(17);
		expect(ounces).toBeLessThanOrEqual(18.5);
		expect(request.tipDiameterMm).toBeGreaterThanOrEqual(9);
		expect(request.tipDiameterMm).toBeLessThanOrEqual(10);
	}, 30_000);
	test("1.95 m: at least 58.5 in", () => {
		expect(
			mmToInches(best(withStature(1950), whole).request.lengthMm),
		).toBeGreaterThanOrEqual(58.5);
	}, 30_000);
	test("a child of 1.25 m: at most 48 in", () => {
		const child = withStature(1250, {
			player: { statureMm: 1250, ageYears: 8 },
		});
		expect(mmToInches(best(child, whole).request.lengthMm)).toBeLessThanOrEqual(
			48,
		);
	}, 30_000);
});

describe("a search", () => {
	test("tries at least 50,000 candidates where no wish stands in the way", () => {
		for (const gameId of [
			"snooker",
			"english-eight-ball",
			"american-pool",
			"carom",
		] as const) {
			const { report } = searched(withStature(1720, { stance: { gameId } }), {
				candidateCount: 90_000,
				optionCount: 1,
			});
			expect(report.counts.candidates).toBeGreaterThanOrEqual(90_000);
			expect(report.counts.buildable).toBeGreaterThanOrEqual(40_000);
			expect(report.counts.acceptable).toBeGreaterThan(1000);
			expect(report.counts.nonDominated).toBeLessThan(report.counts.acceptable);
		}
	}, 60_000);

	test("gives the same answer again, as plain JSON", () => {
		const once = searched(withStature(1700)).report;
		expect(searched(withStature(1700)).report).toEqual(once);
		const back = JSON.parse(JSON.stringify(once));
		expect(back.options).toEqual(
			JSON.parse(JSON.stringify(once.options)) as unknown,
		);
		expect(JSON.stringify(once)).not.toMatch(/null,"high":null.*NaN/);
		for (const option of once.options)
			for (const id of CRITERION_IDS)
				expect(Number.isFinite(option.results[id].value)).toBe(true);
	});

	test("recommends on the bench's steps, and says what they cost", () => {
		const { report, refined } = searched(withStature(1810));
		for (const { request, wantedMassG } of report.options) {
			for (const [value, step] of [
				[request.lengthMm, STEP.lengthMm],
				[request.buttDiameterMm, STEP.diameterMm],
				[request.tipDiameterMm, STEP.diameterMm],
				[wantedMassG ?? 0, STEP.massG],
			] as const)
				expect(Math.abs(value / step - Math.round(value / step))).toBeLessThan(
					1e-6,
				);
		}
		for (const one of refined) {
			expect(one.snappingCost).toBeGreaterThanOrEqual(0);
			expect(one.snappingCost).toBeCloseTo(
				one.continuous.overall - one.snapped.overall,
				12,
			);
			expect(one.snappingCostBy).toHaveLength(CRITERION_COUNT);
		}
	});

	test("refines to no worse than the best it scanned", () => {
		const { pool, refined } = searched(withStature(1660));
		const scanned = Math.max(...pool.overall);
		expect(refined[0]?.continuous.overall).toBeGreaterThanOrEqual(scanned);
	});

	test("keeps rows that are the candidates they say", () => {
		const { pool, front, prepared } = searched(withStature(1780));
		const evaluate = evaluator(prepared.setting);
		for (let i = 0; i < front.length; i += 17) {
			const k = front[i] as number;
			const { row } = must(
				evaluate(candidateAt(pool.axes, pool.place[k] as number)),
			);
			for (let j = 0; j < CRITERION_COUNT; j++) {
				const kept = pool.measures[k * CRITERION_COUNT + j] as number;
				expect(Math.abs(kept - (row[j] as number))).toBeLessThan(
					1e-6 * Math.abs(kept) + 1e-4,
				);
			}
		}
	});

	test("names options that differ in wood, splice or layout", () => {
		const kinds = searched(withStature(1750)).report.options.map(
			({ request: { buttWood, splice, layout } }) =>
				[buttWood, splice, layout].join(),
		);
		expect(new Set(kinds).size).toBe(kinds.length);
		expect(kinds.length).toBe(4);
	});

	test("works for any fitting the forms let through, or says why not", () => {
		fc.assert(
			fc.property(anyInput, (input) => {
				const found = searchCues(input, {
					uniform: seededUniform(2),
					candidateCount: 500,
					optionCount: 1,
					drawCount: 10,
				});
				if (!found.ok) {
					expect(found.refusals.length).toBeGreaterThan(0);
					return;
				}
				const { options, counts } = found.value.report;
				expect(options).toHaveLength(1);
				expect(counts.acceptable).toBeGreaterThan(0);
				expect(options[0]?.overall).toBeGreaterThan(0);
				expect(options[0]?.rules.every(({ ok }) => ok)).toBe(true);
			}),
			{ numRuns: 25 },
		);
	}, 120_000);
});

describe("wishes are hard", () => {
	test("every option has what was fixed", () => {
		const wishes = {
			lengthMm: inchesToMm(58),
			massG: ouncesToGrams(18.5),
			buttDiameterMm: 29.3,
			tipDiameterMm: 9.4,
			taperShape: "straight",
			splice: "hand-four-point",
		} as const;
		const { report } = searched({ ...withStature(1750), wishes });
		for (const { request, results } of report.options) {
			expect(request).toMatchObject({
				lengthMm: wishes.lengthMm,
				buttDiameterMm: 29.3,
				tipDiameterMm: 9.4,
				taperShape: "straight",
				splice: "hand-four-point",
			});
			expect(results.weight.value).toBeCloseTo(wishes.massG, 4);
		}
		const roles = Object.fromEntries(
			report.criteria.map(({ id, role }) => [id, role]),
		);
		expect(roles).toMatchObject({
			closure: "decided",
			reach: "decided",
			tip: "decided",
		});
	});
	test("the rules of the game hold without being asked for", () => {
		const heavy = best({
			player: { statureMm: 2200 },
			stance: { gameId: "american-pool" },
			presentCue: { massG: 760, likes: ["weight"] },
			wishes: {},
		});
		expect(heavy.results.weight.value).toBeLessThanOrEqual(708.75);
	});
	test("a price limit and a case are never passed", () => {
		const { report } = searched(withStature(1750), {
			maxPriceMinor: 36_000,
			longestPieceMm: 1060,
		});
		for (const { price, results } of report.options) {
			expect(price.totalMinor).toBeLessThanOrEqual(36_000);
			expect(results.carrying.value).toBeLessThanOrEqual(1060);
		}
	});
});

describe("weights and doctrine are the user's", () => {
	test("more weight on deflection brings a slimmer tip", () => {
		const tip = (deflection: number) =>
			best(withStature(1750), { weights: { deflection } }).betweenSteps
				.tipDiameterMm;
		expect(tip(8)).toBeLessThan(tip(0));
	});
	test("steadier asks for more inertia than livelier", () => {
		const inertia = (steadiness: "steadier" | "livelier") =>
			best(withStature(1750), {
				doctrine: { steadiness },
				weights: { steadiness: 5 },
			}).results.steadiness.value;
		expect(inertia("steadier")).toBeGreaterThan(inertia("livelier"));
	});
	test("a stiffer cue gives less than a softer one", () => {
		const give = (stiffness: "stiffer" | "softer") =>
			best(withStature(1750), {
				doctrine: { stiffness },
				weights: { stiffness: 5 },
			}).results.stiffness.value;
		expect(give("stiffer")).toBeLessThan(give("softer"));
	});
	test("what is of no matter takes no part", () => {
		const { report } = searched(withStature(1750), {
			doctrine: { deflection: "no-matter" },
			weights: { finish: 0 },
		});
		for (const id of ["deflection", "finish"] as const)
			expect(report.criteria.find((one) => one.id === id)).toMatchObject({
				role: "left-out",
				weight: 0,
			});
	});
	test("scaling every weight alike changes nothing", () => {
		const weights = Object.fromEntries(
			searched(withStature(1750)).report.criteria.map(({ id, weight }) => [
				id,
				weight * 3,
			]),
		);
		const once = best(withStature(1750));
		const scaled = best(withStature(1750), { weights });
		expect(scaled.request).toEqual(once.request);
		expect(scaled.overall).toBeCloseTo(once.overall, 9);
	});
});

describe("limits that have to give", () => {
	test("a hand no butt of the bench suits still gets the nearest, and is told", () => {
		const { report } = searched({
			...unsaid,
			player: {
				statureMm: 1850,
				gripCircleReadingsMm: [44, 44, 44],
			},
		});
		expect(report.softened).toMatchObject([
			{ criterion: "closure", side: "low" },
		]);
		const [softened] = report.softened;
		expect(softened?.limitTo).toBeLessThan(softened?.limitFrom ?? 0);
		expect(report.options[0]?.request.buttDiameterMm).toBeGreaterThan(30);
	});
	test("as a rule nothing gives", () => {
		expect(searched(withStature(1750)).report.softened).toEqual([]);
	});
});
