/** The languages the project speaks, the one to fall back on first. Each names itself. */
export const LANGUAGES = {
	en: "English",
	de: "Deutsch",
} as const;

export type LanguageId = keyof typeof LANGUAGES;

export const isLanguage = (text: unknown): text is LanguageId =>
	typeof text === "string" && Object.hasOwn(LANGUAGES, text);

/**
 * The best of the project's languages for an `Accept-Language` header (RFC 9110, section 12.5.4):
 * the highest quality wins, earlier before later; a region falls back on its language.
 */
export function languageFor(header: string | null): LanguageId {
	const wanted = (header ?? "")
		.split(",")
		.map((part, place) => {
			const [tag = "", ...parameters] = part.trim().toLowerCase().split(";");
			const quality = parameters
				.map((parameter) => /^\s*q=([01](?:\.\d{0,3})?)\s*$/.exec(parameter))
				.find((match) => match !== null);
			return {
				language: tag.split("-")[0],
				quality: quality ? Number(quality[1]) : 1,
				place,
			};
		})
		.filter(({ language, quality }) => quality > 0 && isLanguage(language))
		.sort((a, b) => b.quality - a.quality || a.place - b.place);
	const best = wanted[0]?.language;
	return isLanguage(best) ? best : "en";
}
