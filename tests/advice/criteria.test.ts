import { describe, expect, test } from "vitest";
import {
	AT,
	CompiledCriteria,
	CRITERION_IDS,
	type CriterionId,
} from "@/lib/advice/criteria";
import { checkedShape, desirability } from "@/lib/advice/desirability";
import { forgivenessShare } from "@/lib/advice/forgiveness";
import { LEVEL_SIDE } from "@/lib/advice/judgement";
import { normalFrom, seededUniform } from "@/lib/advice/normal";
import { prepare, type SearchChoices } from "@/lib/advice/prepare";
import { INVENTED_PRICE_LIST } from "@/lib/price/list";
import { CITATIONS } from "@/lib/reference/citations";
import { MISCUE_OFFSET } from "@/lib/shot/published";
import { inchesToMm } from "@/lib/units/quantity";
import { unsaid, withStature } from "../support/inputs";
import { prepared, searched } from "./support";

const criterion = (
	id: CriterionId,
	input = withStature(1750),
	choices: SearchChoices = {},
) => {
	const found = prepared(input, choices).criteria[AT[id]];
	if (!found) throw new Error(id);
	return found;
};
const centre = (id: CriterionId, input = withStature(1750), choices = {}) => {
	const { low, high } = criterion(id, input, choices).shape;
	return ((low?.ideal ?? 0) + (high?.ideal ?? 0)) / 2;
};

describe("every criterion", () => {
	const games = [
		"snooker",
		"english-eight-ball",
		"american-pool",
		"carom",
	] as const;
	test.each(games)(
		"of %s has a unit, a shape that holds and a source",
		(gameId) => {
			const { criteria } = prepared({ ...unsaid, stance: { gameId } });
			expect(criteria.map(({ id }) => id)).toEqual(CRITERION_IDS);
			for (const { unit, shape, sources, role, weight } of criteria) {
				expect(unit).not.toBe("");
				expect(checkedShape(shape)).toBe(shape);
				expect(sources.length).toBeGreaterThan(0);
				for (const source of sources) expect(source in CITATIONS).toBe(true);
				expect(weight > 0).toBe(role === "counts");
			}
		},
	);
	test("compiled gives the same desirabilities, exponents included", () => {
		const { criteria } = prepared(withStature(1750));
		const bent = criteria.map((one) => ({
			...one,
			shape: {
				low: one.shape.low && { ...one.shape.low, exponent: 2 },
				high: one.shape.high && { ...one.shape.high, exponent: 0.5 },
			},
		}));
		for (const list of [criteria, bent]) {
			const compiled = new CompiledCriteria(list);
			list.forEach(({ shape }, i) => {
				const from = shape.low?.limit ?? 0.5 * (shape.high?.ideal ?? 1);
				const to = shape.high?.limit ?? 1.5 * (shape.low?.ideal ?? 1);
				for (let k = -3; k <= 13; k++) {
					const value = from + ((to - from) * k) / 10;
					expect(compiled.desirability(i, value)).toBeCloseTo(
						desirability(shape, value),
						9,
					);
				}
			});
		}
	});
});

