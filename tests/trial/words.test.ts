import { describe, expect, test } from "vitest";
import { problemsOf } from "@/lib/forms/answers";
import { FIELDS } from "@/lib/forms/fields";
import { WISH_OF, wishAnswer } from "@/lib/forms/trial";
import { must } from "@/lib/numerics/outcome";
import { settlingChart } from "@/lib/present/trial-charts";
import { formatTrialFigure } from "@/lib/present/trial-figures";
import { methodLines } from "@/lib/present/trial-method";
import { proposalWords, wishOffer } from "@/lib/present/trial-offers";
import {
	chanceWords,
	comparisonWords,
	sessionWords,
	trialCautionText,
} from "@/lib/present/trial-verdict";
import { analyseTrial } from "@/lib/trial/analysis";
import { answerTrial, type TrialSession } from "@/lib/trial/answer";
import { TRIAL_FIELDS } from "@/lib/trial/assumptions";
import type { Shot } from "@/lib/trial/shots";
import { METRIC, reading, TRADE } from "@/tests/support/readers";
import { RACK, rackCue } from "./support/rack";

const nameOf = (id: string) => id.toUpperCase();
/** Shots in pairs; how many of them each cue wins alone. */
const session = (onlyA: number, onlyB: number, both = 10): TrialSession => ({
	isPaired: true,
	shots: Array.from(
		{ length: onlyA + onlyB + both },
		(_, pair) => pair,
	).flatMap((pair): Shot[] => [
		{ cueId: "a", isPotted: pair < onlyA + both, pair, round: pair },
		{ cueId: "b", isPotted: pair >= onlyA, pair, round: pair },
	]),
});
const wordsOf = (from: TrialSession) => {
	const [comparison] = analyseTrial({
		...from,
		cueIds: ["a", "b"],
	}).comparisons;
	if (comparison === undefined) throw new Error("nothing to compare");
	return comparisonWords(comparison, nameOf, METRIC);
};

describe("chances", () => {
	test.each([
		[0.413, "41 in 100"],
		[0.0049, "fewer than 1 in 100"],
		[0.9951, "more than 99 in 100"],
		[1, "more than 99 in 100"],
		[0, "fewer than 1 in 100"],
	])("%f is %s: never certain", (chance, words) => {
		expect(chanceWords(chance, METRIC)).toBe(words);
	});
});

describe("a comparison in sentences", () => {
	test("could be luck", () => {
		const { headline, lines } = wordsOf(session(5, 4));
		expect(headline).toBe(
			"It could be luck: A and B cannot be told apart yet.",
		);
		expect(lines.join(" ")).toMatch(
			/judged on 19 pairs with the same set-up: in 5 only A potted, in 4 only B/i,
		);
		expect(lines.join(" ")).toMatch(/more shots with each would settle it/);
	});
	test("names the cue that is ahead first, whichever it is", () => {
		const { headline, lines } = wordsOf(session(2, 18));
		expect(headline).toMatch(/^More is potted with B than with A/);
		expect(lines[0]).toMatch(/^With B about \d+ more of 100/);
		expect(lines[0]).toMatch(/in 18 only B potted, in 2 only A/);
	});
	test("never writes a number that is none", () => {
		for (const from of [session(0, 0, 12), session(12, 0, 0), session(1, 0, 0)])
			expect(JSON.stringify(wordsOf(from))).not.toMatch(/NaN|undefined|null/);
	});
});

test("the session's own effects are said, luck or not", () => {
	const rising: Shot[] = Array.from({ length: 80 }, (_, i) => ({
		cueId: i % 2 === 0 ? "a" : "b",
		isPotted: i > 38 || i % 9 === 0,
		round: Math.floor(i / 2),
	}));
	const lines = sessionWords(
		analyseTrial({ cueIds: ["a", "b"], shots: rising, isPaired: false })
			.session,
		METRIC,
	);
	expect(lines).toHaveLength(3);
	expect(lines[1]).toMatch(
		/^Over the session: .* luck alone would do that in fewer than 1 in 100/,
	);
	expect(
		sessionWords({ warmUp: null, drift: null, order: null }, METRIC),
	).toEqual([]);
});

