/** Whether single keys work on this device; anything but "off" is on. */
export const KEYS_COOKIE = "bench-keys";
/** What whoever stands at this device calls themselves. */
export const NAME_COOKIE = "bench-name";

/** Behind the queue's address: begin in its search. */
export const SEARCH_HASH = "#search";

const YEAR_S = 365 * 24 * 60 * 60;

/** Kept by the device itself, from the browser. */
export function remember(name: string, value: string): void {
	// biome-ignore lint/suspicious/noDocumentCookie: the cookie store is not in every browser yet
	document.cookie = `${name}=${encodeURIComponent(value)}; path=/; max-age=${YEAR_S}; samesite=lax`;
}

export function recalled(value: string | undefined): string {
	if (value === undefined) return "";
	try {
		return decodeURIComponent(value);
	} catch {
		return ""; // a cookie may hold anything
	}
}
