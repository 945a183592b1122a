import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { advise } from "@/lib/advice/advise";
import { specFrom } from "@/lib/advice/spec";
import { problemsOf } from "@/lib/forms/answers";
import { FIELD_NAMES } from "@/lib/forms/fields";
import { adviceView } from "@/lib/present/advice-view";
import { cautionText, problemText, refusalView } from "@/lib/present/notices";
import { sheetView } from "@/lib/present/sheet-view";
import { buildFromSpec } from "@/lib/workshop/job-content";
import { METRIC, reading, TRADE } from "@/tests/support/readers";
import { anyInput, unsaid } from "../support/inputs";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const GERMAN = reading("metric", "de");
const SENTENCE = /^[\p{Lu}“„\d].*[.!?]$/su;

describe("cautions", () => {
	test("a code without words of its own is shown, not hidden", () => {
		expect(
			cautionText({ code: "new-thing", facts: { lengthMm: 12.34 } }, METRIC),
		).toBe("new thing; lengthMm 12.3");
	});
	test("an improbable reading is named, in the units people give it in", () => {
		const caution = {
			code: "reading-unexpected",
			facts: { field: "statureMm", value: 1500, expectedMm: 1778 },
		};
		expect(plain(cautionText(caution, METRIC))).toMatch(
			/^Height: 150 cm is unusual where the other readings suggest 178 cm\./,
		);
		expect(plain(cautionText(caution, TRADE))).toContain("5 ft 10 in");
	});
	test("every caution any fitting raises has a sentence, in both units and languages", () => {
		fc.assert(
			fc.property(
				anyInput,
				fc.constantFrom(METRIC, TRADE, GERMAN),
				(input, reader) => {
					const advice = advise(input);
					if (!advice.ok) return;
					for (const text of adviceView(advice.value, reader).cautions)
						expect(text).toMatch(SENTENCE);
					const spec = specFrom(advice.value, null);
					if (spec.ok)
						for (const text of sheetView(buildFromSpec(spec.value), reader)
							.cautions)
							expect(text).toMatch(SENTENCE);
				},
			),
			{ numRuns: 60 },
		);
	});
});

describe("refusals", () => {
	test("a weight the wood cannot give offers the nearest that works, and it works", () => {
		const outcome = advise({
			...unsaid,
			wishes: { massG: 310, buttWood: "african-blackwood" },
		});
		if (!outcome.ok || outcome.value.build.plan.ok)
			throw new Error("expected a refused plan");
		const [refusal] = outcome.value.build.plan.refusals;
		if (refusal === undefined) throw new Error("expected a refusal");
		const { text, remedy } = refusalView(refusal, METRIC);
		expect(plain(text)).toContain("310 g");
		const massG = Number(remedy?.answer.replace(" g", ""));
		const again = advise({
			...unsaid,
			wishes: { massG, buttWood: "african-blackwood" },
		});
		expect(again.ok && again.value.isBuildable).toBe(true);
	});
	test("a refusal without words of its own names field, value and bounds", () => {
		const { text } = refusalView(
			{
				code: "out-of-range",
				field: "player.statureMm",
				value: 3000,
				min: 900,
				max: 2300,
			},
			METRIC,
		);
		expect(plain(text)).toBe(
			"Stature is 3000 mm; it can be at least 900 mm and at most 2300 mm.",
		);
	});
});

test("every problem of every field is a sentence that names the field and what was typed", () => {
	fc.assert(
		fc.property(
			fc.constantFrom(...FIELD_NAMES),
			fc.string({ minLength: 1, maxLength: 20 }),
			(name, text) => {
				for (const problem of problemsOf(name, text, "metric"))
					for (const reader of [TRADE, GERMAN])
						expect(problemText(problem, reader)).toMatch(SENTENCE);
			},
		),
		{ numRuns: 400 },
	);
	const [problem] = problemsOf("stature", "10 cm", "metric");
	expect(problem && plain(problemText(problem, METRIC))).toBe(
		"Height: 10 cm is outside what the models cover. It can be 90 cm to 230 cm.",
	);
});
