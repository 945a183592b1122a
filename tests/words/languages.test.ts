import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isLanguage, LANGUAGES, languageFor } from "@/lib/words/languages";

/** RFC 9110 (HTTP Semantics, 2022): section 12.5.4 on Accept-Language, 12.4.2 on quality values. */
describe("RFC 9110", () => {
	test.each([
		["da, en-gb;q=0.8, en;q=0.7", "en", "the example of section 12.5.4"],
		["de", "de", "one range"],
		["de-CH", "de", "a region of a language"],
		["en;q=0.5, de", "de", "left out, a quality is 1 (12.4.2)"],
		["en;q=0.7, de;q=0.8", "de", "the higher quality, not the first"],
		["de, en", "de", "of equal quality the first"],
		["en, de", "en", "of equal quality the first"],
		["de;q=0, en;q=0.1", "en", "a quality of 0 is not acceptable (12.4.2)"],
		["en;q=0, *", "de", "a star stands for every language not named"],
		["*;q=0.5, de;q=0.1", "en", "a star stands for every language not named"],
		["*", "en", "a star alone"],
		["fr, it;q=0.9", "en", "none of them is spoken here"],
		["de;q=0.001, fr", "de", "three decimals are the most there are"],
		["DE;Q=0.9, en;q=0.8", "de", "neither tag nor weight knows case"],
		["en ; q=0.5 , de ; q=0.9", "de", "white space around the weight"],
	] as const)("%s: %s, %s", (header, language, _why) => {
		expect(languageFor(header)).toBe(language);
	});
});

test("without the header, or with an empty one, the first language is spoken", () => {
	expect(languageFor(null)).toBe("en");
	expect(languageFor("")).toBe("en");
});

test("whatever is sent, a language spoken here comes out", () => {
	fc.assert(
		fc.property(fc.string(), (header) => {
			expect(Object.keys(LANGUAGES)).toContain(languageFor(header));
		}),
	);
	expect(isLanguage("toString")).toBe(false);
});
