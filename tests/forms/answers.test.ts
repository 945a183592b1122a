import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { answersSchema, problemsOf, readAnswers } from "@/lib/forms/answers";
import { BOUNDS } from "@/lib/forms/bounds";
import { FIELD_NAMES, FIELDS } from "@/lib/forms/fields";
import { MEASURE_BOUNDS } from "@/lib/player/measures";

describe("readAnswers", () => {
	test("turns typed text into the domain input in mm and g", () => {
		const { input, problems, answered } = readAnswers({
			stature: "178 cm",
			armSpan: "5 ft 11",
			gripReadings: ["29.5 mm", "", "29 mm"],
			hand: "left",
			seated: "no",
			game: "american-pool",
			presentMass: "18.5 oz",
			presentDislikes: ["too-thick", "too-light"],
			wishMass: "19 oz",
			notes: "sights along the grain",
		});
		expect(problems).toEqual([]);
		expect(input.player.statureMm).toBe(1780);
		expect(input.player.armSpanMm).toBeCloseTo(71 * 25.4, 9);
		expect(input.player.gripCircleReadingsMm).toEqual([29.5, 29]);
		expect(input.hand).toBe("left");
		expect(input.stance).toEqual({ gameId: "american-pool", seated: false });
		expect(input.presentCue.massG).toBeCloseTo(18.5 * 28.349523125, 9);
		expect(input.presentCue.dislikes).toEqual(["too-thick", "too-light"]);
		expect(input.wishes.massG).toBeCloseTo(19 * 28.349523125, 9);
		expect(answered).toContain("notes");
	});

	test("what could not be measured is told apart from what was not asked", () => {
		const { input, problems, answered } = readAnswers({
			notMeasured: ["armSpan", "bridgeToGrip"],
			measuredAlone: "yes",
			armSpanNote: "shoulder does not lift",
		});
		expect(problems).toEqual([]);
		expect(input).toMatchObject({
			notMeasured: ["armSpan", "bridgeToGrip"],
			measuredAlone: true,
			player: {},
		});
		expect(answered).toEqual(["measuredAlone", "notMeasured", "armSpanNote"]);
		expect(readAnswers({ notMeasured: ["budget"] }).problems).toMatchObject([
			{ field: "notMeasured", code: "not-a-choice", text: "budget" },
		]);
	});

	test("a date of birth is checked and goes into no figure", () => {
		const read = readAnswers({ birthDate: "2015-08-19" });
		expect(read.problems).toEqual([]);
		expect(JSON.stringify(read.input)).not.toContain("2015");
		for (const wrong of ["2015-02-30", "19.8.2015", "soon"])
			expect(problemsOf("birthDate", wrong, "metric")).toMatchObject([
				{ code: "not-a-date", text: wrong },
			]);
	});

	test("the cue in hand, the table and the support reach the stance", () => {
		const { input } = readAnswers({
			cueInHand: "57 in",
			clothHeight: "82 cm",
			standingFrame: "yes",
			glasses: "yes",
		});
		expect(input.stance).toEqual({
			gameId: "snooker",
			cueInHandMm: 57 * 25.4,
			clothHeightMm: 820,
			standingFrame: true,
			glasses: true,
		});
	});

	test("nothing answered is a valid fitting for snooker", () => {
		expect(readAnswers({})).toEqual({
			input: {
				player: {},
				stance: { gameId: "snooker" },
				presentCue: {},
				wishes: {},
			},
			problems: [],
			answered: [],
		});
	});

	test("blank text counts as left out", () => {
		expect(
			readAnswers({ stature: "  ", gripReadings: ["", " "], notes: "" })
				.answered,
		).toEqual([]);
	});

	test("one unreadable answer is reported and hides none of the others", () => {
		const { input, problems } = readAnswers({
			stature: "tall",
			armSpan: "180 cm",
		});
		expect(input.player).toEqual({ armSpanMm: 1800 });
		expect(problems).toEqual([
			expect.objectContaining({
				field: "stature",
				code: "not-a-number",
				text: "tall",
			}),
		]);
	});

	test.each([
		["stature", "0", "out-of-range"],
		["stature", "-178 cm", "out-of-range"],
		["stature", "999999 cm", "out-of-range"],
		["stature", "178 kg", "unknown-unit"],
		["stature", "178 oz", "unknown-unit"],
		["presentMass", "520 mm", "unknown-unit"],
		["age", "twelve", "not-a-number"],
		["age", "3", "out-of-range"],
		["hand", "both", "not-a-choice"],
		["seated", "perhaps", "not-a-choice"],
		["wishButtWood", "brass", "not-a-choice"],
	] as const)("%s %j is refused as %s", (field, text, code) => {
		const [problem] = problemsOf(field, text, "metric");
		expect(problem).toMatchObject({ field, code });
	});

	test("a refused quantity names its bounds", () => {
		expect(problemsOf("stature", "10 cm", "metric")[0]).toMatchObject({
			value: 100,
			min: MEASURE_BOUNDS.statureMm[0],
			max: MEASURE_BOUNDS.statureMm[1],
		});
	});

	test("the second of several readings is named by its place", () => {
		expect(problemsOf("gripReadings", ["29 mm", "290 mm"], "metric")).toEqual([
			expect.objectContaining({
				field: "gripReadings",
				index: 1,
				code: "out-of-range",
				value: 290,
			}),
		]);
	});

	test("a bare number takes the reader's own unit", () => {
		expect(
			readAnswers({ stature: "178" }, "metric").input.player.statureMm,
		).toBe(1780);
		expect(
			readAnswers({ stature: "70" }, "trade").input.player.statureMm,
		).toBeCloseTo(1778, 9);
	});

	test("any text in any field gives an input or a problem, never a throw or NaN", () => {
		fc.assert(
			fc.property(
				fc.constantFrom(...FIELD_NAMES),
				fc.oneof(
					fc.string(),
					fc.array(fc.string(), { maxLength: 4 }),
					fc.float().map(String),
				),
				(name, answer) => {
					const { input, problems, answered } = readAnswers({ [name]: answer });
					expect(JSON.stringify(input)).not.toMatch(/null|NaN/);
					expect(problems.length === 0 || !answered.includes(name)).toBe(true);
				},
			),
			{ numRuns: 500 },
		);
	});
});

