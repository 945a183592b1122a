import { expect, test } from "vitest";
import { advise } from "@/lib/advice/advise";
import { recommend } from "@/lib/advice/recommend";
import { specFrom } from "@/lib/advice/spec";
import { must } from "@/lib/numerics/outcome";
import { unsaid, withStature } from "../support/inputs";

test("a spec is plain JSON and comes back the same", () => {
	const recommended = must(recommend(withStature(1750)));
	const spec = must(specFrom(recommended, recommended.search));
	expect(JSON.parse(JSON.stringify(spec))).toEqual(spec);
	expect(spec.stations.length).toBeGreaterThan(10);
});

test("what cannot be built is not frozen", () => {
	const refused = specFrom(
		must(advise({ ...unsaid, wishes: { massG: 305, buttWood: "snakewood" } })),
		null,
	);
	expect(refused).toMatchObject({
		ok: false,
		refusals: [{ code: "weight-below-natural" }],
	});
});

test("what breaks a rule of the game is not frozen, naming rule, value and bound", () => {
	const advice = must(
		advise({
			...unsaid,
			stance: { gameId: "american-pool" },
			wishes: { lengthMm: 950, massG: 500 },
		}),
	);
	expect(specFrom(advice, null)).toMatchObject({
		ok: false,
		refusals: [
			{
				code: "rule-broken",
				value: 950,
				min: 1016,
				facts: { rule: "cue-length" },
			},
		],
	});
});

test("the sheet's cautions name what harms and what is protected", () => {
	const codes = (buttWood: "indian-rosewood" | "black-walnut") =>
		must(
			specFrom(must(advise(withStature(1750, { wishes: { buttWood } }))), null),
		).workshopCautions.map(({ code }) => code);
	expect(codes("indian-rosewood")).toEqual(
		expect.arrayContaining([
			"wood-dust",
			"wood-dust-sensitiser",
			"turning",
			"adhesives",
			"protected-wood",
		]),
	);
	expect(codes("black-walnut")).not.toContain("protected-wood");
});
