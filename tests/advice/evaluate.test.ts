import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { axesFor, candidateAt, candidateCount } from "@/lib/advice/axes";
import { AT, CRITERION_COUNT, CRITERION_IDS } from "@/lib/advice/criteria";
import { desirability } from "@/lib/advice/desirability";
import { type Candidate, overallOf } from "@/lib/advice/evaluate";
import { evaluator } from "@/lib/advice/evaluator";
import { referenceEvaluate } from "@/lib/advice/reference-evaluate";
import type { GameId } from "@/lib/reference/rules";
import { withStature } from "../support/inputs";
import { prepared } from "./support";

const settings = (
	[
		[1750, "snooker"],
		[1150, "snooker"],
		[1820, "american-pool"],
		[1400, "english-eight-ball"],
		[1650, "carom"],
	] as const satisfies readonly (readonly [number, GameId])[]
).map(([statureMm, gameId]) => {
	const one = prepared(withStature(statureMm, { stance: { gameId } }));
	return {
		one,
		axes: axesFor({ ...one, wantedCount: 90_000 }),
		evaluate: evaluator(one.setting),
	};
});

// Seen: measures within 0.005 %, deflection within 0.06 %: its end mass comes from a coarser mesh.
describe("a candidate by the tables and by the models one cue at a time", () => {
	test("every measure within 0.5 %, wherever both can build it", () => {
		let compared = 0;
		fc.assert(
			fc.property(
				fc.constantFrom(...settings),
				fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
				({ one, axes, evaluate }, share) => {
					const candidate = candidateAt(
						axes,
						Math.floor(share * candidateCount(axes)),
					);
					const quick = evaluate(candidate);
					const full = referenceEvaluate(candidate, one.setting);
					if (!quick.ok || !full.ok) return;
					compared++;
					CRITERION_IDS.forEach((id, i) => {
						const wanted = full.value.row[i] as number;
						// A closure near nothing is compared against the girth it is part of.
						const size = id === "closure" ? 85 : Math.abs(wanted);
						expect(
							Math.abs((quick.value.row[i] as number) - wanted),
							`${id} of ${JSON.stringify(candidate)}`,
						).toBeLessThanOrEqual(5e-3 * size + 1e-9);
					});
					expect(quick.value.load.metalG).toBeCloseTo(
						full.value.plan.metalMassG,
						1,
					);
				},
			),
			{ numRuns: 120 },
		);
		expect(compared).toBeGreaterThan(30);
	}, 60_000);

	test("what the tables can build, the full plan can", () => {
		fc.assert(
			fc.property(
				fc.constantFrom(...settings),
				fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
				({ one, axes, evaluate }, share) => {
					const candidate = candidateAt(
						axes,
						Math.floor(share * candidateCount(axes)),
					);
					if (evaluate(candidate).ok)
						expect(referenceEvaluate(candidate, one.setting).ok).toBe(true);
				},
			),
			{ numRuns: 60 },
		);
	}, 60_000);

	test("what only the full plan can is heavier wood within its band, or a second slug at the joint", () => {
		const [first] = settings;
		if (!first) throw new Error("no setting");
		const { one, axes, evaluate } = first;
		for (let i = 0; i < 60; i++) {
			const candidate = candidateAt(
				axes,
				Math.floor(((i + 0.5) / 60) * candidateCount(axes)),
			);
			const full = referenceEvaluate(candidate, one.setting);
			if (evaluate(candidate).ok || !full.ok) continue;
			const { plan, natural } = full.value;
			expect(
				plan.jointSlug !== null ||
					natural.massG.value > (candidate.massG ?? 0) - 0.5,
			).toBe(true);
		}
	}, 60_000);
});

describe("overall desirability of a row", () => {
	const [first] = settings;
	if (!first) throw new Error("no setting");
	const { compiled, criteria } = first.one;

	test("is the weighted geometric mean of each criterion's own function", () => {
		fc.assert(
			fc.property(
				fc.array(fc.double({ min: -0.4, max: 1.4, noNaN: true }), {
					minLength: CRITERION_COUNT,
					maxLength: CRITERION_COUNT,
				}),
				(shares) => {
					const row = criteria.map(({ shape }, i) => {
						const low = shape.low?.limit ?? (shape.high?.ideal ?? 1) * 0.5;
						const high = shape.high?.limit ?? (shape.low?.ideal ?? 1) * 1.5;
						return low + (shares[i] as number) * (high - low);
					});
					let product = 1;
					let sum = 0;
					criteria.forEach(({ shape, weight }, i) => {
						product *= desirability(shape, row[i] as number) ** weight;
						sum += weight;
					});
					expect(overallOf(compiled, row)).toBeCloseTo(product ** (1 / sum), 9);
				},
			),
		);
	});
	test("a floor under each keeps failing rows apart, and leaves the others alone", () => {
		const good = criteria.map(({ shape }) =>
			shape.low && shape.high
				? (shape.low.ideal + shape.high.ideal) / 2
				: (shape.low?.ideal ?? shape.high?.ideal ?? 0),
		);
		expect(overallOf(compiled, good)).toBeCloseTo(1, 9);
		const bad = good.with(AT.weight, 1);
		expect(overallOf(compiled, bad)).toBe(0);
		const { weights, weightSum } = compiled;
		expect(overallOf(compiled, bad, 0.01)).toBeCloseTo(
			0.01 ** ((weights[AT.weight] as number) / weightSum),
			9,
		);
	});
});

test("a weight the wood already passes is refused with the wood's own", () => {
	const [first] = settings;
	if (!first) throw new Error("no setting");
	const candidate: Candidate = {
		...candidateAt(first.axes, 0),
		massG: 250,
		forwardMm: 0,
	};
	const tried = first.evaluate(candidate);
	if (tried.ok) throw new Error("expected a refusal");
	expect(tried.refusals[0]?.code).toBe("weight-out-of-bore");
	expect(tried.refusals[0]?.min).toBeGreaterThan(250);
});
