import { describe, expect, test } from "vitest";
import { CHOICES } from "@/lib/forms/choices";
import { FIELD_NAMES, FIELDS, noteOn } from "@/lib/forms/fields";
import {
	choiceLabel,
	fieldLabel,
	gameName,
	inSentence,
	materialName,
	metalName,
	placeName,
	ruleLabel,
	seasonName,
	woodName,
} from "@/lib/present/labels";
import { capital, joinedAnd } from "@/lib/present/lists";
import { PLACES, type PlaceId } from "@/lib/reference/climate";
import { METALS, type MetalId } from "@/lib/reference/metals";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { WOODS, type WoodId } from "@/lib/reference/woods";
import { METRIC, reading } from "@/tests/support/readers";

const GERMAN = reading("metric", "de");
const keys = <Key extends string>(table: Readonly<Record<Key, unknown>>) =>
	Object.keys(table) as Key[];

describe("the names in English are the tables' own", () => {
	test.each(keys<WoodId>(WOODS))("%s", (id) => {
		expect(woodName(id, METRIC)).toBe(WOODS[id].name);
		expect(materialName(id, METRIC)).toBe(WOODS[id].name);
		expect(inSentence.wood(id, METRIC)).toBe(WOODS[id].name.toLowerCase());
	});
	test.each(keys<MetalId>(METALS))("%s", (id) => {
		expect(metalName(id, METRIC)).toBe(METALS[id].name);
		expect(materialName(id, METRIC)).toBe(METALS[id].name);
		expect(inSentence.material(id, METRIC)).toBe(METALS[id].name.toLowerCase());
	});
	test.each(keys<PlaceId>(PLACES))("%s", (id) => {
		expect(placeName(id, METRIC)).toBe(PLACES[id].name);
		expect(inSentence.place(id, METRIC)).toBe(PLACES[id].name.toLowerCase());
	});
	test.each(keys<GameId>(GAMES))("%s", (id) => {
		expect(gameName(id, METRIC)).toBe(GAMES[id].name);
	});
});

test.each([METRIC, GERMAN])(
	"every question has a name, $language",
	(reader) => {
		const labels = FIELD_NAMES.map((name) => fieldLabel(name, reader));
		expect(new Set(labels).size).toBe(FIELD_NAMES.length);
		for (const name of FIELD_NAMES)
			expect(inSentence.field(name, reader).toLowerCase()).toBe(
				fieldLabel(name, reader).toLowerCase(),
			);
		expect(fieldLabel(noteOn("stature"), reader)).toContain(
			fieldLabel("stature", reader),
		);
	},
);

test.each([METRIC, GERMAN])("every choice has a name, $language", (reader) => {
	for (const name of FIELD_NAMES) {
		const field = FIELDS[name];
		if (!("options" in field)) continue;
		for (const option of field.options) {
			expect(choiceLabel(name, option, reader)).not.toBe(option);
		}
	}
	for (const measure of CHOICES.measure)
		expect(choiceLabel("notMeasured", measure, reader)).toBe(
			fieldLabel(measure, reader),
		);
});

test("what has no name is shown as it is", () => {
	expect(choiceLabel("game", "croquet", METRIC)).toBe("croquet");
	expect(choiceLabel("notes", "anything", METRIC)).toBe("anything");
	expect(choiceLabel("game", "", METRIC)).toBe("");
	expect(ruleLabel("colour", GERMAN)).toBe("colour");
	expect(seasonName("monsoon", GERMAN)).toBe("monsoon");
});

test("the seasons of every place are named", () => {
	for (const { seasons } of Object.values(PLACES))
		for (const { name } of seasons) {
			expect(seasonName(name, METRIC)).toBe(name);
			expect(seasonName(name, GERMAN)).not.toBe(name);
		}
});

test("nouns keep their capital inside a German sentence", () => {
	expect(inSentence.wood("white-ash", GERMAN)).toBe("Weißesche");
	expect(inSentence.layout("one-piece", GERMAN)).toBe("einteilig");
	expect(inSentence.field("wishLength", GERMAN)).toBe("gewünschte Länge");
});

test("lists end as the language ends them", () => {
	expect(joinedAnd([], METRIC)).toBe("");
	expect(joinedAnd(["a"], METRIC)).toBe("a");
	expect(joinedAnd(["a", "b", "c"], METRIC)).toBe("a, b and c");
	expect(joinedAnd(["a", "b", "c"], GERMAN)).toBe("a, b und c");
	expect(capital("éclat")).toBe("Éclat");
});
