import { describe, expect, test } from "vitest";
import {
	CAUSES,
	type Cause,
	COMPARED_FIGURES,
	type Compared,
	type FigureDifferences,
	figureDifferences,
} from "@/lib/advice/differences";
import type { FittingInput } from "@/lib/advice/input";
import { recommend } from "@/lib/advice/recommend";
import { type SpecContent, specFrom } from "@/lib/advice/spec";
import { must } from "@/lib/numerics/outcome";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import { offerOf } from "@/lib/workshop/settings";
import { withStature } from "../support/inputs";

const workshop = offerOf(DEFAULT_SETTINGS);
const short = withStature(1550, { workshop });
const fitting = (input: FittingInput): Compared => ({ kind: "fitting", input });
const spec = (content: SpecContent): Compared => ({ kind: "spec", content });
const advice = must(recommend(short));
const stored = must(specFrom(advice, advice.search));

/** The parts that are not nil, after checking that all of them are the whole difference. */
function causesOf(found: FigureDifferences): Cause[] {
	for (const figure of COMPARED_FIGURES) {
		const sum = CAUSES.reduce(
			(total, cause) => total + found.parts[cause][figure],
			0,
		);
		expect(sum, figure).toBeCloseTo(found.other[figure] - found.one[figure], 9);
	}
	return CAUSES.filter((cause) =>
		COMPARED_FIGURES.some(
			(figure) => Math.abs(found.parts[cause][figure]) > 1e-9,
		),
	);
}

/** Made by models that advised an inch less and ten grams more. */
const older: SpecContent = {
	...stored,
	modelVersion: "2025.1",
	figures: {
		...stored.figures,
		length: {
			...stored.figures.length,
			value: stored.figures.length.value - 25.4,
		},
		mass: { ...stored.figures.mass, value: stored.figures.mass.value + 10 },
	},
	search: null,
};

/** Makes snooker shafts of the wood it otherwise keeps for pool. */
const otherWorkshop = {
	...workshop,
	games: {
		...workshop.games,
		snooker: {
			...workshop.games.snooker,
			shaftWoods: workshop.games["american-pool"].shaftWoods,
		},
	},
};

describe("one kind of change is one part, all others nil", () => {
	test("nothing changed", () => {
		const found = must(figureDifferences(spec(stored), fitting(short)));
		expect(causesOf(found)).toEqual([]);
	});

	test("the models", () => {
		const found = must(figureDifferences(spec(older), spec(stored)));
		expect(causesOf(found)).toEqual(["model"]);
		expect(found.parts.model.length).toBeCloseTo(25.4, 9);
		expect(found.parts.model.mass).toBeCloseTo(-10, 9);
		const back = must(figureDifferences(spec(stored), spec(older)));
		expect(causesOf(back)).toEqual(["model"]);
		expect(back.parts.model.length).toBeCloseTo(-25.4, 9);
	});

	test("the body: what the advice alone says of it", () => {
		const tall: FittingInput = { ...short, player: { statureMm: 1850 } };
		const found = must(figureDifferences(fitting(short), fitting(tall)));
		expect(causesOf(found)).toEqual(["grew"]);
		expect(found.parts.grew.length).toBeCloseTo(
			must(recommend(tall)).length.value - advice.length.value,
			9,
		);
		expect(found.parts.grew.length).toBeGreaterThan(10);
	});

	test("the wishes", () => {
		const wishing: FittingInput = {
			...short,
			wishes: { tipDiameterMm: stored.figures.tip.value + 0.5 },
		};
		const found = must(figureDifferences(spec(stored), fitting(wishing)));
		expect(causesOf(found)).toEqual(["wished"]);
		expect(found.parts.wished.tip).toBeCloseTo(0.5, 9);
	});

	test("the workshop’s settings", () => {
		const elsewhere: FittingInput = { ...short, workshop: otherWorkshop };
		const found = must(figureDifferences(fitting(short), fitting(elsewhere)));
		expect(causesOf(found)).toEqual(["settings"]);
	});

	test("another cue picked than the best", () => {
		const picked: SpecContent = {
			...stored,
			figures: {
				...stored.figures,
				tip: { ...stored.figures.tip, value: stored.figures.tip.value - 0.25 },
			},
		};
		const found = must(figureDifferences(spec(stored), spec(picked)));
		expect(causesOf(found)).toEqual(["picked"]);
		expect(found.parts.picked.tip).toBeCloseTo(-0.25, 9);
	});
});

test("all kinds at once still add up to the whole difference", () => {
	const all: FittingInput = {
		player: { statureMm: 1800, ageYears: 16 },
		stance: { gameId: "snooker", stance: "side-on" },
		presentCue: { massG: 480, dislikes: ["too-light"] },
		wishes: { buttDiameterMm: 28 },
		workshop: otherWorkshop,
	};
	const found = must(figureDifferences(spec(older), fitting(all)));
	const causes = causesOf(found);
	expect(causes).toContain("model");
	expect(causes).toContain("grew");
	expect(causes).toContain("wished");
});

test("equal answers are worked out once", () => {
	let asked = 0;
	must(
		figureDifferences(fitting(short), fitting({ ...short }), {
			figuring: () => {
				asked++;
				return {
					ok: true,
					value: { length: 1, mass: 2, butt: 3, tip: 4, balance: 5 },
				};
			},
		}),
	);
	expect(asked).toBe(1);
});

test("a step that has no advice refuses the whole", () => {
	const found = figureDifferences(
		spec(stored),
		fitting({ ...short, player: { statureMm: 100 } }),
	);
	expect(found.ok).toBe(false);
});