describe("answersSchema", () => {
	test("keeps unreadable text: a draft is stored as typed", () => {
		expect(answersSchema.safeParse({ stature: "tall" }).success).toBe(true);
	});
	test("refuses unknown fields and oversized text", () => {
		expect(answersSchema.safeParse({ height: "178 cm" }).success).toBe(false);
		expect(answersSchema.safeParse({ notes: "x".repeat(9000) }).success).toBe(
			false,
		);
	});
});

test("every quantity field has bounds that let something in", () => {
	for (const bound of Object.values(BOUNDS))
		expect(bound.min).toBeLessThan(bound.max);
	for (const name of FIELD_NAMES) {
		const field = FIELDS[name];
		if ("options" in field) expect(field.options.length).toBeGreaterThan(1);
	}
});

describe("priorities and ceilings", () => {
	test("go where the search reads them", () => {
		const { input, problems } = readAnswers({
			priorityMore: ["price", "balance"],
			priorityNone: ["finish"],
			wishSteadiness: "steadier",
			longestPiece: "105 cm",
			maxPrice: "£449.50",
		});
		expect(problems).toEqual([]);
		expect(input.priorities).toEqual({
			more: ["price", "balance"],
			none: ["finish"],
			doctrine: { steadiness: "steadier" },
			longestPieceMm: 1050,
			maxPriceMinor: 44_950,
		});
	});
	test.each([
		["450", 45_000],
		["449,5", 44_950],
		["450 GBP", 45_000],
		["€ 300", 30_000],
	])("%s is an amount", (text, minor) => {
		expect(
			readAnswers({ maxPrice: text }).input.priorities?.maxPriceMinor,
		).toBe(minor);
	});
	test.each(["cheap", "1,000,000", "-5", "1e5", "450.123"])(
		"%s is not",
		(text) => {
			expect(problemsOf("maxPrice", text, "metric")).toHaveLength(1);
		},
	);
});
