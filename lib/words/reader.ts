import { createTranslator } from "use-intl/core";
import type { UnitSystem } from "@/lib/units/quantity";
import type { ENGLISH } from "./en/messages";
import type { LanguageId } from "./languages";

/** Every sentence of one language by its key; ICU message syntax. English is the pattern. */
export type Messages = typeof ENGLISH;
export type Say = ReturnType<typeof createTranslator<Messages>>;
export type MessageKey = Parameters<Say>[0];

/** Who is told something: in which units, in which language. */
export interface Reader {
	readonly system: UnitSystem;
	readonly language: LanguageId;
	/** A sentence by its key. Throws where the key or one of its values is missing. */
	readonly say: Say;
}

/** What can be stored or sent to a worker; `readerOf` makes the reader of it again. */
export interface Manner {
	readonly system: UnitSystem;
	readonly language: LanguageId;
}

/** A missing sentence is a programmer's error: it is thrown, never shown as a key. */
export function readerOf(
	{ system, language }: Manner,
	messages: Messages,
): Reader {
	const say = createTranslator<Messages>({
		locale: language,
		messages,
		timeZone: "UTC",
		onError: (error) => {
			throw error;
		},
	});
	return { system, language, say };
}

/** The same reader in other units. */
export const inSystem = (reader: Reader, system: UnitSystem): Reader => ({
	...reader,
	system,
});
