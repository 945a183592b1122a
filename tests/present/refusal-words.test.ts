import { describe, expect, test } from "vitest";
import { advise } from "@/lib/advice/advise";
import { answerFit } from "@/lib/advice/answer-fit";
import { inventedCatalogue } from "@/lib/advice/catalogue";
import { CRITERION_IDS } from "@/lib/advice/criteria";
import { evaluator } from "@/lib/advice/evaluator";
import type { FittingInput } from "@/lib/advice/input";
import { seededUniform } from "@/lib/advice/normal";
import { prepare, type SearchChoices } from "@/lib/advice/prepare";
import { searchCues } from "@/lib/advice/search";
import { specFrom } from "@/lib/advice/spec";
import { planAddedWeight, type WeightWish } from "@/lib/build/added-weight";
import { impliedDensities } from "@/lib/build/implied-densities";
import type { CueRequest } from "@/lib/cue/design";
import { yearSwing } from "@/lib/cue/moisture";
import { fitPresentCue } from "@/lib/cue/present-cue";
import { designFrom } from "@/lib/cue/template";
import { must, type Outcome, type Refusal } from "@/lib/numerics/outcome";
import { refusalView } from "@/lib/present/notices";
import { REFUSAL_WORDS } from "@/lib/present/refusal-words";
import { INVENTED_PRICE_LIST } from "@/lib/price/list";
import { answerTrial } from "@/lib/trial/answer";
import { CHECKS_REFUSED } from "../support/checks-refused";
import { cue, SNOOKER_REQUEST } from "../support/designs";
import { unsaid } from "../support/inputs";
import { JOBS_REFUSED } from "../support/jobs-refused";
import { METRIC, reading, TRADE } from "../support/readers";
import { refusalCodes, refusalCodesIn } from "../support/refusal-codes";
import { SETTINGS_REFUSED } from "../support/settings-refused";

const design = cue();
const plan = (wish: Partial<WeightWish>) =>
	planAddedWeight({ design, wantedMassG: 500, ...wish });
const made = (change: Partial<CueRequest>) =>
	designFrom({ ...SNOOKER_REQUEST, ...change });
const fitting = (change: Partial<FittingInput>) =>
	advise({ ...unsaid, ...change });
const prepared = (choices: SearchChoices) => prepare(unsaid, choices);
const rackCue = (id: string) => ({
	id,
	name: id,
	lengthMm: 1460,
	massG: 500,
	buttDiameterMm: 29,
	tipDiameterMm: 9.5,
	balanceFromButtMm: 430,
});

/** One way to each refusal, through the function that gives it. */
const PROVOKED: Readonly<Record<string, () => Outcome<unknown>>> = {
	"out-of-range": () => made({ lengthMm: 30 }),
	missing: () =>
		answerFit({
			player: { statureMm: 1400 },
			stance: { gameId: "snooker" },
			growth: { onDate: "2030-05-01" },
		}),
	contradiction: () =>
		fitting({
			stance: { gameId: "snooker", seated: true, standingFrame: true },
		}),
	"bridge-out-of-reach": () =>
		fitting({
			player: { statureMm: 900 },
			stance: {
				gameId: "snooker",
				clothHeightMm: 950,
				seated: true,
				bridgeElbowMaxDeg: 60,
			},
		}),
	"not-whole": () =>
		made({ splicing: { allRound: { wood: "bocote", count: 4.5 } } }),
	"weight-below-natural": () => plan({ wantedMassG: 200 }),
	"weight-above-bore": () => plan({ wantedMassG: 1100 }),
	"weight-out-of-bore": () =>
		evaluator(must(prepared({})).setting)({
			request: SNOOKER_REQUEST,
			massG: 1100,
			forwardMm: 0,
		}),
	"already-weighted": () =>
		planAddedWeight({
			design: must(plan({})).finished,
			wantedMassG: 520,
		}),
	"one-figure-only": () =>
		plan({ wantedBalanceFromButtMm: 400, wantedInertiaKgM2: 0.05 }),
	"balance-out-of-reach": () => plan({ wantedBalanceFromButtMm: 700 }),
	"inertia-out-of-reach": () => plan({ wantedInertiaKgM2: 0.9 }),
	"not-this-build": () =>
		impliedDensities({
			design,
			massG: { value: 700 },
			balanceFromButtMm: { value: 445 },
		}),
	"not-explained": () =>
		fitPresentCue({
			lengthMm: 1460,
			massG: 900,
			balanceFromButtMm: 700,
			tipDiameterMm: 9.5,
			diameters: [
				{ fromButtMm: 0, diameterMm: 29 },
				{ fromButtMm: 300, diameterMm: 25.5 },
				{ fromButtMm: 700, diameterMm: 19.5 },
			],
		}),
	"rule-broken": () => {
		const advice = must(fitting({ wishes: { lengthMm: 850 } }));
		return specFrom(advice, null);
	},
	"wood-not-for-part": () => made({ shaftWood: "gaboon-ebony" }),
	"no-joint-in-layout": () =>
		made({ layout: "one-piece", fittings: { jointFromButtMm: 400 } }),
	"joints-too-close": () =>
		made({ fittings: { jointFromButtMm: 400, endPieceMm: 380 } }),
	"hand-splice-only": () =>
		made({ splice: "machine-four-point", splicing: { points: {} } }),
	"one-too-many": () =>
		made({
			splicing: {
				points: {
					pointFromButtMm: 600,
					coreHalfWidthMm: 5,
					planeAngleDeg: 0.4,
				},
			},
		}),
	"too-few": () => yearSwing(design, []),
	"not-in-price-list": () =>
		prepared({ priceList: { ...INVENTED_PRICE_LIST, shaftWoodMinor: {} } }),
	"nothing-offered": () =>
		prepared({
			catalogue: { ...inventedCatalogue("snooker"), splices: [] },
		}),
	"nothing-counts": () =>
		prepared({
			weights: Object.fromEntries(CRITERION_IDS.map((id) => [id, 0])),
		}),
	"nothing-can-be-built": () => search({ lengthMm: 800 }),
	relax: () => search({ lengthMm: 800 }),
	"rack-too-small": () => answerTrial({ rack: [], sessions: [] }),
	"same-cue-twice": () =>
		answerTrial({
			rack: ["a", "a", "b"].map(rackCue),
			sessions: [],
		}),
	"unknown-cue": () =>
		answerTrial({
			rack: ["a", "b"].map(rackCue),
			sessions: [
				{
					isPaired: false,
					shots: [{ cueId: "gone", isPotted: true }],
				},
			],
		}),
	...SETTINGS_REFUSED,
	...JOBS_REFUSED,
	...CHECKS_REFUSED,
};

