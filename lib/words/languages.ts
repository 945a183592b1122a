/** The languages the project speaks, the one to fall back on first. Each names itself. */
export const LANGUAGES = {
	en: "English",
	de: "Deutsch",
} as const;

export type LanguageId = keyof typeof LANGUAGES;

export const isLanguage = (text: unknown): text is LanguageId =>
	typeof text === "string" && Object.hasOwn(LANGUAGES, text);

/** One entry of the header: a language, or "*" for any that is not named, and how much it is wanted. */
interface Wanted {
	readonly language: string;
	readonly quality: number;
}

const QUALITY = /^\s*q=([01](?:\.\d{0,3})?)\s*$/;

const wantedIn = (header: string): Wanted[] =>
	header.split(",").map((part) => {
		const [tag = "", ...parameters] = part.trim().toLowerCase().split(";");
		const quality = parameters
			.map((parameter) => QUALITY.exec(parameter)?.[1])
			.find((text) => text !== undefined);
		return {
			language: tag.trim().split("-")[0] ?? "",
			quality: quality === undefined ? 1 : Number(quality),
		};
	});

/**
 * The best of the project's languages for an `Accept-Language` header (RFC 9110, section 12.5.4):
 * the highest quality wins, earlier before later; a region falls back on its language, and a language
 * not named on what is said of "*". `otherwise` where none is wanted.
 */
export function languageFor(
	header: string | null,
	otherwise: LanguageId = "en",
): LanguageId {
	const wanted = wantedIn(header ?? "");
	const any = wanted.findIndex(({ language }) => language === "*");
	const [best] = (Object.keys(LANGUAGES) as LanguageId[])
		.map((id) => {
			const own = wanted.flatMap(({ language, quality }, place) =>
				language === id ? [{ id, quality, place }] : [],
			);
			const [first] = own.sort((a, b) => b.quality - a.quality);
			return first ?? { id, quality: wanted[any]?.quality ?? 0, place: any };
		})
		.filter(({ quality }) => quality > 0)
		.sort((a, b) => b.quality - a.quality || a.place - b.place);
	return best?.id ?? otherwise;
}
