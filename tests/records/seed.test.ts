import { describe, expect, test } from "vitest";
import { readAnswers } from "@/lib/forms/answers";
import { closeDatabase, database } from "@/lib/records/database";
import { getFitting, listFittings } from "@/lib/records/fittings/loaders";
import { startFitting } from "@/lib/records/fittings/mutations";
import { migrate } from "@/lib/records/migrate";
import { createPlayer } from "@/lib/records/players/mutations";
import { readDemo, seedDemo } from "@/seed/seed";
import { temporaryDatabase, temporaryFolder } from "../support/database";

temporaryDatabase();

const everything = async () => ({
	players: await database().player.findMany({ orderBy: { id: "asc" } }),
	fittings: await database().fitting.findMany({ orderBy: { id: "asc" } }),
	specs: await database().specRevision.findMany({ orderBy: { id: "asc" } }),
	jobs: await database().job.findMany({
		orderBy: { id: "asc" },
		include: {
			revisions: { orderBy: { revision: "asc" } },
			events: { orderBy: { requestKey: "asc" }, omit: { id: true } },
		},
	}),
});

describe("the demo data", () => {
	test.each(
		readDemo().map(({ player, fitting }) => [player.name, fitting] as const),
	)("%s: every answer is understood", (_, { answers }) => {
		const read = readAnswers(answers);
		expect(read.problems).toEqual([]);
		expect(read.answered.length).toBeGreaterThanOrEqual(8);
	});

	test("is of very different bodies", () => {
		const inputs = readDemo().map(
			({ fitting }) => readAnswers(fitting.answers).input,
		);
		const statures = inputs.map(({ player }) => player.statureMm ?? 0);
		expect(Math.max(...statures)).toBeGreaterThan(1950);
		expect(Math.min(...statures)).toBeLessThan(1400);
		expect(inputs.some(({ player }) => player.ageYears === 10)).toBe(true);
		expect(inputs.some(({ stance }) => stance.seated === true)).toBe(true);
		expect(inputs.some(({ hand }) => hand === "left")).toBe(true);
	});
});

describe("seeding", () => {
	test("adds every demo player with a fitting, marked as demo, once", async () => {
		expect(await seedDemo()).toBe(readDemo().length);
		const first = await everything();
		expect(first.players.every(({ isDemo }) => isDemo)).toBe(true);
		expect(first.fittings.map(({ number }) => number).sort()).toEqual([
			1, 2, 3, 4, 5, 6,
		]);
		expect(first.jobs.map(({ isDemo, state }) => [isDemo, state])).toEqual([
			[true, "asked"],
			[true, "on-the-bench"],
		]);
		expect(await seedDemo()).toBe(0);
		expect(await everything()).toEqual(first);
	});

	test("leaves the next number free for the first real fitting", async () => {
		const player = await createPlayer({
			name: "First Real",
			requestKey: crypto.randomUUID(),
		});
		const fitting = await startFitting({
			playerId: player.id,
			requestKey: crypto.randomUUID(),
		});
		expect(fitting).toMatchObject({ number: 7, isDemo: false });
		expect(await getFitting(7)).toEqual(fitting);
		const { fittings } = await listFittings({ search: "high beam" });
		expect(fittings).toMatchObject([{ number: 1, isDemo: true }]);
	});

	test("is the same in another database, and nothing where someone is recorded", async () => {
		const before = await everything();
		const folder = temporaryFolder();
		const { DATABASE_URL } = process.env;
		try {
			await closeDatabase();
			process.env.DATABASE_URL = `file:${folder.path}/other.db`;
			migrate(process.env.DATABASE_URL);
			await seedDemo();
			const other = await everything();
			expect(other.players).toEqual(
				before.players.filter(({ isDemo }) => isDemo),
			);
			expect(other.fittings).toEqual(
				before.fittings.filter(({ isDemo }) => isDemo),
			);
			await closeDatabase();
			process.env.DATABASE_URL = `file:${folder.path}/empty.db`;
			migrate(process.env.DATABASE_URL);
			await createPlayer({
				name: "Came First",
				requestKey: crypto.randomUUID(),
			});
			expect(await seedDemo()).toBe(0);
			expect((await everything()).fittings).toEqual([]);
		} finally {
			await closeDatabase();
			process.env.DATABASE_URL = DATABASE_URL;
			folder.remove();
		}
	});
});
