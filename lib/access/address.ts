import "server-only";
import { createHmac } from "node:crypto";
import { isIPv4, isIPv6 } from "node:net";

/**
 * Where a request comes from, as far as it is counted: an IPv4 address, or the first 64 bits of an IPv6
 * one, which is what one household or one rented machine is given (RFC 6177). The last address of the
 * header is the one that the nearest machine itself wrote down; "unknown" where there is none.
 */
export function placeOf(forwardedFor: string | null): string {
	const last = forwardedFor?.split(",").at(-1)?.trim() ?? "";
	const address = last.replace(/^::ffff:(?=\d+\.)/i, "").replace(/%.*$/, "");
	if (isIPv4(address)) return address;
	return isIPv6(address) ? firstHalf(address) : "unknown";
}

/** The first four groups, written out. */
function firstHalf(address: string): string {
	const [head = "", tail] = address.toLowerCase().split("::");
	const groups = head === "" ? [] : head.split(":");
	if (tail !== undefined) {
		// A trailing dotted quad takes two groups.
		const behind = tail === "" ? [] : tail.split(":");
		const taken = behind.length + (behind.at(-1)?.includes(".") ? 1 : 0);
		while (groups.length + taken < 8) groups.push("0");
	}
	return `${groups
		.slice(0, 4)
		.map((group) => group.padStart(4, "0"))
		.join(":")}::/64`;
}

/** What is kept of a place: nothing that could be read back once the day's salt is gone. */
export const hashedPlace = (place: string, salt: string): string =>
	createHmac("sha256", salt).update(place).digest("hex").slice(0, 32);
