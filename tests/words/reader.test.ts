import { expect, test } from "vitest";
import { formatNumber, formatPercent } from "@/lib/present/figures";
import { inSystem, type MessageKey } from "@/lib/words/reader";
import { METRIC, reading } from "@/tests/support/readers";

const GERMAN = reading("metric", "de");

test("a sentence comes in the reader's language", () => {
	expect(METRIC.say("shell.players")).toBe("Players");
	expect(GERMAN.say("shell.players")).toBe("Spieler");
});

test("a key without a sentence, or a value left out, is an error and never shown", () => {
	expect(() => METRIC.say("shell.nowhere" as MessageKey)).toThrow(/nowhere/);
	expect(() => METRIC.say("figure.percent")).toThrow(/number/);
});

test("numbers have the decimal mark of the language, in both systems of units", () => {
	expect(formatNumber(9.5, METRIC, 1)).toBe("9.5");
	expect(formatNumber(9.5, GERMAN, 1)).toBe("9,5");
	expect(formatNumber(9.5, inSystem(GERMAN, "trade"), 1)).toBe("9,5");
	expect(formatPercent(0.125, GERMAN, 1).replace("\u00a0", " ")).toBe("12,5 %");
	expect(inSystem(GERMAN, "trade")).toMatchObject({
		system: "trade",
		language: "de",
	});
});
