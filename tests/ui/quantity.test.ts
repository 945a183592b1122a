import { describe, expect, it } from "vitest";
import {
	type QuantitySpec,
	readTyped,
	refusedWords,
	settledText,
} from "@/app/_ui/fields/quantity";
import type { UnitSystem } from "@/lib/units/quantity";

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

const words = (text: string, spec: QuantitySpec, system: UnitSystem) => {
	const read = readTyped(text, spec, system);
	if (read.ok) throw new Error(`${text} was read as ${read.value}`);
	return refusedWords("Length", read.refusal, spec, system).replace(
		/\u00a0/g,
		" ",
	);
};

describe("what a field says about an answer it cannot take", () => {
	it("names the field, the value and both bounds in the reader's units", () => {
		expect(words("70 in", length, "trade")).toBe(
			"Length: 70 in is outside 36 in to 65 in.",
		);
		expect(words("70 in", length, "metric")).toBe(
			"Length: 1778 mm is outside 914 mm to 1651 mm.",
		);
		expect(words("2 lb", mass, "trade")).toMatch(
			/^Length: 32\.0 oz is outside/,
		);
	});

	it("shows how to write it where it cannot be read", () => {
		expect(words("long", length, "metric")).toMatch(
			/“long” cannot be read as a length\. Write it as for example “1283 mm”; it can be 914 mm to 1651 mm\./,
		);
		expect(words("18 oz", length, "trade")).toMatch(/unit in “18 oz”/);
		expect(words("1,450", { ...length, min: 1, max: 2000 }, "metric")).toMatch(
			/two ways/,
		);
	});

	it("offers an example that the field itself takes", () => {
		for (const system of ["metric", "trade"] as const)
			for (const spec of [length, stature, mass]) {
				const example = /example “([^”]+)”/.exec(words("?", spec, system))?.[1];
				expect(readTyped(example ?? "", spec, system)).toMatchObject({
					ok: true,
				});
			}
	});
});

describe("a bare number", () => {
	it("gets its unit when the field is left, so that a later switch keeps its meaning", () => {
		const settled = settledText("1450", length, "metric");
		expect(settled).toBe("1450 mm");
		expect(readTyped(settled, length, "trade")).toMatchObject({ value: 1450 });
		expect(settledText(" 57½ ", length, "trade")).toBe("57½ in");
		expect(settledText("175", stature, "metric")).toBe("175 cm");
	});

	it("is left alone where it has a unit or cannot be read", () => {
		expect(settledText("5 ft 9", stature, "metric")).toBe("5 ft 9");
		expect(settledText("9999999", length, "metric")).toBe("9999999");
		expect(settledText("", length, "metric")).toBe("");
	});
});
