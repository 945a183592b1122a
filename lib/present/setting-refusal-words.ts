import type { Refusal } from "@/lib/numerics/outcome";
import type { Reader } from "@/lib/words/reader";
import { formatNumber } from "./figures";

const bounds = ({ min, max }: Refusal): string =>
	min === 0 ? `at most ${max}` : `${min} to ${max}`;

/** Sentences of what a workshop's settings are refused for. */
export const SETTING_REFUSAL_WORDS: Readonly<
	Record<string, (refusal: Refusal, reader: Reader) => string>
> = {
	"text-length": (refusal, reader) =>
		`This text has ${formatNumber(Number(refusal.value), reader)} characters; it can have ${bounds(refusal)}.`,
	"listed-twice": ({ value }) => `“${value}” is listed twice.`,
	"not-an-address": ({ value }) =>
		`“${value}” is not an address that starts with https:// or http:// and has nothing behind its path.`,
	"unknown-currency": ({ value }) =>
		`“${value}” names no currency: three letters are needed, such as GBP or EUR.`,
	"no-such-choice": ({ value, facts }) =>
		`“${value}” is no choice of ${String(facts?.part).replaceAll("-", " ")}.`,
	"price-missing": ({ value }) =>
		`The price list needs an amount for ${String(value).replaceAll("-", " ")}.`,
	"not-a-date": ({ value }) =>
		`“${value}” is not a date of the form 2026-03-31.`,
	"date-passed": ({ value, facts }) =>
		`${value} has passed: the first day it can hold from is ${facts?.earliest}.`,
	"dates-crossed": ({ value, facts }) =>
		`The last day, ${value}, lies before the first, ${facts?.from}.`,
	"no-open-day": ({ value }) =>
		`The workshop does not open often enough after ${value} to finish a cue within 20 years: look at the closed days.`,
};
