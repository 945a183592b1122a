import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { buildOf } from "@/lib/advice/build";
import { seededUniform } from "@/lib/advice/normal";
import { refusalsFrom, relaxationsFor } from "@/lib/advice/relax";
import { type SearchReport, searchCues } from "@/lib/advice/search";
import { type Influence, whatWouldChange } from "@/lib/advice/sensitivity";
import { readAnswers } from "@/lib/forms/answers";
import { FIELDS } from "@/lib/forms/fields";
import { argumentWords } from "@/lib/present/against-words";
import { hasDoing, influenceText } from "@/lib/present/change-words";
import { criterionRow } from "@/lib/present/criterion-words";
import {
	closenessText,
	countsText,
	optionViews,
} from "@/lib/present/search-view";
import { softenedText, waysOut } from "@/lib/present/ways-out";
import { OPEN_WISHES, wishesOf } from "@/lib/present/wish-answers";
import type { Reader } from "@/lib/words/reader";
import { METRIC, reading, TRADE } from "@/tests/support/readers";
import { anyInput, withStature } from "../support/inputs";

const plain = (text: string) =>
	text.replaceAll("\u00a0", " ").replaceAll("\u202f", ",");
const SENTENCE = /^[\p{Lu}“\d].*[.!?]$/su;
const READERS: readonly Reader[] = [METRIC, TRADE, reading("metric", "de")];

let report: SearchReport;
let influences: readonly Influence[];
beforeAll(() => {
	const found = searchCues(withStature(1780), {
		uniform: seededUniform(1),
		candidateCount: 3000,
		drawCount: 60,
	});
	if (!found.ok) throw new Error(JSON.stringify(found.refusals));
	report = found.value.report;
	influences = whatWouldChange({ search: found.value, choices: {} });
}, 60_000);

/** Everything a report says, in words. */
function wordsOf(one: SearchReport, reader: Reader): string[] {
	return [
		countsText(one, reader),
		...one.softened.map((limit) => softenedText(limit, reader)),
		...one.compared.map((pair) => closenessText(pair, reader)),
		...optionViews(one, reader).flatMap(({ worth, snapping }) => [
			worth,
			snapping,
		]),
		...one.arguments.flatMap((argued) => {
			const words = argumentWords(argued, reader);
			return [words.forPlayer, words.forBench, words.against];
		}),
	];
}

describe("what a search found", () => {
	test("how many cues were looked at, and how many none beats", () => {
		expect(
			plain(
				countsText(
					{
						counts: {
							candidates: 112_320,
							buildable: 1,
							acceptable: 1,
							nonDominated: 1684,
							isEverythingFixed: false,
						},
					},
					METRIC,
				),
			),
		).toBe("Best of 112,320 cues; 1684 are beaten by none.");
	});
	test("closeness says which is better in how many draws, and when that is no verdict", () => {
		const at = (firstBetterShare: number, tooClose: boolean) =>
			closenessText(
				{ firstBetterShare, tooClose, insideEachOther: tooClose },
				METRIC,
			);
		expect(at(0.82, true)).toBe(
			"Too close to call: the first is better in 82 of 100 draws.",
		);
		expect(at(0.99, false)).toBe(
			"Told apart: the first is better in 99 of 100 draws.",
		);
		expect(at(0.3, true)).toContain("this one is better in 70 of 100 draws");
	});
	test.each(READERS)(
		"every number of every option is written, $system, $language",
		(reader) => {
			const views = optionViews(report, reader);
			expect(views).toHaveLength(report.options.length);
			for (const { rows, name } of views) {
				expect(name).toMatch(/^\d\. /);
				const labels = rows.map(({ label }) => label);
				if (reader.language === "en")
					for (const label of [
						"Length",
						"Weight",
						"Butt",
						"Tip",
						"Metal added",
					])
						expect(labels).toContain(label);
				expect(rows.some(({ label }) => /invented|erfunden/.test(label))).toBe(
					true,
				);
				for (const { value } of rows)
					expect(value).not.toMatch(/NaN|undefined/);
			}
			expect(views[0]?.close).toBeNull();
			expect(views[1]?.close).toMatch(SENTENCE);
		},
	);
	test.each(READERS)(
		"built as wishes and read back, $system, $language, an option is the same cue",
		(reader) => {
			for (const option of report.options) {
				const answers = Object.fromEntries(
					wishesOf(option, reader).map(({ field, answer }) => [field, answer]),
				);
				const { input, problems } = readAnswers(answers, reader.system);
				expect(problems).toEqual([]);
				const { wishes } = input;
				const { request } = option;
				// 0.01 mm and 0.01 g: what the typed text rounds to.
				expect(wishes.lengthMm).toBeCloseTo(request.lengthMm, 1.9);
				expect(wishes.massG ?? null).toBeOneOf([
					option.wantedMassG,
					expect.closeTo(option.wantedMassG ?? 0, 1),
				]);
				expect(wishes.buttDiameterMm).toBe(request.buttDiameterMm);
				expect(wishes.tipDiameterMm).toBe(request.tipDiameterMm);
				expect(wishes.buttWood).toBe(request.buttWood);
				expect(wishes.splice).toBe(request.splice);
				expect(wishes.layout).toBe(request.layout);
				expect(wishes.taperShape).toBe(request.taperShape);
				expect(buildOf(option).ok).toBe(true);
			}
		},
	);
	test("what is built as wishes is what can be left open again", () => {
		const [best] = report.options;
		if (!best) throw new Error("no option");
		expect(wishesOf(best, METRIC).map(({ field }) => field)).toEqual(
			OPEN_WISHES.map(({ field }) => field),
		);
		for (const { field } of OPEN_WISHES) expect(FIELDS).toHaveProperty(field);
	});
	test("every word of a search of any fitting is a sentence, in both units and languages", () => {
		let told = 0;
		fc.assert(
			fc.property(anyInput, fc.constantFrom(...READERS), (input, reader) => {
				const found = searchCues(input, {
					uniform: seededUniform(1),
					candidateCount: 300,
					optionCount: 2,
					drawCount: 20,
				});
				if (!found.ok) {
					for (const { text } of waysOut(found.refusals, reader))
						expect(text).toMatch(SENTENCE);
					return;
				}
				told++;
				for (const text of wordsOf(found.value.report, reader)) {
					expect(text).toMatch(SENTENCE);
					expect(text).not.toMatch(/NaN|undefined|null/);
				}
				for (const criterion of found.value.report.criteria)
					for (const text of Object.values(criterionRow(criterion, reader)))
						expect(text).not.toMatch(/^$|NaN|undefined/);
			}),
			{ numRuns: 25 },
		);
		expect(told).toBeGreaterThan(5);
	}, 120_000);
});

