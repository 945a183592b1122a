import { describe, expect, test } from "vitest";
import {
	askedIn,
	NOT_ALONE,
	QUESTION_STEPS,
} from "@/app/fittings/_parts/steps";
import { CHOICES } from "@/lib/forms/choices";
import { FIELD_NAMES, type FieldName } from "@/lib/forms/fields";

/** Asked beside the steps: the mode, the flags and notes of each measure, the outlook's own question. */
const BESIDE: readonly FieldName[] = [
	"measuredAlone",
	"notMeasured",
	"birthDate",
];
const all = QUESTION_STEPS.flatMap(({ fields, more }) => [...fields, ...more]);

describe("the way through a fitting", () => {
	test("asks every field once", () => {
		expect([...all].sort()).toEqual(
			FIELD_NAMES.filter(
				(name) => !BESIDE.includes(name) && !name.endsWith("Note"),
			).sort(),
		);
	});
	test("the pages' addresses stay", () => {
		expect(QUESTION_STEPS.map(({ id }) => id)).toEqual([
			"player",
			"hand",
			"stance",
			"present-cue",
			"wishes",
		]);
	});
	test("needs three places: the wall, the hand, one shot; each measure in one of them", () => {
		const placeOf = (name: FieldName) =>
			QUESTION_STEPS.findIndex(
				({ fields, more }) => fields.includes(name) || more.includes(name),
			);
		const places = CHOICES.measure.map(placeOf);
		expect(new Set(places)).toEqual(new Set([0, 1, 2]));
		for (const name of [
			"bridgeToGrip",
			"bridgeLength",
			"gripFromButt",
		] as const)
			expect(placeOf(name)).toBe(2);
	});
});

describe("measuring alone", () => {
	const askedAlone = (answered: readonly FieldName[] = []) =>
		QUESTION_STEPS.flatMap(({ groups }) =>
			groups.flatMap((group) => askedIn(group, { isAlone: true, answered })),
		);
	test("asks for nothing that wants a second pair of hands", () => {
		expect(askedAlone().filter((name) => NOT_ALONE.includes(name))).toEqual([]);
		expect(askedAlone()).toContain("cueInHand");
		expect(askedAlone().length).toBeLessThan(
			QUESTION_STEPS.flatMap(({ fields }) => fields).length + 1,
		);
	});
	test("hides nothing that was answered before", () => {
		expect(askedAlone(["armSpan"])).toContain("armSpan");
	});
	test("with a coach the full list stands", () => {
		for (const { groups } of QUESTION_STEPS)
			for (const group of groups)
				expect(askedIn(group, { isAlone: false, answered: [] })).toEqual(
					group.fields,
				);
	});
});
