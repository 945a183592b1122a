import fc from "fast-check";
import { expect, test } from "vitest";
import { FIELD_NAMES, FIELDS } from "@/lib/forms/fields";
import { answersFrom, formFrom } from "@/lib/forms/fitting";

test("a form has every field, text or list as its kind asks", () => {
	const form = formFrom({ stature: "178 cm", gripReadings: ["29 mm"] });
	expect(Object.keys(form)).toEqual(FIELD_NAMES);
	expect(form.stature).toBe("178 cm");
	expect(form.gripReadings).toEqual(["29 mm"]);
	expect(form.presentLikes).toEqual([]);
	expect(form.notes).toBe("");
});

test("what was left out is not stored", () => {
	expect(answersFrom(formFrom({ stature: " ", gripReadings: [""] }))).toEqual(
		{},
	);
});

test("stored answers come back from the form as they were", () => {
	const isList = (name: (typeof FIELD_NAMES)[number]) =>
		FIELDS[name].kind === "readings" || FIELDS[name].kind === "choices";
	const said = fc.string({ minLength: 1 }).filter((text) => text.trim() !== "");
	const answers = fc
		.subarray(FIELD_NAMES)
		.chain((names) =>
			fc.record(
				Object.fromEntries(
					names.map((name) => [
						name,
						isList(name)
							? fc.array(said, { minLength: 1, maxLength: 3 })
							: said,
					]),
				),
			),
		);
	fc.assert(
		fc.property(answers, (given) => {
			expect(answersFrom(formFrom(given))).toEqual(given);
		}),
	);
});
