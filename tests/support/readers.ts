import type { UnitSystem } from "@/lib/units/quantity";
import { MESSAGES } from "@/lib/words/every-language";
import type { LanguageId } from "@/lib/words/languages";
import { type Reader, readerOf } from "@/lib/words/reader";

export const reading = (
	system: UnitSystem,
	language: LanguageId = "en",
): Reader => readerOf({ system, language }, MESSAGES[language]);

export const METRIC = reading("metric");
export const TRADE = reading("trade");
