import { describe, expect, test } from "vitest";
import {
	differing,
	type StepBack,
	stepped,
} from "@/app/build/_parts/steps-back";
import type { OnlineAnswers } from "@/lib/forms/online-cue";
import type { OnlineField } from "@/lib/workshop/online-choices";

/** Answers one after the other, and every step back in turn. */
function taken(
	changes: readonly (readonly [OnlineField, string])[],
): OnlineAnswers[] {
	let answers: OnlineAnswers = {};
	let past: readonly StepBack[] = [];
	for (const [field, text] of changes) {
		past = stepped(past, answers, field);
		answers = { ...answers, [field]: text };
	}
	return [...past].reverse().map((step) => step.answers);
}

describe("steps back of an online cue", () => {
	test("go through the choices one by one, the last one first", () => {
		expect(
			taken([
				["shaftWood", "white-ash"],
				["shaftWood", "sugar-maple"],
				["case", ""],
			]),
		).toEqual([{ shaftWood: "sugar-maple" }, { shaftWood: "white-ash" }, {}]);
	});

	test("take what was typed of one figure as one, and of another as another", () => {
		expect(
			taken([
				["massG", "5"],
				["massG", "54"],
				["massG", "540 g"],
				["lengthMm", "1450"],
				["massG", "530 g"],
			]),
		).toEqual([{ massG: "540 g", lengthMm: "1450" }, { massG: "540 g" }, {}]);
	});

	test("take several choices made at once as one, however often", () => {
		const once = stepped([], {}, null);
		expect(stepped(once, { massG: "540 g" }, null)).toHaveLength(2);
	});

	test("are not without end", () => {
		let past: readonly StepBack[] = [];
		for (let i = 0; i < 300; i++)
			past = stepped(past, { tip: String(i) }, "tip");
		expect(past.length).toBeLessThan(300);
		expect(past.at(-1)?.answers).toEqual({ tip: "299" });
	});

	test("tell left out and emptied apart from nothing", () => {
		expect(differing({ tip: " " }, {})).toEqual([]);
		expect(differing({ massG: "540 g", tip: "a" }, { tip: "b" })).toEqual(
			expect.arrayContaining(["massG", "tip"]),
		);
	});
});
