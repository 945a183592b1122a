import { beforeEach, describe, expect, test } from "vitest";
import { database } from "@/lib/records/database";
import { isToken, newToken, tokenHash } from "@/lib/records/share-links/data";
import { listLinks, openLink } from "@/lib/records/share-links/loaders";
import { makeLink, revokeLinks } from "@/lib/records/share-links/mutations";
import { temporaryDatabase } from "../support/database";

temporaryDatabase();

let onlineCueId: string;
beforeEach(async () => {
	const cue = await database().onlineCue.create({
		data: { choices: {}, requestKey: crypto.randomUUID() },
	});
	onlineCueId = cue.id;
});

describe("an address", () => {
	test("opens what it was made for and nothing else", async () => {
		const token = await makeLink({ onlineCueId }, null);
		expect(await openLink(token)).toMatchObject({
			standing: "open",
			link: { onlineCueId, jobId: null, expiresAt: null },
		});
		expect(await openLink(newToken())).toEqual({ standing: "unknown" });
		expect(await openLink(`${token}x`)).toEqual({ standing: "unknown" });
		expect(await openLink("")).toEqual({ standing: "unknown" });
	});

	test("is kept nowhere, only its hash", async () => {
		const token = await makeLink({ onlineCueId }, null);
		const row = await database().shareLink.findFirstOrThrow({
			where: { onlineCueId },
		});
		expect(JSON.stringify(row)).not.toContain(token);
		expect(row.tokenHash).toMatch(/^[0-9a-f]{64}$/);
	});

	test("ends when it expires", async () => {
		const expiresAt = new Date("2031-01-01T00:00:00Z");
		const token = await makeLink({ onlineCueId }, expiresAt);
		const standing = async (iso: string) =>
			(await openLink(token, new Date(iso))).standing;
		expect(await standing("2030-12-31T23:59:59Z")).toBe("open");
		expect(await standing("2031-01-01T00:00:00Z")).toBe("expired");
	});

	test("ends when it is taken back, all of them at once, and stays in the list", async () => {
		const tokens = [
			await makeLink({ onlineCueId }, null),
			await makeLink({ onlineCueId }, null),
		];
		expect(await revokeLinks({ onlineCueId })).toBe(2);
		expect(await revokeLinks({ onlineCueId })).toBe(0);
		for (const token of tokens)
			expect(await openLink(token)).toEqual({ standing: "revoked" });
		expect(await listLinks({ onlineCueId })).toHaveLength(2);
	});
});

test("a token has 256 bits and no two are alike", () => {
	const tokens = Array.from({ length: 200 }, newToken);
	expect(new Set(tokens).size).toBe(200);
	for (const token of tokens) {
		expect(isToken(token)).toBe(true);
		expect(Buffer.from(token, "base64url")).toHaveLength(32);
	}
});

test("the hash is the published one", () => {
	// FIPS 180-4's example message "abc"; the digest from memory of its appendix.
	expect(tokenHash("abc")).toBe(
		"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
	);
});
