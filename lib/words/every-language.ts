import { GERMAN } from "./de/messages";
import { ENGLISH } from "./en/messages";
import type { LanguageId } from "./languages";
import type { Messages } from "./reader";

/** All sentences of all languages at once: for the server and for tests. A page loads one language. */
export const MESSAGES: Readonly<Record<LanguageId, Messages>> = {
	en: ENGLISH,
	de: GERMAN,
};
