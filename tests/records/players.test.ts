import { describe, expect, test } from "vitest";
import { database } from "@/lib/records/database";
import { getPlayer, listPlayers } from "@/lib/records/players/loaders";
import { createPlayer, updatePlayer } from "@/lib/records/players/mutations";
import { temporaryDatabase } from "../support/database";

temporaryDatabase();

const key = () => crypto.randomUUID();
const named = (name: string) => createPlayer({ name, requestKey: key() });

describe("creating", () => {
	test("keeps what was given and leaves the rest unsaid", async () => {
		const player = await createPlayer({
			name: "  Ada Example ",
			birthDate: "2014-05-30",
			hand: "left",
			requestKey: key(),
		});
		expect(player).toMatchObject({
			name: "Ada Example",
			birthDate: "2014-05-30",
			sex: null,
			hand: "left",
			notes: "",
			isDemo: false,
			revision: 1,
		});
		expect(await getPlayer(player.id)).toEqual(player);
		expect(await getPlayer("nobody")).toBeNull();
	});

	test("the same request five times at once creates one player", async () => {
		const requestKey = key();
		const players = await Promise.all(
			Array.from({ length: 5 }, () =>
				createPlayer({ name: "Once Only", requestKey }),
			),
		);
		expect(new Set(players.map(({ id }) => id)).size).toBe(1);
		expect(
			await database().player.count({ where: { name: "Once Only" } }),
		).toBe(1);
	});

	test.each([
		{ name: "  " },
		{ name: "x".repeat(121) },
		{ name: "Fine", birthDate: "2014-02-30" },
		{ name: "Fine", birthDate: "30.05.2014" },
	])("refuses %j", async (fields) => {
		const before = await database().player.count();
		await expect(
			createPlayer({ ...fields, requestKey: key() }),
		).rejects.toMatchObject({ name: "ZodError" });
		expect(await database().player.count()).toBe(before);
	});

	test("refuses a request key too short to be one", async () => {
		await expect(
			createPlayer({ name: "Short Key", requestKey: "1" }),
		).rejects.toThrow(/request key/);
	});
});

describe("editing", () => {
	test("changes what is given and raises the revision", async () => {
		const player = await named("Before Edit");
		const saved = await updatePlayer({
			id: player.id,
			revision: 1,
			name: "Áfter Edit",
			notes: "moved club",
		});
		expect(saved).toMatchObject({
			ok: true,
			player: { name: "Áfter Edit", notes: "moved club", revision: 2 },
		});
		const { players } = await listPlayers({ search: "after edi" });
		expect(players.map(({ id }) => id)).toEqual([player.id]);
	});

	test("of a revision since edited is refused with what stands there now", async () => {
		const player = await named("Edited Twice");
		await updatePlayer({ id: player.id, revision: 1, notes: "first" });
		expect(
			await updatePlayer({ id: player.id, revision: 1, notes: "second" }),
		).toMatchObject({ ok: false, conflict: { notes: "first", revision: 2 } });
		expect(await getPlayer(player.id)).toMatchObject({ notes: "first" });
	});

	test("of a player who is gone is refused with null", async () => {
		expect(
			await updatePlayer({ id: "nobody", revision: 1, notes: "" }),
		).toEqual({ ok: false, conflict: null });
	});

	test("of twenty edits at once on one revision, one is saved", async () => {
		const player = await named("Twenty Edits");
		const saved = await Promise.all(
			Array.from({ length: 20 }, (_, i) =>
				updatePlayer({ id: player.id, revision: 1, notes: `edit ${i}` }),
			),
		);
		const winners = saved.filter(({ ok }) => ok);
		expect(winners).toHaveLength(1);
		expect(await getPlayer(player.id)).toMatchObject({ revision: 2 });
	});
});

describe("searching", () => {
	test("finds any part of the name, in any order, whatever the accents", async () => {
		const zoe = await named("Zoë Ångström-Łuk");
		await named("Zoe Angus");
		const found = async (search: string) =>
			(await listPlayers({ search })).players.map(({ name }) => name);
		expect(await found("gstr")).toEqual([zoe.name]);
		expect(await found("LUK zoe")).toEqual([zoe.name]);
		expect(await found("zoë an")).toEqual([zoe.name, "Zoe Angus"]);
		expect(await found("zoe nobody")).toEqual([]);
	});

	test("a search of signs alone is an empty search, not a wildcard", async () => {
		const everyone = await listPlayers();
		expect(everyone.players.length).toBeGreaterThan(2);
		expect(await listPlayers({ search: " %_ " })).toEqual(everyone);
	});

	test("pages through every player once, in the order of their names", async () => {
		await Promise.all(["Same Name", "Same Name", "Same Name"].map(named));
		const everyone = (await listPlayers()).players.map(({ id }) => id);
		const paged: string[] = [];
		let after: string | undefined;
		do {
			const page = await listPlayers({ limit: 2, after });
			expect(page.players.length).toBeLessThanOrEqual(2);
			paged.push(...page.players.map(({ id }) => id));
			after = page.next ?? undefined;
		} while (after !== undefined);
		expect(paged).toEqual(everyone);
	});

	test("refuses a limit or a continuation that no list gave out", async () => {
		for (const limit of [0, -1, 1.5, 201, Number.NaN])
			await expect(listPlayers({ limit })).rejects.toThrow(RangeError);
		for (const after of ["", "x", "bnVsbA"])
			await expect(listPlayers({ after })).rejects.toThrow(RangeError);
	});
});