test("every caution of an analysis has words of its own", () => {
	const lopsided = [
		...session(1, 1, 1).shots.map(({ pair: _, ...shot }) => shot),
		...Array.from({ length: 20 }, (): Shot => ({ cueId: "c", isPotted: true })),
	];
	const { cautions } = analyseTrial({
		cueIds: ["a", "b", "c"],
		shots: lopsided,
		isPaired: true,
		plannedShots: 90,
	});
	expect(cautions.map(({ code }) => code).sort()).toEqual([
		"trial-ended-early",
		"trial-few-shots",
		"trial-many-comparisons",
		"trial-no-pairs",
		"trial-uneven-shots",
	]);
	for (const caution of cautions) {
		const text = trialCautionText(caution, METRIC);
		expect(text).not.toBe(caution.code.replaceAll("-", " "));
		expect(text).not.toMatch(/NaN|undefined/);
	}
	expect(trialCautionText({ code: "not-known-yet" }, METRIC)).toBe(
		"not known yet",
	);
});

describe("a proposal in sentences", () => {
	const answer = must(answerTrial({ rack: RACK, sessions: [] }));
	test("names both cues, the shots and what sets them apart, in the reader's units", () => {
		const [first] = answer.proposals;
		if (first === undefined) throw new Error("nothing proposed");
		const metric = proposalWords(first, nameOf, METRIC, true);
		expect(metric.title).toMatch(/^[A-Z]+ and [A-Z]+, \d+ shots with each$/);
		expect(metric.lines.join(" ")).toMatch(/\bg\b|\bmm\b/);
		const trade = proposalWords(first, nameOf, TRADE, false);
		expect(trade.lines.join(" ")).toMatch(/\boz\b|\bin\b/);
		expect(trade.lines.join(" ")).not.toMatch(/Of all pairs/);
	});
});

describe("a wish on offer", () => {
	const offers = must(
		answerTrial({
			rack: RACK,
			sessions: [
				{
					isPaired: false,
					shots: Array.from(
						{ length: 80 },
						(_, i): Shot => ({
							cueId: i % 2 === 0 ? "light" : "heavy",
							isPotted: i % 2 === 0 ? i % 10 !== 0 : i % 3 === 0,
						}),
					),
				},
			],
		}),
	).wishUpdates;
	test("has a value, a band, its reasons and an answer the fitting can read", () => {
		const [update] = offers;
		if (update === undefined) throw new Error("nothing offered");
		const offer = wishOffer(update, METRIC);
		expect(offer.label).toBe("Weight");
		expect(offer.sentence).toMatch(
			/^From 80 shots with cues of 465.g to 565.g/,
		);
		expect(offer.answer).toMatch(/^\d+ g$/);
		expect(problemsOf("wishMass", offer.answer ?? "", "trade")).toEqual([]);
	});
	test("a balance, or a figure no bench takes, is not offered as an answer and says why", () => {
		const [update] = offers;
		if (update === undefined) throw new Error("nothing offered");
		expect(
			wishOffer({ ...update, field: "balanceFromButtMm", value: 430 }, METRIC),
		).toMatchObject({ answer: null, whyNot: expect.stringMatching(/balance/) });
		expect(
			wishOffer({ ...update, field: "buttDiameterMm", value: 33 }, METRIC),
		).toMatchObject({ answer: null, whyNot: expect.stringMatching(/24.*31/) });
	});
	test("each answer is read back as the figure it was made from", () => {
		for (const field of TRIAL_FIELDS) {
			const wish = WISH_OF[field];
			if (wish === null) continue;
			expect(FIELDS[wish].kind).toMatch(/length|mass/);
			expect(
				problemsOf(wish, wishAnswer(field, rackCue("x")[field]), "metric"),
			).toEqual([]);
		}
		expect(wishAnswer("tipDiameterMm", 9.4449)).toBe("9.4 mm");
	});
});