describe("ways out", () => {
	const IMPOSSIBLE = withStature(1780, {
		wishes: {
			massG: 300,
			buttWood: "african-blackwood",
			lengthMm: 1500,
			buttDiameterMm: 31,
			splice: "hand-four-point",
			tipDiameterMm: 9.5,
		},
	});
	test("each is a sentence, and what its button puts in can be built", () => {
		const refusals = refusalsFrom(
			relaxationsFor({ input: IMPOSSIBLE, choices: {} }),
		);
		for (const reader of READERS) {
			const ways = waysOut(refusals, reader);
			expect(ways.length).toBeGreaterThan(0);
			for (const { text, answers } of ways) {
				expect(text).toMatch(SENTENCE);
				expect(answers.length).toBeGreaterThan(0);
				const typed = Object.fromEntries([
					["wishMass", "300 g"],
					["wishButtWood", "african-blackwood"],
					["wishLength", "1500 mm"],
					["wishButt", "31 mm"],
					["wishSplice", "hand-four-point"],
					["wishTip", "9.5 mm"],
					...answers.map(({ field, answer }) => [field, answer]),
				]);
				const { input, problems } = readAnswers(typed, reader.system);
				expect(problems).toEqual([]);
				expect(
					searchCues(
						{ ...IMPOSSIBLE, wishes: input.wishes },
						{ uniform: seededUniform(1), candidateCount: 300, drawCount: 10 },
					).ok,
				).toBe(true);
			}
		}
	}, 60_000);
	test.each([
		["wishes.lengthMm", 1500],
		["wishes.massG", 500],
		["wishes.buttDiameterMm", 29],
		["wishes.tipDiameterMm", 9.5],
		["wishes.buttWood", "gaboon-ebony"],
		["wishes.shaftWood", "white-ash"],
		["wishes.splice", "plain"],
		["wishes.layout", "centre"],
		["wishes.taperShape", "even"],
		["maxPriceMinor", 50_000],
		["longestPieceMm", 900],
	] as const)("%s has words", (field, to) => {
		const [way] = waysOut(
			[{ code: "relax", field, value: to, facts: { to, feltSteps: 1 } }],
			METRIC,
		);
		expect(way?.text).toMatch(SENTENCE);
		expect(way?.text).not.toContain(field);
	});
	test("a field without words is an error, not an empty line", () => {
		expect(() =>
			waysOut(
				[
					{
						code: "relax",
						field: "wishes.colour",
						value: 1,
						facts: { to: 2, feltSteps: 1 },
					},
				],
				METRIC,
			),
		).toThrow("wishes.colour");
	});
});

describe("what would change this", () => {
	test("every open answer has words", () => {
		expect(influences.length).toBeGreaterThan(10);
		for (const { answer } of influences)
			expect(hasDoing(answer, METRIC)).toBe(true);
		expect(hasDoing("player.shoeSize", METRIC)).toBe(false);
	});
	test("each is a sentence with how far the figures move", () => {
		for (const reader of READERS)
			for (const influence of influences)
				expect(influenceText(influence, reader)).toMatch(SENTENCE);
		expect(
			plain(
				influenceText(
					{
						answer: "stance.bridgeToGripMm",
						unit: "mm",
						now: null,
						needMovement: {
							lengthMm: 14,
							massG: 0,
							buttDiameterMm: 0,
							tipDiameterMm: 0,
						},
						cueMovement: null,
						feltSteps: 1.1,
						worthGained: null,
					},
					METRIC,
				),
			),
		).toBe(
			"Measuring bridge hand to grip hand would move the length by about ±14.0 mm.",
		);
	});
});
