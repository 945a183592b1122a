import "server-only";
import { cookies, headers } from "next/headers";
import type { NextRequest } from "next/server";
import { cache } from "react";
import { currentSettings } from "@/lib/records/settings/loaders";
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

/**
 * What a reader chose before. Whoever has chosen nothing yet begins as the workshop has set it; the
 * settings are asked for only then.
 */
async function preferencesIn(
	jar: Cookies,
	acceptLanguage: string | null,
): Promise<Preferences> {
	const system = asUnitSystem(jar.get(UNITS_COOKIE)?.value);
	const language = asLanguage(jar.get(LANGUAGE_COOKIE)?.value);
	const theme = asTheme(jar.get(THEME_COOKIE)?.value);
	if (system !== null && language !== null) return { system, language, theme };
	const { header } = await currentSettings();
	const usual = header.followsDevice
		? languageFor(acceptLanguage, header.language)
		: header.language;
	return {
		system: system ?? header.units,
		language: language ?? usual,
		theme,
	};
}

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
export const readerOfRequest = async (request: NextRequest): Promise<Reader> =>
	readerIn(
		await preferencesIn(
			request.cookies,
			request.headers.get("accept-language"),
		),
	);