describe("the chart of how it settled", () => {
	test("has a line with a band for each cue, the difference, and the same as a table", () => {
		const chart = settlingChart(session(8, 3, 20), nameOf, METRIC);
		expect(chart?.panels.map(({ lines }) => lines.length)).toEqual([2, 1]);
		const last = chart?.panels[1]?.lines[0]?.points.at(-1);
		expect(last?.x).toBe(31);
		expect(last?.low).toBeLessThan(last?.y ?? 0);
		expect(last?.high).toBeGreaterThan(last?.y ?? 0);
		expect(chart?.table.rows.at(-1)?.[0]).toBe("31");
		expect(chart?.summary).toMatch(/After 31 shots with each: A/);
		expect(JSON.stringify(chart)).not.toMatch(/NaN|null/);
	});
	test("its last point is the result itself", () => {
		const from = session(8, 3, 20);
		const [comparison] = analyseTrial({
			...from,
			cueIds: ["a", "b"],
		}).comparisons;
		const last = settlingChart(
			from,
			nameOf,
			METRIC,
		)?.panels[1]?.lines[0]?.points.at(-1);
		expect(last?.y).toBeCloseTo(100 * (comparison?.difference.value ?? 0), 9);
	});
	test("the band narrows as shots come in", () => {
		const points = settlingChart(session(20, 20, 60), nameOf, METRIC)?.panels[1]
			?.lines[0]?.points;
		const width = (i: number) =>
			(points?.at(i)?.high ?? 0) - (points?.at(i)?.low ?? 0);
		expect(width(-1)).toBeLessThan(width(0) / 2);
	});
	test("of four cues only the two surest to differ are drawn", () => {
		const shots = ["a", "b", "c", "d"].flatMap((cueId, k) =>
			Array.from(
				{ length: 20 },
				(_, i): Shot => ({
					cueId,
					isPotted: k === 3 ? i % 10 === 0 : i % 3 > 0,
				}),
			),
		);
		const chart = settlingChart({ shots, isPaired: false }, nameOf, METRIC);
		expect(chart?.panels[0]?.lines).toHaveLength(2);
		expect(chart?.panels[0]?.lines.map(({ name }) => name)).toContain("D");
	});
	test("none before there is anything to draw", () => {
		expect(
			settlingChart({ shots: [], isPaired: true }, nameOf, METRIC),
		).toBeNull();
		expect(settlingChart(session(1, 0, 0), nameOf, METRIC)).toBeNull();
	});
});

test("figures are written in the reader's units, and the method names every fall-off", () => {
	expect(formatTrialFigure("massG", 510, METRIC)).toBe("510\u00a0g");
	expect(formatTrialFigure("massG", 510, TRADE)).toBe("18.0\u00a0oz");
	expect(methodLines(METRIC).join(" ")).toMatch(
		/length 75 mm, weight 60 g, butt diameter 3 mm, tip 1.5 mm, balance from the butt end 60 mm/,
	);
});

test("the same numbers are said in German", () => {
	const GERMAN = reading("metric", "de");
	const from = session(8, 3, 20);
	const [comparison] = analyseTrial({
		...from,
		cueIds: ["a", "b"],
	}).comparisons;
	const [first] = must(answerTrial({ rack: RACK, sessions: [] })).proposals;
	if (first === undefined || comparison === undefined)
		throw new Error("nothing to say");
	const said = (reader: typeof METRIC) => [
		...comparisonWords(comparison, nameOf, reader).lines,
		...proposalWords(first, nameOf, reader, true).lines,
		settlingChart(from, nameOf, reader)?.summary ?? "",
		...methodLines(reader),
	];
	const numbersIn = (text: string) =>
		(text.replaceAll(",", ".").match(/\d+(?:\.\d+)?/g) ?? []).sort();
	const german = said(GERMAN);
	for (const [i, text] of said(METRIC).entries()) {
		expect(german[i]).not.toBe(text);
		expect(numbersIn(german[i] ?? "")).toEqual(numbersIn(text));
	}
});
