import "server-only";
import { cookies } from "next/headers";
import {
	asTheme,
	asUnitSystem,
	type Preferences,
	THEME_COOKIE,
	UNITS_COOKIE,
} from "./choices";

/** What the reader chose before, so that the first byte is already in their units and theme. */
export async function readPreferences(): Promise<Preferences> {
	const jar = await cookies();
	return {
		system: asUnitSystem(jar.get(UNITS_COOKIE)?.value) ?? "metric",
		theme: asTheme(jar.get(THEME_COOKIE)?.value),
	};
}
