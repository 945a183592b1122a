import { describe, expect, test } from "vitest";
import { database, inTransaction } from "@/lib/records/database";
import { spendChallenge, takeTurn } from "@/lib/records/rates/mutations";
import { saltOfDay, secretNamed } from "@/lib/records/secrets/mutations";
import { temporaryDatabase } from "../support/database";

temporaryDatabase();

const at = (iso: string) => new Date(iso);
const LIMIT = { perPlace: 3, inAll: 5 };

describe("turns within an hour", () => {
	const turn = (place: string, now: Date) =>
		takeTurn({ action: "send-online-cue", place, now, limit: LIMIT });

	test("end for a place, say when there are more, and come back with the hour", async () => {
		const now = at("2026-05-04T10:20:00Z");
		for (let i = 0; i < 3; i++)
			expect(await turn("192.0.2.1", now)).toEqual({ ok: true });
		expect(await turn("192.0.2.1", now)).toEqual({
			ok: false,
			tryAgainAt: at("2026-05-04T11:00:00Z"),
		});
		expect(await turn("192.0.2.2", now)).toEqual({ ok: true });
		expect(await turn("192.0.2.1", at("2026-05-04T11:00:00Z"))).toEqual({
			ok: true,
		});
	});

	test("end for everybody together, and a refused turn is not counted", async () => {
		const now = at("2026-05-05T10:20:00Z");
		for (let i = 0; i < 5; i++)
			expect((await turn(`198.51.100.${i}`, now)).ok).toBe(true);
		for (let i = 5; i < 9; i++)
			expect((await turn(`198.51.100.${i}`, now)).ok).toBe(false);
		const all = await database().rateCount.findFirstOrThrow({
			where: {
				key: "send-online-cue all",
				windowStart: at("2026-05-05T10:00:00Z"),
			},
		});
		expect(all.count).toBe(5);
	});

	test("asked for at the same moment are each given once", async () => {
		const now = at("2026-05-06T10:20:00Z");
		const turns = await Promise.all(
			Array.from({ length: 8 }, () => turn("192.0.2.1", now)),
		);
		expect(turns.filter(({ ok }) => ok)).toHaveLength(3);
	});

	test("leave no address behind, and after a day nothing", async () => {
		await turn("203.0.113.77", at("2026-05-07T10:20:00Z"));
		const kept = JSON.stringify([
			await database().rateCount.findMany(),
			await database().serverSecret.findMany(),
		]);
		expect(kept).not.toContain("203.0.113");
		await turn("203.0.113.77", at("2026-05-12T10:20:00Z"));
		expect(
			await database().rateCount.count({
				where: { windowStart: { lt: at("2026-05-11T00:00:00Z") } },
			}),
		).toBe(0);
		const salts = await database().serverSecret.findMany({
			where: { name: { startsWith: "rate-salt" } },
		});
		expect(salts.map(({ name }) => name)).toEqual(["rate-salt 2026-05-12"]);
	});
});

test("a challenge is spent once, by whoever comes first", async () => {
	const challenge = { id: crypto.randomUUID(), expiresAtMs: Date.now() + 1000 };
	const spent = await Promise.all(
		Array.from({ length: 5 }, () =>
			inTransaction((transaction) => spendChallenge(transaction, challenge)),
		),
	);
	expect(spent.filter(Boolean)).toHaveLength(1);
	const other = { ...challenge, id: crypto.randomUUID() };
	expect(
		await inTransaction((transaction) => spendChallenge(transaction, other)),
	).toBe(true);
});

describe("secrets", () => {
	test("are drawn once and stay", async () => {
		const drawn = await Promise.all(
			Array.from({ length: 4 }, () => secretNamed("for a test")),
		);
		expect(new Set(drawn).size).toBe(1);
		expect(Buffer.from(drawn[0] ?? "", "base64url")).toHaveLength(32);
		expect(await secretNamed("for a test")).toBe(drawn[0]);
		expect(await secretNamed("for another")).not.toBe(drawn[0]);
	});

	test("a day's salt is another day's no more", async () => {
		const salt = (iso: string) =>
			inTransaction((transaction) => saltOfDay(transaction, at(iso)));
		const first = await salt("2027-01-01T05:00:00Z");
		expect(await salt("2027-01-01T23:59:59Z")).toBe(first);
		expect(await salt("2027-01-02T00:00:00Z")).not.toBe(first);
	});
});
