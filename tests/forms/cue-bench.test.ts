import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { answerCue } from "@/lib/advice/answer-cue";
import {
	BENCH_FIELD_NAMES,
	BENCH_FIELDS,
	type BenchAnswers,
	type BenchField,
	benchFromQuery,
	benchQuery,
	readBench,
	usualBench,
} from "@/lib/forms/cue-bench";
import {
	cuePictureSchema,
	pictureBodyFromQuery,
	pictureQuery,
} from "@/lib/forms/cue-picture-request";
import { must } from "@/lib/numerics/outcome";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { WOODS } from "@/lib/reference/woods";

const asked = (answers: BenchAnswers, system: "metric" | "trade" = "metric") =>
	readBench(answers, system);

describe("with nothing said", () => {
	test.each(Object.keys(GAMES) as GameId[])(
		"the usual cue of %s can be answered in full",
		(game) => {
			const { question, problems } = asked({ game });
			expect(problems).toEqual([]);
			const answer = must(answerCue(question));
			expect(answer.year).not.toBeNull();
			expect(answer.grain).not.toBeNull();
			const [low, high] = GAMES[game].usual.lengthMm;
			expect(question.cue.lengthMm).toBeGreaterThanOrEqual(low);
			expect(question.cue.lengthMm).toBeLessThanOrEqual(high);
		},
	);
});

describe("what was typed", () => {
	test("is read in the units it is written in", () => {
		const { question, problems } = asked({
			length: "58 in",
			butt: "29.5",
			mass: "18 oz",
			rings: "1.5 mm",
			tilt: "-0.4",
			points: "690 mm",
			core: "11 mm",
			veneerWood: "sugar-maple",
			frontWedgeWood: "olive",
			joint: "400",
			jointMetal: "aluminium",
			dampHumidity: "72",
		});
		expect(problems).toEqual([]);
		expect(question.cue).toMatchObject({
			lengthMm: 58 * 25.4,
			buttDiameterMm: 29.5,
			splicing: {
				points: {
					pointFromButtMm: 690,
					coreHalfWidthMm: 5.5,
					veneers: [{ wood: "sugar-maple", thicknessMm: 0.6 }],
				},
				frontWedge: { wood: "olive" },
			},
			fittings: { jointFromButtMm: 400, jointMetal: "aluminium" },
		});
		expect(question.wantedMassG).toBeCloseTo(510.29, 2);
		expect(question.grain).toEqual({ ringSpacingMm: 1.5, tiltDeg: -0.4 });
		expect(question.seasons[1]?.air.relativeHumidityPct).toBe(72);
		expect(must(answerCue(question)).plan).not.toBeNull();
	});
	test("bare numbers are millimetres or inches", () => {
		expect(asked({ length: "1480" }).question.cue.lengthMm).toBe(1480);
		expect(asked({ length: "58" }, "trade").question.cue.lengthMm).toBe(
			58 * 25.4,
		);
	});
	test.each([
		[
			{ length: "99 m" },
			{ field: "length", code: "out-of-range", min: 900, max: 1650 },
		],
		[{ length: "long" }, { field: "length", code: "not-a-number" }],
		[{ mass: "500 mm" }, { field: "mass", code: "unknown-unit" }],
		[
			{ tilt: "11" },
			{ field: "tilt", code: "out-of-range", min: -10, max: 10 },
		],
		[
			{ dryHumidity: "120" },
			{ field: "dryHumidity", code: "out-of-range", max: 95 },
		],
		[{ buttWood: "plastic" }, { field: "buttWood", code: "not-a-choice" }],
	] as const)("%j is told and counts as left out", (answers, problem) => {
		const { question, problems } = asked(answers);
		expect(problems).toHaveLength(1);
		expect(problems[0]).toMatchObject(problem);
		expect(question).toEqual(asked({}).question);
	});
	test("any text at all is read or told, never thrown", () => {
		fc.assert(
			fc.property(
				fc.constantFrom(...BENCH_FIELD_NAMES),
				fc.string({ maxLength: 20 }),
				fc.constantFrom("metric", "trade"),
				(name, text, system) => {
					const { problems } = asked({ [name]: text }, system);
					expect(problems.length).toBeLessThanOrEqual(1);
				},
			),
			{ numRuns: 300 },
		);
	});
	test("a plain butt has no points to choose, and the models say so", () => {
		const { question } = asked({ splice: "plain", points: "600 mm" });
		const answer = answerCue(question);
		expect(answer.ok).toBe(false);
		if (!answer.ok)
			expect(answer.refusals[0]).toMatchObject({
				code: "hand-splice-only",
				field: "splicing.points",
			});
	});
});

describe("the address", () => {
	const anyAnswers = fc.record(
		Object.fromEntries(
			BENCH_FIELD_NAMES.map((name) => {
				const field: BenchField = BENCH_FIELDS[name];
				return [
					name,
					field.kind === "choice"
						? fc.constantFrom(...field.options)
						: fc
								.double({ min: field.min, max: field.max, noNaN: true })
								.map(String),
				];
			}),
		),
		{ requiredKeys: [] },
	) as fc.Arbitrary<BenchAnswers>;
	test("keeps every answer, and nothing else", () => {
		fc.assert(
			fc.property(anyAnswers, (answers) => {
				const query = Object.fromEntries(
					new URLSearchParams(benchQuery(answers)),
				);
				expect(benchFromQuery(query)).toEqual(answers);
			}),
		);
		expect(
			benchFromQuery({ length: "1480", stranger: "x", tip: ["9", "10"] }),
		).toEqual({
			length: "1480",
		});
		expect(benchFromQuery({ length: "9".repeat(500) }).length).toHaveLength(60);
	});
	test("of a picture is read back as the same request", () => {
		const { question } = asked({
			veneerWood: "sugar-maple",
			frontWedgeWood: "zebrano",
			joint: "400 mm",
			endPiece: "60 mm",
		});
		const query = pictureQuery({
			cue: question.cue,
			wantedMassG: 540,
			part: "butt",
			grain: { shaft: { ringSpacingMm: 2, tiltDeg: 0.1 }, butt: null },
		});
		const body = cuePictureSchema.parse(
			pictureBodyFromQuery(new URLSearchParams(query)),
		);
		expect(body.cue).toEqual(JSON.parse(JSON.stringify(question.cue)));
		expect(body).toMatchObject({ wantedMassG: 540, part: "butt" });
		expect(body.grain?.shaft?.tiltDeg).toBe(0.1);
	});
});

test("every usual wood is one its part may be made of", () => {
	for (const game of Object.keys(GAMES) as GameId[]) {
		const { shaftWood, buttWood } = usualBench(game);
		expect(WOODS[shaftWood].uses).toContain("shaft");
		expect(WOODS[buttWood].uses).toContain("butt");
	}
});
