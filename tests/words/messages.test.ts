import {
	type MessageFormatElement,
	parse,
	TYPE,
} from "@formatjs/icu-messageformat-parser";
import { describe, expect, test } from "vitest";
import { MESSAGES } from "@/lib/words/every-language";
import { LANGUAGES, type LanguageId } from "@/lib/words/languages";

type Tree = { readonly [key: string]: string | Tree };

/** Every message of a language by its whole key. */
const messagesOf = (
	tree: Tree,
	path: readonly string[] = [],
): [string, string][] =>
	Object.entries(tree).flatMap(([key, value]) =>
		typeof value === "string"
			? [[[...path, key].join("."), value] as [string, string]]
			: messagesOf(value, [...path, key]),
	);

const IDS = Object.keys(LANGUAGES) as LanguageId[];
const BY_LANGUAGE = Object.fromEntries(
	IDS.map((id) => [id, new Map(messagesOf(MESSAGES[id]))]),
) as Record<LanguageId, Map<string, string>>;
const KEYS = [...BY_LANGUAGE.en.keys()];

/** What a sentence has to be given: "count:plural", "name:value", "who:select(he|she|other)", "link:tag". */
const argumentsOf = (elements: readonly MessageFormatElement[]): string[] =>
	elements.flatMap((element) => {
		switch (element.type) {
			case TYPE.literal:
			case TYPE.pound:
				return [];
			case TYPE.tag:
				return [`${element.value}:tag`, ...argumentsOf(element.children)];
			case TYPE.plural:
				return [
					`${element.value}:${element.pluralType}`,
					...Object.values(element.options).flatMap(({ value }) =>
						argumentsOf(value),
					),
				];
			case TYPE.select:
				return [
					`${element.value}:select(${Object.keys(element.options).sort().join("|")})`,
					...Object.values(element.options).flatMap(({ value }) =>
						argumentsOf(value),
					),
				];
			default:
				return [`${element.value}:value`];
		}
	});

const namesOf = (message: string): string[] =>
	[...new Set(argumentsOf(parse(message)))].sort();

/** What a language has wrong with its plurals: a category it does not know, or one it needs and lacks. */
const pluralFaults = (
	elements: readonly MessageFormatElement[],
	language: LanguageId,
): string[] =>
	elements.flatMap((element) => {
		if (element.type === TYPE.tag)
			return pluralFaults(element.children, language);
		if (element.type !== TYPE.plural && element.type !== TYPE.select) return [];
		const inside = Object.values(element.options).flatMap(({ value }) =>
			pluralFaults(value, language),
		);
		if (element.type === TYPE.select) return inside;
		const given = Object.keys(element.options).filter(
			(name) => !name.startsWith("="),
		);
		const known = new Intl.PluralRules(language, {
			type: element.pluralType,
		}).resolvedOptions().pluralCategories;
		return [
			...given.filter((name) => !(known as string[]).includes(name)),
			...known
				.filter((name) => !given.includes(name))
				.map((name) => `no ${name}`),
			...inside,
		];
	});

test("the checks below see what they are for", () => {
	expect(KEYS.length).toBeGreaterThan(10);
	expect(
		namesOf(
			"{who, select, me {I} other {<b>{name}</b>}}: {n, plural, one {#} other {#}}",
		),
	).toEqual(["b:tag", "n:cardinal", "name:value", "who:select(me|other)"]);
	expect(pluralFaults(parse("{n, plural, few {#} other {#}}"), "de")).toEqual([
		"few",
		"no one",
	]);
	expect(() => parse("{n, plural, one {#}}")).toThrow();
});

describe.each(IDS)("%s", (language) => {
	const messages = BY_LANGUAGE[language];

	test("has every message, and none of its own", () => {
		expect([...messages.keys()].sort()).toEqual([...KEYS].sort());
	});

	test("leaves no message empty", () => {
		expect(
			[...messages]
				.filter(([, text]) => text.trim() === "")
				.map(([key]) => key),
		).toEqual([]);
	});

	test("asks for the same values in every message", () => {
		const differing = [...messages].flatMap(([key, text]) => {
			const [own, pattern] = [
				namesOf(text),
				namesOf(BY_LANGUAGE.en.get(key) ?? ""),
			];
			return own.join() === pattern.join()
				? []
				: [`${key}: ${own} for ${pattern}`];
		});
		expect(differing).toEqual([]);
	});

	test("uses the plural categories of its own", () => {
		const faults = [...messages].flatMap(([key, text]) =>
			pluralFaults(parse(text), language).map((fault) => `${key}: ${fault}`),
		);
		expect(faults).toEqual([]);
	});
});

test("no sentence of several words is the same in both languages", () => {
	const words = /\p{L}{2,}/gu;
	const left = KEYS.filter((key) => {
		const text = BY_LANGUAGE.en.get(key) ?? "";
		return (
			text === BY_LANGUAGE.de.get(key) &&
			(text.replace(/\{[^{}]*\}/g, "").match(words)?.length ?? 0) > 3
		);
	});
	expect(left).toEqual([]);
});
