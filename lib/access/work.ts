/*
 * Work that a browser does before it may send anything: a counter is looked for, so that the SHA-256 of
 * token and counter begins with a number of zero bits. Checking takes one hash, finding 2^bits on average
 * (Dwork & Naor 1992; from memory).
 */

/** What is hashed. */
export const workText = (token: string, counter: number): string =>
	`${token}.${counter}`;

/** Zero bits a digest begins with. */
export function leadingZeroBits(digest: Uint8Array): number {
	let bits = 0;
	for (const byte of digest) {
		if (byte === 0) {
			bits += 8;
			continue;
		}
		return bits + Math.clz32(byte) - 24;
	}
	return bits;
}

/** What a token asks for, as anybody can read it; only the server can tell whether it is one of its own. */
export interface ChallengeTerms {
	readonly id: string;
	readonly workBits: number;
	/** Milliseconds since 1970, as the server's clock has it. */
	readonly issuedAtMs: number;
	readonly expiresAtMs: number;
}

/** A counter and the token it was found for. */
export interface WorkDone {
	readonly token: string;
	readonly counter: number;
}
