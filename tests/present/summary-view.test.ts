import { describe, expect, test } from "vitest";
import { advise } from "@/lib/advice/advise";
import type { Answers } from "@/lib/forms/fields";
import { must } from "@/lib/numerics/outcome";
import { summaryHead } from "@/lib/present/summary-head";
import { summarySource, summaryView } from "@/lib/present/summary-view";
import type { Reader } from "@/lib/words/reader";
import { inputOf, plainText } from "../support/fittings";
import { METRIC, reading, TRADE } from "../support/readers";

const GERMAN = reading("metric", "de");
const TODAY = "2026-05-03";
const ADULT: Answers = {
	game: "snooker",
	age: "34",
	hand: "right",
	stature: "178 cm",
	armSpan: "180 cm",
	gripReadings: ["30 mm", "31 mm"],
	notMeasured: ["handLength"],
	presentLength: "1448 mm",
	presentMass: "510 g",
};

const viewOf = (
	answers: Answers,
	reader: Reader = METRIC,
	more: Partial<Parameters<typeof summaryView>[0]> = {},
) => {
	const advice = must(advise(inputOf(answers)));
	return summaryView(
		{
			source: summarySource(advice),
			around: advice,
			answers,
			disputed: [],
			spec: null,
			today: TODAY,
			...more,
		},
		reader,
	);
};
const figure = (view: ReturnType<typeof viewOf>, id: string) => {
	const found = view.figures.find((one) => one.id === id);
	if (found === undefined) throw new Error(`no figure ${id}`);
	return found;
};
const plain = (lines: readonly string[]) => lines.map(plainText);

describe("what was measured", () => {
	test("stands first, several readings as their mean, and what stands in for the rest with its band", () => {
		const { measured } = viewOf(ADULT);
		expect(measured.slice(0, 3).map((line) => plainText(line.value))).toEqual([
			"178 cm",
			"180 cm",
			// (30 + 31) / 2
			"30.5 mm",
		]);
		expect(measured[2]?.note).toBe("mean of 2 readings");
		const hand = measured.find(({ measure }) => measure === "Hand length");
		expect(hand?.state).toBe("estimated");
		expect(plainText(hand?.note ?? "")).toMatch(
			/^could not be measured; estimated, nine in ten within \d+–\d+ mm$/,
		);
		const elbow = measured.find(({ measure }) =>
			measure.startsWith("Shoulder"),
		);
		expect(elbow?.note).toMatch(/^estimated; nine in ten/);
		const states = measured.map(({ state }) => state);
		expect(states.lastIndexOf("measured")).toBeLessThan(
			states.indexOf("estimated"),
		);
	});

	test("is the same in the other units", () => {
		const [height] = viewOf(ADULT, TRADE).measured;
		// 1780 mm / 25.4 = 70.08 in
		expect(plainText(height?.value ?? "")).toBe("5 ft 10 in");
	});
});

describe("what is advised", () => {
	test("is the advice's own figure with its band in words and its first reason", () => {
		const advice = must(advise(inputOf(ADULT)));
		const length = figure(viewOf(ADULT), "length");
		expect(plainText(length.value.main)).toBe(
			`${Math.round(advice.length.value)} mm`,
		);
		expect(length.band).toMatch(/^Nine in ten within \d+–\d+/);
		expect(length.reason.length).toBeGreaterThan(10);
		expect(viewOf(ADULT).figures.map(({ id }) => id)).toEqual([
			"length",
			"mass",
			"butt",
			"tip",
			"balance",
		]);
	});

	test("of a plain wish says whose it is and no band", () => {
		const wished = figure(viewOf({ ...ADULT, wishMass: "530 g" }), "mass");
		expect(plainText(wished.value.main)).toBe("530 g");
		expect(wished.band).toBe("Your own wish.");
	});

	test("is spoken of by how sure it is", () => {
		const sure = {
			firm: "closer than most players feel",
			fair: "about as much as players just feel",
			rough: "try before deciding",
		} as const;
		const advice = must(advise(inputOf(ADULT)));
		const { sureness } = advice.length;
		if (sureness === "chosen") throw new Error("nobody chose a length");
		expect(figure(viewOf(ADULT), "length").band).toContain(sure[sureness]);
	});
});

