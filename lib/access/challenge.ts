import "server-only";
import { createHash, createHmac, timingSafeEqual } from "node:crypto";
import { z } from "zod";
import {
	type ChallengeTerms,
	leadingZeroBits,
	type WorkDone,
	workText,
} from "./work";

/** A form is seldom filled in faster by a person. */
const LEAST_MS = 4_000;
/** Longer than a cue takes to be put together; a page left open asks for another. */
export const CHALLENGE_MS = 2 * 3_600_000;

const termsSchema = z.strictObject({
	id: z.string().min(8).max(64),
	workBits: z.number().int().min(0).max(32),
	issuedAtMs: z.number().int(),
	expiresAtMs: z.number().int(),
});

const sign = (secret: string, body: string): Buffer =>
	createHmac("sha256", secret).update(body).digest();

/** A token that only this server can make: its terms, and their signature (HMAC-SHA-256, RFC 2104). */
export function issueChallenge(p: {
	secret: string;
	id: string;
	workBits: number;
	nowMs: number;
}): { token: string; workBits: number; expiresAtMs: number } {
	const terms: ChallengeTerms = {
		id: p.id,
		workBits: p.workBits,
		issuedAtMs: p.nowMs,
		expiresAtMs: p.nowMs + CHALLENGE_MS,
	};
	const body = Buffer.from(JSON.stringify(terms)).toString("base64url");
	return {
		token: `${body}.${sign(p.secret, body).toString("base64url")}`,
		workBits: terms.workBits,
		expiresAtMs: terms.expiresAtMs,
	};
}

/** Why an answer does not count. `waitMs`: how much too soon it came. */
export type ChallengeRefusal =
	| { readonly code: "forged" | "expired" | "no-work" }
	| { readonly code: "too-soon"; readonly waitMs: number };

export type ChallengeChecked =
	| { readonly ok: true; readonly terms: ChallengeTerms }
	| { readonly ok: false; readonly refusal: ChallengeRefusal };

/** Checks everything but whether the challenge was used before, which the database knows. */
export function checkChallenge(p: {
	secret: string;
	nowMs: number;
	done: WorkDone;
}): ChallengeChecked {
	const { token, counter } = p.done;
	const refuse = (refusal: ChallengeRefusal): ChallengeChecked => ({
		ok: false,
		refusal,
	});
	const terms = termsOf(token, p.secret);
	if (terms === null) return refuse({ code: "forged" });
	if (p.nowMs >= terms.expiresAtMs) return refuse({ code: "expired" });
	const digest = createHash("sha256").update(workText(token, counter)).digest();
	if (leadingZeroBits(digest) < terms.workBits)
		return refuse({ code: "no-work" });
	const waitMs = terms.issuedAtMs + LEAST_MS - p.nowMs;
	return waitMs > 0
		? refuse({ code: "too-soon", waitMs })
		: { ok: true, terms };
}

/** Null for a token that was not signed with the secret, whatever else is wrong with it. */
function termsOf(token: string, secret: string): ChallengeTerms | null {
	const [body = "", signature = "", ...rest] = token.split(".");
	const given = Buffer.from(signature, "base64url");
	const own = sign(secret, body);
	if (
		rest.length > 0 ||
		given.length !== own.length ||
		!timingSafeEqual(given, own)
	)
		return null;
	const text = Buffer.from(body, "base64url").toString("utf8");
	const parsed = termsSchema.safeParse(JSON.parse(text));
	return parsed.success ? parsed.data : null;
}
