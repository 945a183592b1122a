import { expect, test } from "vitest";
import { recommend } from "@/lib/advice/recommend";
import { type SpecContent, specFrom } from "@/lib/advice/spec";
import { specToday } from "@/lib/advice/today";
import { must } from "@/lib/numerics/outcome";
import { specChanges } from "@/lib/present/spec-changes";
import { withStature } from "../support/inputs";
import { TRADE } from "../support/readers";

const recommended = must(recommend(withStature(1750)));
const stored = must(specFrom(recommended, recommended.search));

test("the models a spec was made with have nothing to add", () => {
	expect(must(specToday(stored))).toBeNull();
});

test("other models are asked again, and what differs is told figure by figure", () => {
	const older: SpecContent = {
		...stored,
		modelVersion: "2025.1",
		figures: {
			...stored.figures,
			length: {
				...stored.figures.length,
				value: stored.figures.length.value - 25.4,
			},
		},
	};
	const today = must(specToday(older));
	if (today === null) throw new Error("expected today's spec");
	expect(today).toEqual(stored);
	expect(specChanges(older, today, TRADE).map(({ label }) => label)).toEqual([
		"Length",
		"Models",
	]);
});
