import type { UnitSystem } from "@/lib/units/quantity";

export type Theme = "light" | "dark";
/** `theme` is null while the device decides. */
export interface Preferences {
	readonly system: UnitSystem;
	readonly theme: Theme | null;
}

export const UNITS_COOKIE = "units";
export const THEME_COOKIE = "theme";

/** A cookie or a form may hold anything: what is not known here is as good as absent. */
export const asUnitSystem = (text: unknown): UnitSystem | null =>
	text === "metric" || text === "trade" ? text : null;

export const asTheme = (text: unknown): Theme | null =>
	text === "light" || text === "dark" ? text : null;
