import { describe, expect, test } from "vitest";
import { mergeAnswers } from "@/lib/forms/merge";

const base = { stature: "178 cm", hand: "right", gripReadings: ["29 mm"] };

describe("mergeAnswers", () => {
	test("takes each side's own changes", () => {
		const merged = mergeAnswers({
			base,
			mine: { ...base, stature: "180 cm" },
			theirs: { ...base, gripReadings: ["29 mm", "30 mm"] },
		});
		expect(merged.answers).toEqual({
			stature: "180 cm",
			hand: "right",
			gripReadings: ["29 mm", "30 mm"],
		});
		expect(merged.conflicts).toEqual([]);
	});
	test("keeps mine and tells theirs where both changed one field differently", () => {
		const merged = mergeAnswers({
			base,
			mine: { ...base, stature: "180 cm" },
			theirs: { ...base, stature: "181 cm" },
		});
		expect(merged.answers.stature).toBe("180 cm");
		expect(merged.conflicts).toEqual([{ field: "stature", theirs: "181 cm" }]);
	});
	test("the same change on both sides is no conflict", () => {
		const both = { ...base, hand: "left" };
		expect(mergeAnswers({ base, mine: both, theirs: both })).toEqual({
			answers: both,
			conflicts: [],
		});
	});
	test("an answer taken back on one side is gone", () => {
		const { stature: _taken, ...without } = base;
		expect(mergeAnswers({ base, mine: without, theirs: base }).answers).toEqual(
			without,
		);
	});
});
