"use server";

import { cookies } from "next/headers";
import {
	asLanguage,
	asTheme,
	asUnitSystem,
	LANGUAGE_COOKIE,
	THEME_COOKIE,
	UNITS_COOKIE,
} from "./choices";

const YEAR_S = 365 * 24 * 60 * 60;
const remembered = {
	maxAge: YEAR_S,
	path: "/",
	sameSite: "lax",
	httpOnly: true,
} as const;

export async function chooseUnits(form: FormData): Promise<void> {
	const system = asUnitSystem(form.get(UNITS_COOKIE));
	if (system !== null) (await cookies()).set(UNITS_COOKIE, system, remembered);
}

/** Any other word than a theme hands the choice back to the device. */
export async function chooseTheme(form: FormData): Promise<void> {
	const theme = asTheme(form.get(THEME_COOKIE));
	const jar = await cookies();
	if (theme === null) jar.delete(THEME_COOKIE);
	else jar.set(THEME_COOKIE, theme, remembered);
}

export async function chooseLanguage(form: FormData): Promise<void> {
	const language = asLanguage(form.get(LANGUAGE_COOKIE));
	if (language !== null)
		(await cookies()).set(LANGUAGE_COOKIE, language, remembered);
}
