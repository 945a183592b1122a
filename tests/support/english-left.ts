import {
	type MessageFormatElement,
	parse,
	TYPE,
} from "@formatjs/icu-messageformat-parser";
import type { Page } from "playwright-core";
import { MESSAGES } from "@/lib/words/every-language";

type Tree = { readonly [key: string]: string | Tree };

const messagesOf = (tree: Tree): string[] =>
	Object.values(tree).flatMap((value) =>
		typeof value === "string" ? [value] : messagesOf(value),
	);

/** What stands in a message between the values it is given. */
const literalsIn = (elements: readonly MessageFormatElement[]): string[] =>
	elements.flatMap((element) => {
		switch (element.type) {
			case TYPE.literal:
				return [element.value];
			case TYPE.tag:
				return literalsIn(element.children);
			case TYPE.plural:
			case TYPE.select:
				return Object.values(element.options).flatMap(({ value }) =>
					literalsIn(value),
				);
			default:
				return [];
		}
	});

const plain = (text: string): string => text.replace(/\s+/g, " ").trim();

/** Shorter stretches may well be German too. */
const LEAST = 12;

const GERMAN = messagesOf(MESSAGES.de).map(plain).join("\n");

/** Stretches of English messages that no German one has. */
export const ENGLISH_STRETCHES: readonly string[] = [
	...new Set(
		messagesOf(MESSAGES.en)
			.flatMap((message) => literalsIn(parse(message)))
			.map(plain),
	),
].filter((text) => text.length > LEAST && !GERMAN.includes(text));

/** Everything a page says, folded away or read out included. */
const textOf = (page: Page): Promise<string> =>
	page.evaluate(() => {
		const SPOKEN = [
			"aria-label",
			"aria-valuetext",
			"alt",
			"placeholder",
			"title",
		];
		const all = [...document.body.querySelectorAll("*")].filter(
			(element) => element.closest("script, style, body [lang='en']") === null,
		);
		return [
			document.title,
			...all.flatMap((element) => [
				...[...element.childNodes]
					.filter(({ nodeType }) => nodeType === Node.TEXT_NODE)
					.map(({ textContent }) => textContent ?? ""),
				...SPOKEN.map((name) => element.getAttribute(name) ?? ""),
			]),
		].join("\n");
	});

/** The English messages, or stretches of them, that a page in German still says. */
export async function englishLeft(page: Page): Promise<string[]> {
	const text = (await textOf(page)).split("\n").map(plain).join("\n");
	return ENGLISH_STRETCHES.filter((stretch) => text.includes(stretch));
}
