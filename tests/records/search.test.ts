import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { searchable, searchParts } from "@/lib/records/search";

describe("searchable", () => {
	test.each([
		["Zoë Ångström", "zoe angstrom"],
		["Łukasz Żółć", "lukasz zolc"],
		["Søren Æbelø", "soren aebelo"],
		["İpek Işık", "ipek isik"],
		["Jürgen Weiß", "jurgen weiss"],
		["O’Neill-Smith, Jr.", "oneill smith jr"],
		["  Two   spaces ", "two spaces"],
		["100%_sure", "100 sure"],
		["Þórður", "thordur"],
		["Мария Ёлкина", "мария елкина"],
	])("%s is searched as %s", (name, searched) => {
		expect(searchable(name)).toBe(searched);
	});

	test("of any text: stable, and without the database's wildcards", () => {
		fc.assert(
			fc.property(fc.string({ unit: "grapheme" }), (text) => {
				const once = searchable(text);
				expect(searchable(once)).toBe(once);
				expect(once).not.toMatch(/[%_\\'"]/);
			}),
		);
	});
});

test("a search has a part for each word, none where nothing is left", () => {
	expect(searchParts(" Ann-Marie  ö ")).toEqual(["ann", "marie", "o"]);
	expect(searchParts(" %_ ")).toEqual([]);
});
