import { describe, expect, it } from "vitest";
import {
	type QuantitySpec,
	readTyped,
	refusedWords,
	settledText,
} from "@/app/_ui/fields/quantity";
import type { Reader } from "@/lib/words/reader";
import { METRIC, TRADE } from "@/tests/support/readers";

const length: QuantitySpec = {
	dimension: "length",
	kind: "length",
	min: 914.4,
	max: 1651,
};
const stature: QuantitySpec = {
	dimension: "length",
	kind: "body",
	min: 900,
	max: 2300,
};
const mass: QuantitySpec = {
	dimension: "mass",
	kind: "cue",
	min: 300,
	max: 850,
};

const words = (text: string, spec: QuantitySpec, reader: Reader) => {
	const read = readTyped(text, spec, reader);
	if (read.ok) throw new Error(`${text} was read as ${read.value}`);
	return refusedWords("Length", read.refusal, spec, reader).replace(
		/\u00a0/g,
		" ",
	);
};

describe("what a field says about an answer it cannot take", () => {
	it("names the field, the value and both bounds in the reader's units", () => {
		expect(words("70 in", length, TRADE)).toBe(
			"Length: 70 in is outside 36 in to 65 in.",
		);
		expect(words("70 in", length, METRIC)).toBe(
			"Length: 1778 mm is outside 914 mm to 1651 mm.",
		);
		expect(words("2 lb", mass, TRADE)).toMatch(/^Length: 32\.0 oz is outside/);
	});

	it("shows how to write it where it cannot be read", () => {
		expect(words("long", length, METRIC)).toMatch(
			/“long” cannot be read as a length\. Write it as for example “1283 mm”; it can be 914 mm to 1651 mm\./,
		);
		expect(words("18 oz", length, TRADE)).toMatch(/unit in “18 oz”/);
		expect(words("1,450", { ...length, min: 1, max: 2000 }, METRIC)).toMatch(
			/two ways/,
		);
	});

	it("offers an example that the field itself takes", () => {
		for (const reader of [METRIC, TRADE])
			for (const spec of [length, stature, mass]) {
				const example = /example “([^”]+)”/.exec(words("?", spec, reader))?.[1];
				expect(readTyped(example ?? "", spec, reader)).toMatchObject({
					ok: true,
				});
			}
	});
});

describe("a bare number", () => {
	it("gets its unit when the field is left, so that a later switch keeps its meaning", () => {
		const settled = settledText("1450", length, METRIC);
		expect(settled).toBe("1450 mm");
		expect(readTyped(settled, length, TRADE)).toMatchObject({ value: 1450 });
		expect(settledText(" 57½ ", length, TRADE)).toBe("57½ in");
		expect(settledText("175", stature, METRIC)).toBe("175 cm");
	});

	it("is left alone where it has a unit or cannot be read", () => {
		expect(settledText("5 ft 9", stature, METRIC)).toBe("5 ft 9");
		expect(settledText("9999999", length, METRIC)).toBe("9999999");
		expect(settledText("", length, METRIC)).toBe("");
	});
});
