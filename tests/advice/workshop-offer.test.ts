import { describe, expect, test } from "vitest";
import { advise } from "@/lib/advice/advise";
import type { FittingInput } from "@/lib/advice/input";
import { prepare } from "@/lib/advice/prepare";
import { recommend } from "@/lib/advice/recommend";
import { type SpecContent, specFrom } from "@/lib/advice/spec";
import { isOfOtherSettings, specInSettings } from "@/lib/advice/today";
import { usualBuild } from "@/lib/advice/usual-build";
import { weighCue } from "@/lib/cue/mass";
import { fittingInputSchema } from "@/lib/forms/fitting-input";
import { must } from "@/lib/numerics/outcome";
import { WOODS } from "@/lib/reference/woods";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import { offerOf, type Settings } from "@/lib/workshop/settings";
import { withStature } from "../support/inputs";

const fitting = withStature(1750);
const invented = offerOf(DEFAULT_SETTINGS);
const saved = (input: FittingInput): SpecContent => {
	const made = must(recommend(input));
	return must(specFrom(made, made.search));
};

/** A workshop that makes little, of light ash it has weighed, and asks more for it. */
const own: Settings = {
	...DEFAULT_SETTINGS,
	catalogue: {
		...DEFAULT_SETTINGS.catalogue,
		basis: "workshop",
		games: {
			...DEFAULT_SETTINGS.catalogue.games,
			snooker: { shaftWoods: ["european-ash"], layouts: ["one-piece"] },
		},
		buttWoods: [{ id: "purpleheart", tier: 1 }],
		splices: [{ id: "machine-four-point", tier: 1 }],
		ferruleMetals: ["stainless-steel"],
		addedMetal: "lead",
	},
	stock: {
		basis: "workshop",
		woods: [
			{
				wood: "european-ash",
				grade: "",
				ringSpacingMm: null,
				count: 2,
				billets: [640, 650].map((densityKgM3) => ({
					label: "",
					moisturePct: null,
					densityKgM3,
				})),
				stated: null,
			},
		],
	},
	prices: {
		...DEFAULT_SETTINGS.prices,
		basis: "workshop",
		currency: "EUR",
		rows: DEFAULT_SETTINGS.prices.rows.map((row) =>
			row.part === "base" ? { ...row, labourMinor: 30_000 } : row,
		),
	},
};
const ownOffer = offerOf(own);

describe("the invented settings", () => {
	test("change no figure of an advice", () => {
		const plain = saved(fitting);
		const set = saved({ ...fitting, workshop: invented });
		const { input: _a, search: searchA, ...figuresA } = plain;
		const { input: _b, search: searchB, ...figuresB } = set;
		expect(figuresB).toEqual(figuresA);
		expect(searchB?.options).toEqual(searchA?.options);
		expect(isOfOtherSettings(plain, invented)).toBe(false);
	});
});

describe("a workshop's own settings", () => {
	const spec = saved({ ...fitting, workshop: ownOffer });

	test("decide woods, splice, layout, ferrule and metal", () => {
		expect(spec.request).toMatchObject({
			shaftWood: "european-ash",
			buttWood: "purpleheart",
			splice: "machine-four-point",
			layout: "one-piece",
			ferruleMetal: "stainless-steel",
		});
		for (const { request } of spec.search?.options ?? [])
			expect(request.buttWood).toBe("purpleheart");
	});

	test("bring their own densities into the cue that is built and into its band", () => {
		const { densities } = spec.request;
		expect(densities?.["european-ash"]?.kgM3).toBe(645);
		const { massG } = weighCue({ ...spec.design, addedWeight: [], plugs: [] });
		const published = weighCue({
			...spec.design,
			densities: {},
			addedWeight: [],
			plugs: [],
		});
		expect(WOODS["european-ash"].density12KgM3.value).toBe(680);
		expect(massG.value).toBeLessThan(published.massG.value);
		expect(massG.sd).toBeLessThan(published.massG.sd);
		expect(spec.naturalMassG.value).toBeCloseTo(massG.value, 6);
	});

	test("ask their own price in their own currency, as a workshop's list", () => {
		const price = spec.search?.options[0]?.price;
		expect(price).toMatchObject({ currency: "EUR", basis: "workshop" });
		expect(price?.lines.find(({ part }) => part === "base")?.amountMinor).toBe(
			30_000 + 1_400,
		);
	});

	test("are what the figures without a search are built with too", () => {
		const { build } = must(advise({ ...fitting, workshop: ownOffer }));
		expect(build.request).toMatchObject({
			buttWood: "purpleheart",
			densities: ownOffer.densities,
		});
		if (build.plan.ok) expect(build.plan.value.metal).toBe("lead");
	});

	test("give way to a wish, priced or refused by its name", () => {
		const wishing = { ...fitting, workshop: ownOffer };
		const { catalogue } = must(
			prepare({ ...wishing, wishes: { buttWood: "gaboon-ebony" } }, {}),
		);
		expect(catalogue.buttWoods).toEqual([{ id: "gaboon-ebony", tier: 1 }]);
	});

	test("without the budget's woods: the woods there are, in their order", () => {
		expect(
			usualBuild({ ...fitting, workshop: ownOffer, budget: "open" }, "snooker"),
		).toEqual({
			shaftWood: "european-ash",
			buttWoods: ["purpleheart"],
			splice: "machine-four-point",
			layout: "one-piece",
			ferruleMetal: "stainless-steel",
		});
	});

	test("hold for every game of one workshop", () => {
		const pool = {
			...fitting,
			stance: { ...fitting.stance, gameId: "american-pool" as const },
			workshop: ownOffer,
		};
		expect(usualBuild(pool, "american-pool")).toMatchObject({
			shaftWood: "sugar-maple",
			layout: "centre",
		});
	});

	test("stay with a saved spec: read back from its JSON it gives the same cue", () => {
		const stored: SpecContent = JSON.parse(JSON.stringify(spec));
		const again = saved(fittingInputSchema.parse(stored.input));
		expect(JSON.parse(JSON.stringify(again))).toEqual(stored);
	});

	test("are told apart from others, whatever the order of members", () => {
		const stored: SpecContent = JSON.parse(JSON.stringify(spec));
		const reordered = Object.fromEntries(
			Object.entries(ownOffer).reverse(),
		) as unknown as typeof ownOffer;
		expect(isOfOtherSettings(stored, reordered)).toBe(false);
		expect(isOfOtherSettings(stored, invented)).toBe(true);
		expect(isOfOtherSettings(saved(fitting), ownOffer)).toBe(true);
		const now = must(specInSettings(stored, invented));
		expect(now.request.buttWood).not.toBe("purpleheart");
		expect(now.input.workshop).toEqual(invented);
	});
});
