import "server-only";

// Letters that decompose to no base letter, as people without such a key type them.
const PLAIN: Readonly<Record<string, string>> = {
	æ: "ae",
	œ: "oe",
	ø: "o",
	ł: "l",
	đ: "d",
	ð: "d",
	þ: "th",
	ß: "ss",
	ı: "i",
};

/**
 * A name as it is searched: lower case, diacritics off, apostrophes dropped, any other sign a space.
 * What is searched for goes through the same, so no wildcard of the database's own ever reaches it.
 */
export function searchable(text: string): string {
	return text
		.normalize("NFKD")
		.toLowerCase()
		.replace(/\p{M}|['’ʼ]/gu, "")
		.replace(/[æœøłđðþßı]/g, (letter) => PLAIN[letter] ?? letter)
		.replace(/[^\p{L}\p{N}]+/gu, " ")
		.trim();
}

/** The parts of a search, each of which a name must contain somewhere. */
export const searchParts = (search: string): string[] =>
	searchable(search)
		.split(" ")
		.filter((part) => part !== "");

/** The condition on a player's normalised name; an empty search matches everyone. */
export const nameContains = (search: string) => ({
	AND: searchParts(search).map((part) => ({ searchName: { contains: part } })),
});