describe("what to do next", () => {
	test("names what changes from the present cue, and leaves out what nobody would feel", () => {
		const advice = must(advise(inputOf(ADULT)));
		const lines = plain(viewOf(ADULT).toTry);
		const near = { ...ADULT, presentLength: `${advice.length.value} mm` };
		expect(
			lines.some((line) => /^Length: 1448 mm now, \d+ mm here/.test(line)),
		).toBe(Math.abs(advice.length.value - 1448) >= 10);
		expect(
			plain(viewOf(near).toTry).some(
				(line) => / now, /.test(line) && line.startsWith("Length"),
			),
		).toBe(false);
	});

	test("ends with the spec a workshop makes the cue from, or with saving one", () => {
		expect(viewOf(ADULT).toTry.at(-1)).toMatch(/saved as a spec/);
		expect(
			viewOf(ADULT, METRIC, { spec: { number: 12, revision: 3 } }).toTry.at(-1),
		).toContain("spec 12, revision 3");
	});

	test("for an adult has no day to measure again; for a junior it has dates", () => {
		expect(viewOf(ADULT).again).toHaveLength(1);
		const junior = viewOf({
			game: "snooker",
			sex: "female",
			birthDate: "2015-08-19",
			age: "10",
			stature: "138 cm",
		});
		expect(junior.again.length).toBeGreaterThan(1);
		expect(junior.again.join(" ")).toMatch(/202[67]/);
	});
});

describe("what is not known", () => {
	test("lists every estimated measure, what two devices dispute, and that nobody has published a theory", () => {
		const view = viewOf(ADULT, METRIC, { disputed: ["armSpan"] });
		const text = view.unknown.join(" ");
		for (const { measure, state } of view.measured)
			expect(text.includes(measure), measure).toBe(
				state === "estimated" || measure === "Arm span",
			);
		expect(view.unknown[0]).toMatch(/Two devices.*Arm span/);
		expect(text).toMatch(/Nobody has published/);
	});

	test("care for the body tells once whom to ask with pain", () => {
		const { care } = viewOf(ADULT);
		expect(care.filter((line) => /physiotherapist/.test(line))).toHaveLength(1);
	});
});

test("in German it has as many sentences, and none of them in English", () => {
	const [english, german] = [viewOf(ADULT), viewOf(ADULT, GERMAN)];
	for (const part of ["toTry", "care", "again", "unknown"] as const) {
		expect(german[part]).toHaveLength(english[part].length);
		for (const [at, line] of german[part].entries())
			expect(line).not.toBe(english[part][at]);
	}
	expect(german.measured.map(({ value }) => value).length).toBe(
		english.measured.length,
	);
});

test("its head tells whose it is, of which fitting and spec, and of which day", () => {
	const head = (isSaved: boolean) =>
		summaryHead(
			{
				playerName: "Invented Player",
				fittingNumber: 7,
				answeredAt: new Date(Date.UTC(2026, 4, 3)),
				spec: isSaved
					? {
							number: 12,
							revision: 2,
							savedAt: new Date(Date.UTC(2026, 4, 4)),
						}
					: null,
				modelVersion: "2026.5.1",
				workshop: { name: "Invented Workshop", lines: ["A lane"], contact: "" },
			},
			METRIC,
		);
	expect(head(true)).toEqual({
		title: "Summary for Invented Player",
		lines: [
			"Invented Workshop · A lane",
			"Fitting 7, answers as of 3 May 2026",
			"From spec 12, revision 2, saved 4 May 2026. Models 2026.5.1.",
		],
	});
	expect(head(false).lines[2]).toContain("Not saved as a spec yet");
});
