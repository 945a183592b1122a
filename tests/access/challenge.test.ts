import { createHash } from "node:crypto";
import { sha256 } from "@noble/hashes/sha2.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	CHALLENGE_MS,
	checkChallenge,
	issueChallenge,
} from "@/lib/access/challenge";
import { leadingZeroBits, workText } from "@/lib/access/work";

const NOW_MS = Date.UTC(2026, 4, 4, 12);
const LATER_MS = NOW_MS + 10_000;
const SECRET = "a secret for tests only";
const issue = (workBits = 6) =>
	issueChallenge({
		secret: SECRET,
		id: "id-of-a-test",
		workBits,
		nowMs: NOW_MS,
	});

/** Looks for a counter as the browser does, by another implementation of the hash than the server's. */
function work(token: string, workBits: number): number {
	for (let counter = 0; ; counter++) {
		const digest = sha256(new TextEncoder().encode(workText(token, counter)));
		if (leadingZeroBits(digest) >= workBits) return counter;
	}
}
const check = (token: string, counter: number, nowMs = LATER_MS) =>
	checkChallenge({ secret: SECRET, nowMs, done: { token, counter } });

describe("zero bits", () => {
	test("are those of the digest written in binary", () => {
		fc.assert(
			fc.property(
				fc.uint8Array({ minLength: 1, maxLength: 32 }),
				fc.nat(16),
				(bytes, zeros) => {
					const digest = Uint8Array.from([
						...new Array<number>(zeros).fill(0),
						...bytes,
					]);
					const written = [...digest]
						.map((byte) => byte.toString(2).padStart(8, "0"))
						.join("");
					const first = written.indexOf("1");
					expect(leadingZeroBits(digest)).toBe(
						first < 0 ? written.length : first,
					);
				},
			),
		);
	});

	test("of a published digest", () => {
		// FIPS 180-4, "abc": ba7816bf… begins with a one bit (from memory of its appendix).
		const digest = createHash("sha256").update("abc").digest();
		expect(digest.toString("hex").slice(0, 8)).toBe("ba7816bf");
		expect(leadingZeroBits(digest)).toBe(0);
	});
});

describe("a challenge", () => {
	test("is met by the work it asks for", () => {
		const { token, workBits } = issue();
		expect(check(token, work(token, workBits))).toMatchObject({
			ok: true,
			terms: { id: "id-of-a-test", workBits },
		});
	});

	test("is not met by less work", () => {
		const { token } = issue(12);
		let counter = 0;
		const bits = (of: number) =>
			leadingZeroBits(
				createHash("sha256").update(workText(token, of)).digest(),
			);
		while (bits(counter) !== 11) counter++;
		expect(check(token, counter)).toEqual({
			ok: false,
			refusal: { code: "no-work" },
		});
	});

	test("is refused when it has expired, and a form that was filled in too fast", () => {
		const { token, workBits } = issue();
		const counter = work(token, workBits);
		const codeAt = (nowMs: number) => {
			const checked = check(token, counter, nowMs);
			return checked.ok ? "ok" : checked.refusal.code;
		};
		expect(codeAt(NOW_MS + CHALLENGE_MS - 1)).toBe("ok");
		expect(codeAt(NOW_MS + CHALLENGE_MS)).toBe("expired");
		expect(check(token, counter, NOW_MS + 1000)).toEqual({
			ok: false,
			refusal: { code: "too-soon", waitMs: 3000 },
		});
	});

	test("is forged where anything of it was changed or another secret signed it", () => {
		const { token, workBits } = issue();
		const [body = "", signature = ""] = token.split(".");
		const easier = Buffer.from(
			JSON.stringify({
				...JSON.parse(Buffer.from(body, "base64url").toString()),
				workBits: 0,
			}),
		).toString("base64url");
		const foreign = issueChallenge({
			secret: "another secret",
			id: "id-of-a-test",
			workBits,
			nowMs: NOW_MS,
		}).token;
		for (const forged of [
			`${easier}.${signature}`,
			`${body}.${signature.slice(0, -2)}AA`,
			`${body}.`,
			body,
			"",
			".",
			`${token}.x`,
			foreign,
		])
			expect(check(forged, 0), forged).toEqual({
				ok: false,
				refusal: { code: "forged" },
			});
	});

	test("any change of one character is seen", () => {
		const { token } = issue(0);
		fc.assert(
			fc.property(
				fc.nat(token.length - 1),
				fc.constantFrom(..."ABCxyz019-_."),
				(at, character) => {
					fc.pre(token[at] !== character);
					const changed = token.slice(0, at) + character + token.slice(at + 1);
					const checked = check(changed, 0);
					// The last character of a signature carries two bits that mean nothing.
					if (at === token.length - 1 && checked.ok) return;
					expect(checked.ok).toBe(false);
				},
			),
		);
	});
});
