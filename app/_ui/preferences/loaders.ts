import "server-only";
import { cookies, headers } from "next/headers";
import type { NextRequest } from "next/server";
import { cache } from "react";
import { MESSAGES } from "@/lib/words/every-language";
import { languageFor } from "@/lib/words/languages";
import { type Manner, type Reader, readerOf } from "@/lib/words/reader";
import {
	asLanguage,
	asTheme,
	asUnitSystem,
	LANGUAGE_COOKIE,
	type Preferences,
	THEME_COOKIE,
	UNITS_COOKIE,
} from "./choices";

type Cookies = Pick<NextRequest["cookies"], "get">;

const preferencesIn = (
	jar: Cookies,
	acceptLanguage: string | null,
): Preferences => ({
	system: asUnitSystem(jar.get(UNITS_COOKIE)?.value) ?? "metric",
	language:
		asLanguage(jar.get(LANGUAGE_COOKIE)?.value) ?? languageFor(acceptLanguage),
	theme: asTheme(jar.get(THEME_COOKIE)?.value),
});

const readerIn = ({ system, language }: Manner): Reader =>
	readerOf({ system, language }, MESSAGES[language]);

/** What the reader chose before, so that the first byte is already in their units, language and theme. */
export const readPreferences = cache(
	async (): Promise<Preferences> =>
		preferencesIn(await cookies(), (await headers()).get("accept-language")),
);

/** The reader of the page that is being made: in units and language as chosen. */
export const readReader = cache(
	async (): Promise<Reader> => readerIn(await readPreferences()),
);

/** The reader who sent a request to a route. */
export const readerOfRequest = (request: NextRequest): Reader =>
	readerIn(
		preferencesIn(request.cookies, request.headers.get("accept-language")),
	);
