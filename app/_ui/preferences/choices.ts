import type { UnitSystem } from "@/lib/units/quantity";
import { isLanguage, type LanguageId } from "@/lib/words/languages";
import type { Manner } from "@/lib/words/reader";

export type Theme = "light" | "dark";
/** `theme` is null while the device decides. */
export interface Preferences extends Manner {
	readonly theme: Theme | null;
}

export const UNITS_COOKIE = "units";
export const THEME_COOKIE = "theme";
export const LANGUAGE_COOKIE = "language";

/** A cookie or a form may hold anything: what is not known here is as good as absent. */
export const asUnitSystem = (text: unknown): UnitSystem | null =>
	text === "metric" || text === "trade" ? text : null;

export const asTheme = (text: unknown): Theme | null =>
	text === "light" || text === "dark" ? text : null;

export const asLanguage = (text: unknown): LanguageId | null =>
	isLanguage(text) ? text : null;
