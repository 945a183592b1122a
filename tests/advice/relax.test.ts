import { describe, expect, test } from "vitest";
import type { FittingInput } from "@/lib/advice/input";
import { STEP } from "@/lib/advice/judgement";
import { seededUniform } from "@/lib/advice/normal";
import { relaxationsFor } from "@/lib/advice/relax";
import { type SearchOptions, searchCues } from "@/lib/advice/search";
import { inchesToMm } from "@/lib/units/quantity";
import { withStature } from "../support/inputs";

const quick: SearchOptions = {
	uniform: seededUniform(1),
	candidateCount: 2000,
	optionCount: 1,
	drawCount: 10,
};
const works = (input: FittingInput, more: Partial<SearchOptions> = {}) =>
	searchCues(input, { ...quick, ...more }).ok;
const wishing = (wishes: FittingInput["wishes"]): FittingInput =>
	withStature(1750, { wishes });

describe("what to relax where nothing can be built", () => {
	test("a weight under the wood's own: the least that it can turn out at, or another wood", () => {
		const wishes = {
			massG: 305,
			buttWood: "snakewood",
			buttDiameterMm: 31,
			lengthMm: inchesToMm(60),
			splice: "hand-four-point",
			layout: "three-quarter",
			taperShape: "full-forward",
		} as const;
		const input = wishing(wishes);
		const found = searchCues(input, quick);
		if (found.ok) throw new Error("expected a refusal");
		expect(found.refusals[0]).toMatchObject({
			code: "nothing-can-be-built",
		});
		const mass = found.refusals.find(({ field }) => field === "wishes.massG");
		const to = Number(mass?.facts?.to);
		expect(to).toBeGreaterThan(305);
		expect(mass?.min).toBe(to);
		// Enough, and no step less is.
		expect(works(wishing({ ...wishes, massG: to }))).toBe(true);
		expect(works(wishing({ ...wishes, massG: to - STEP.massG }))).toBe(false);
		const felt = found.refusals
			.slice(1)
			.map(({ facts }) => Number(facts?.feltSteps));
		expect([...felt].sort((a, b) => a - b)).toEqual(felt);
	}, 60_000);

	test("a weight the bores cannot hold: the most they can", () => {
		const wishes = {
			massG: 1000,
			buttDiameterMm: 27,
			buttWood: "black-walnut",
		} as const;
		const found = relaxationsFor({ input: wishing(wishes), choices: {} });
		const mass = found.find(({ field }) => field === "wishes.massG");
		const to = Number(mass?.to);
		expect(to).toBeLessThan(1000);
		expect(mass?.by).toBeCloseTo(to - 1000, 9);
		expect(works(wishing({ ...wishes, massG: to }))).toBe(true);
	}, 60_000);

	test("a length under the rule: the rule's, on a bench step", () => {
		const [only, ...others] = relaxationsFor({
			input: wishing({ lengthMm: 800 }),
			choices: {},
		});
		expect(others).toEqual([]);
		expect(only).toMatchObject({ field: "wishes.lengthMm", from: 800 });
		expect(Number(only?.to)).toBeGreaterThanOrEqual(914);
		expect(Number(only?.to)).toBeLessThan(914 + STEP.lengthMm);
	}, 30_000);

	test("a price nothing comes under: the least anything costs", () => {
		const maxPriceMinor = 15_000;
		const input = withStature(1750);
		expect(works(input, { maxPriceMinor })).toBe(false);
		const [only] = relaxationsFor({ input, choices: { maxPriceMinor } });
		const to = Number(only?.to);
		expect(only?.field).toBe("maxPriceMinor");
		expect(works(input, { maxPriceMinor: to })).toBe(true);
		expect(works(input, { maxPriceMinor: to - 1 })).toBe(false);
	}, 30_000);

	test("a case no piece fits: the shortest that can be made, or another layout", () => {
		const input = wishing({ layout: "one-piece" });
		const found = relaxationsFor({ input, choices: { longestPieceMm: 1100 } });
		expect(found.map(({ field }) => field).sort()).toEqual([
			"longestPieceMm",
			"wishes.layout",
		]);
		const layout = found.find(({ field }) => field === "wishes.layout");
		expect(layout).toMatchObject({ to: "three-quarter", by: null });
		expect(
			works(wishing({ layout: "three-quarter" }), { longestPieceMm: 1100 }),
		).toBe(true);
	}, 30_000);
});
