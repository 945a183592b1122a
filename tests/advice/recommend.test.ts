import { describe, expect, test } from "vitest";
import { advise } from "@/lib/advice/advise";
import { choiceOf, choicesFrom, recommend } from "@/lib/advice/recommend";
import { must } from "@/lib/numerics/outcome";
import { withStature } from "../support/inputs";

const input = withStature(1750);

describe("recommend", () => {
	const recommended = must(recommend(input));
	const [best] = recommended.search.options;
	if (best === undefined) throw new Error("no option");

	test("advises the best cue found, the models one at a time agreeing with the search's tables", () => {
		expect(recommended.build.request).toEqual(best.request);
		expect(recommended.isBuildable).toBe(true);
		expect(recommended.balance.exact).toBeCloseTo(
			best.results.balance.value,
			6,
		);
		const plan = must(recommended.build.plan);
		expect(plan.metalMassG).toBeCloseTo(best.plan.metalMassG, 4);
	});
	test("keeps the needs: only what is built is picked", () => {
		const plain = must(advise(input));
		expect(recommended.length.exact).toBe(plain.length.exact);
		expect(recommended.length.evidence).toEqual(plain.length.evidence);
		expect(must(advise(input, choiceOf(best))).build).toEqual(
			recommended.build,
		);
	});
	test("the same input gives the same answer, to the last digit", () => {
		expect(JSON.stringify(must(recommend(input)))).toBe(
			JSON.stringify(recommended),
		);
	});
	test("looks at 50,000 candidates or more", () => {
		expect(recommended.search.counts.candidates).toBeGreaterThanOrEqual(50_000);
	});
	test("a ceiling on price is kept, and a criterion that does not count takes no part", () => {
		const capped = must(
			recommend({
				...input,
				priorities: { maxPriceMinor: 30_000, none: ["finish"] },
			}),
		);
		for (const { price } of capped.search.options)
			expect(price.totalMinor).toBeLessThanOrEqual(30_000);
		expect(
			capped.search.criteria.find(({ id }) => id === "finish")?.weight,
		).toBe(0);
	});
});

test("what counts more and not at all counts not at all", () => {
	expect(choicesFrom({ more: ["price"], none: ["price"] }).weights).toEqual({
		price: 0,
	});
});