describe("where the ideal lies", () => {
	test("weight and length follow a complaint", () => {
		const lengthMm = inchesToMm(58);
		const at = (dislikes: ("too-long" | "too-short")[]) =>
			centre(
				"reach",
				withStature(1750, { presentCue: { lengthMm, dislikes } }),
			);
		expect(at(["too-long"])).toBeLessThan(at(["too-short"]));
	});
	test("a liked balance is held closer than a used one", () => {
		const width = (likes: "balance"[]) => {
			const { low, high } = criterion(
				"balance",
				withStature(1750, { presentCue: { balanceFromButtMm: 430, likes } }),
			).shape;
			return (high?.limit ?? 0) - (low?.limit ?? 0);
		};
		expect(width(["balance"])).toBeLessThan(width([]));
	});
	test("a front-heavy cue is to balance further back, a butt-heavy one further forward", () => {
		const at = (complaint: "front-heavy" | "butt-heavy", known: boolean) =>
			centre(
				"balance",
				withStature(1750, {
					presentCue: {
						dislikes: [complaint],
						...(known ? { balanceFromButtMm: 430 } : {}),
					},
				}),
			);
		for (const known of [true, false])
			expect(at("front-heavy", known)).toBeLessThan(at("butt-heavy", known));
	});
	test("the present cue's inertia, where it was read, is the steadiness to keep", () => {
		const presentCue = {
			lengthMm: 1470,
			massG: 510,
			balanceFromButtMm: 430,
			buttDiameterMm: 29,
			tipDiameterMm: 9.5,
		};
		const kept = criterion("steadiness", withStature(1750, { presentCue }));
		expect(kept.facts.from).toBe("present-cue");
		expect(criterion("steadiness").facts.from).toBe("usual-build");
	});
	test("a low budget's price is lower, an open one's is left out", () => {
		const ideal = (budget: "low" | "middle") =>
			criterion("price", { ...withStature(1750), budget }).shape.high?.ideal;
		expect(ideal("low")).toBeLessThan(ideal("middle") ?? 0);
		expect(
			criterion("price", { ...withStature(1750), budget: "open" }).role,
		).toBe("left-out");
	});
	test("pool's wide tips forgive alike, so that takes no part", () => {
		expect(
			criterion("forgiveness", {
				...withStature(1750),
				stance: { gameId: "american-pool" },
			}).role,
		).toBe("no-difference");
	});
	test("a wish decides its figure; a wished weight still counts", () => {
		const wished = withStature(1750, {
			wishes: { lengthMm: 1470, massG: 510, tipDiameterMm: 9.5 },
		});
		expect(criterion("reach", wished).role).toBe("decided");
		expect(criterion("tip", wished).role).toBe("decided");
		expect(criterion("weight", wished)).toMatchObject({
			role: "counts",
			basis: "wish",
		});
		expect(centre("weight", wished)).toBeCloseTo(510, 9);
	});
});

test("a wider tip forgives more", () => {
	const shares = [8, 8.5, 9, 9.5, 10].map((tipDiameterMm) =>
		forgivenessShare({ level: "club", tipDiameterMm }),
	);
	expect([...shares].sort((a, b) => a - b)).toEqual(shares);
});

test("the share that holds is what drawn shots show", () => {
	const normal = normalFrom(seededUniform(3));
	const tipDiameterMm = 9;
	const { offsetRatio, sdRatio } = LEVEL_SIDE.county;
	const dome = tipDiameterMm / 2 / 9;
	const N = 200_000;
	let held = 0;
	for (let i = 0; i < N; i++) {
		const limit = Math.min(
			MISCUE_OFFSET.value + MISCUE_OFFSET.sd * normal(),
			dome * (1 + 0.07 * normal()),
		);
		if (offsetRatio + sdRatio * normal() < limit) held++;
	}
	// The lesser of two normals is taken as normal: within half a per cent.
	expect(
		Math.abs(held / N - forgivenessShare({ level: "county", tipDiameterMm })),
	).toBeLessThan(0.005);
});

describe("a workshop's own price list", () => {
	const few = {
		...INVENTED_PRICE_LIST,
		basis: "workshop" as const,
		buttWoodMinor: { "black-walnut": 2000 },
	};
	test("without the budget's usual wood is judged by what it has", () => {
		const price = criterion("price", withStature(1750), { priceList: few });
		expect(price).toMatchObject({ role: "counts", basis: "measured" });
		expect(price.shape.high?.ideal).toBeGreaterThan(0);
	});
	test("without a price for the wished wood is refused by name", () => {
		const found = prepare(
			withStature(1750, { wishes: { buttWood: "gaboon-ebony" } }),
			{ priceList: few },
		);
		if (found.ok) throw new Error("expected a refusal");
		expect(found.refusals).toMatchObject([
			{ code: "not-in-price-list", field: "buttWood", value: "gaboon-ebony" },
		]);
	});
	test("leaves out of the search what it does not price", () => {
		const { report } = searched(withStature(1750), { priceList: few });
		for (const { request } of report.options)
			expect(request.buttWood).toBe("black-walnut");
	});
});

describe("weights that cannot be", () => {
	test("no criterion left to count is refused", () => {
		const found = prepare(withStature(1750), {
			weights: Object.fromEntries(CRITERION_IDS.map((id) => [id, 0])),
		});
		if (found.ok) throw new Error("expected a refusal");
		expect(found.refusals).toMatchObject([{ code: "nothing-counts" }]);
	});
	test("a negative or boundless weight is refused by name", () => {
		const found = prepare(withStature(1750), {
			weights: { reach: -1, tip: Number.POSITIVE_INFINITY },
		});
		if (found.ok) throw new Error("expected a refusal");
		expect(found.refusals.map(({ field }) => field)).toEqual([
			"weights.reach",
			"weights.tip",
		]);
	});
});