const search = (wishes: FittingInput["wishes"]) =>
	searchCues(
		{ ...unsaid, wishes },
		{ uniform: seededUniform(1), candidateCount: 2000 },
	);

function refusalOf(code: string): Refusal {
	const outcome = PROVOKED[code]?.();
	if (!outcome || outcome.ok) throw new Error(`${code} was not provoked`);
	const refusal = outcome.refusals.find((one) => one.code === code);
	if (!refusal)
		throw new Error(
			`${code} expected, got ${outcome.refusals.map((one) => one.code)}`,
		);
	return refusal;
}

const found = refusalCodes("lib");
const codes = [...new Set(found.map(({ code }) => code))].sort();
const READERS = [METRIC, TRADE, reading("metric", "de")];
const SENTENCE = /^[\p{Lu}“„\d].*[.!?:]$/su;

describe("every refusal code in the source", () => {
	test("is found, wherever it stands", () => {
		expect(refusalCodesIn("x.ts", 'f({ code: "a-b", field, value })')).toEqual([
			{ code: "a-b", file: "x.ts" },
		]);
		expect(
			refusalCodesIn(
				"x.ts",
				'f({ field: x.y({ code: "inner" }), value, code: b ? "one" : "two" })',
			).map(({ code }) => code),
		).toEqual(["one", "two"]);
		expect(
			refusalCodesIn("x.ts", 'f({ code: "c", facts: { field: "a" } })'),
		).toEqual([]);
		expect(refusalCodesIn("x.ts", '// { code: "c", field }')).toEqual([]);
		expect(
			refusalCodesIn("x.ts", 'f({ kind: "caution", code: "c", field })'),
		).toEqual([]);
		expect(
			refusalCodesIn("x.ts", "f({ code: made(), field })")[0]?.code,
		).toContain("made()");
		expect(codes.length).toBeGreaterThan(25);
	});

	test("has words", () => {
		expect(
			found.filter(({ code }) => REFUSAL_WORDS[code] === undefined),
		).toEqual([]);
	});

	test("and no words stand for a code that nothing gives", () => {
		expect(Object.keys(REFUSAL_WORDS).sort()).toEqual(codes);
	});

	test.each(codes)(
		"%s reads as a sentence, in both units and languages",
		(code) => {
			const refusal = refusalOf(code);
			for (const reader of READERS) {
				const { text } = refusalView(refusal, reader);
				expect(text).toMatch(SENTENCE);
				expect(text).not.toMatch(
					/undefined|NaN|null|Mm\b|KgM2|-of-|[a-z]-[a-z]+-/,
				);
			}
		},
	);
});

test("a code without words is shown, with field, value and facts", () => {
	expect(
		refusalView(
			{ code: "new-thing", field: "x.y", value: 3, facts: { massG: 12.34 } },
			METRIC,
		).text,
	).toBe("new thing; x.y 3; massG 12.3");
});
