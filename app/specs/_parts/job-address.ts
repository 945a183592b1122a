/** A host name or address with an optional port, and nothing else. */
const HOST = /^([a-z0-9._-]{1,253}|\[[0-9a-f:.]{2,45}\])(:\d{1,5})?$/i;

const first = (header: string | null): string | undefined =>
	header?.split(",")[0]?.trim() || undefined;

/**
 * Where the reader reached the app, "https://cues.example.org": what a code on paper must say for a
 * phone to find the way back. Taken from the request, through a proxy's word for it where there is
 * one; a false word changes only the answer to who sent it, since no answer here is kept for others.
 * Null where the request names no host.
 */
export function originOf(headers: Headers): string | null {
	const host = first(headers.get("x-forwarded-host")) ?? headers.get("host");
	if (host === null || !HOST.test(host)) return null;
	const proto = first(headers.get("x-forwarded-proto"));
	return `${proto === "https" ? "https" : "http"}://${host.toLowerCase()}`;
}

/** Whether no other device can follow an address: the code then serves this machine alone. */
export function isThisMachineOnly(origin: string): boolean {
	const { hostname } = new URL(origin);
	return (
		hostname === "localhost" ||
		hostname.endsWith(".localhost") ||
		hostname === "[::1]" ||
		hostname.startsWith("127.")
	);
}

export const jobAddress = (p: {
	origin: string;
	number: number;
	revision: number;
}): string => `${p.origin}/specs/${p.number}/${p.revision}`;
