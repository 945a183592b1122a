import { beforeAll, describe, expect, test } from "vitest";
import { database } from "@/lib/records/database";
import { getFitting, listFittings } from "@/lib/records/fittings/loaders";
import { saveAnswers, startFitting } from "@/lib/records/fittings/mutations";
import { createPlayer } from "@/lib/records/players/mutations";
import { temporaryDatabase } from "../support/database";

temporaryDatabase();

const key = () => crypto.randomUUID();
let playerId: string;
beforeAll(async () => {
	const player = await createPlayer({ name: "Élan Test", requestKey: key() });
	playerId = player.id;
});
const start = () => startFitting({ playerId, requestKey: key() });

describe("starting", () => {
	test("gives the next number and no answers", async () => {
		const first = await start();
		const second = await start();
		expect(second.number).toBe(first.number + 1);
		expect(first).toMatchObject({
			answers: {},
			revision: 1,
			spec: null,
			basedOn: null,
			finishedAt: null,
			player: { id: playerId, name: "Élan Test" },
		});
		expect(await getFitting(first.number)).toEqual(first);
		expect(await getFitting(999)).toBeNull();
	});

	test("twice by one key starts one, and takes one number", async () => {
		const requestKey = key();
		const [one, again] = await Promise.all([
			startFitting({ playerId, requestKey }),
			startFitting({ playerId, requestKey }),
		]);
		expect(again.id).toBe(one.id);
		expect((await start()).number).toBe(one.number + 1);
	});

	test("twenty at once have twenty numbers without a gap", async () => {
		const { number: before } = await start();
		const started = await Promise.all(Array.from({ length: 20 }, start));
		expect(started.map(({ number }) => number).sort((a, b) => a - b)).toEqual(
			Array.from({ length: 20 }, (_, i) => before + 1 + i),
		);
	});

	test("that fails takes no number", async () => {
		const { number: before } = await start();
		await expect(
			startFitting({ playerId: "nobody", requestKey: key() }),
		).rejects.toThrow("there is no player nobody");
		expect((await start()).number).toBe(before + 1);
	});

	test("from an earlier fitting begins with its answers and leaves it alone", async () => {
		const earlier = await start();
		await saveAnswers({
			fittingId: earlier.id,
			answers: { stature: "178 cm", gripReadings: ["29.5 mm", "29 mm"] },
			revision: 1,
		});
		const refit = await startFitting({
			playerId,
			basedOnFittingId: earlier.id,
			requestKey: key(),
		});
		expect(refit).toMatchObject({
			answers: { stature: "178 cm", gripReadings: ["29.5 mm", "29 mm"] },
			basedOn: { id: earlier.id, number: earlier.number },
			revision: 1,
		});
		await saveAnswers({ fittingId: refit.id, answers: {}, revision: 1 });
		expect((await getFitting(earlier.number))?.answers).toHaveProperty(
			"stature",
		);
	});

	test("from another player's fitting is refused", async () => {
		const earlier = await start();
		const other = await createPlayer({ name: "Other", requestKey: key() });
		await expect(
			startFitting({
				playerId: other.id,
				basedOnFittingId: earlier.id,
				requestKey: key(),
			}),
		).rejects.toThrow(/there is no fitting/);
	});

	test("by a key used for something else is refused", async () => {
		const requestKey = key();
		await createPlayer({ name: "Key Taken", requestKey });
		await expect(startFitting({ playerId, requestKey })).rejects.toThrow(
			/already used to create-player/,
		);
	});
});

describe("saving answers", () => {
	test("replaces them all and raises the revision", async () => {
		const { id, number } = await start();
		expect(
			await saveAnswers({
				fittingId: id,
				answers: { stature: "178 cm", notes: "ünïcode, 5′10″" },
				revision: 1,
			}),
		).toEqual({ ok: true, revision: 2 });
		expect(
			await saveAnswers({
				fittingId: id,
				answers: { notes: "only", stature: undefined },
				revision: 2,
			}),
		).toEqual({ ok: true, revision: 3 });
		expect(await getFitting(number)).toMatchObject({
			answers: { notes: "only" },
			revision: 3,
		});
		expect((await getFitting(number))?.answers).not.toHaveProperty("stature");
	});

	test("on an older revision is refused with what stands there now", async () => {
		const { id } = await start();
		await saveAnswers({ fittingId: id, answers: { age: "30" }, revision: 1 });
		expect(
			await saveAnswers({ fittingId: id, answers: { age: "40" }, revision: 1 }),
		).toMatchObject({
			ok: false,
			conflict: { answers: { age: "30" }, revision: 2 },
		});
	});

	test("the same answers again are saved already, also after a lost acknowledgement", async () => {
		const { id, number } = await start();
		const answers = { age: "30", sex: "female" };
		await saveAnswers({ fittingId: id, answers, revision: 1 });
		expect(
			await saveAnswers({
				fittingId: id,
				answers: { sex: "female", age: "30" },
				revision: 1,
			}),
		).toEqual({ ok: true, revision: 2 });
		expect(await getFitting(number)).toMatchObject({ revision: 2 });
	});

	test("of a fitting that is gone is refused with null", async () => {
		expect(
			await saveAnswers({ fittingId: "none", answers: {}, revision: 1 }),
		).toEqual({ ok: false, conflict: null });
	});

	test("that are not texts is refused", async () => {
		const { id } = await start();
		await expect(
			saveAnswers({
				fittingId: id,
				answers: { age: 30 as unknown as string },
				revision: 1,
			}),
		).rejects.toMatchObject({ name: "ZodError" });
	});

	test("twenty writers who each re-read and retry lose nothing", async () => {
		const { id, number } = await start();
		const write = async (i: number): Promise<void> => {
			for (;;) {
				const current = await getFitting(number);
				if (!current) throw new Error("the fitting is gone");
				const saved = await saveAnswers({
					fittingId: id,
					answers: { ...current.answers, [`field${i}`]: `${i}` },
					revision: current.revision,
				});
				if (saved.ok) return;
			}
		};
		await Promise.all(Array.from({ length: 20 }, (_, i) => write(i)));
		const fitting = await getFitting(number);
		expect(Object.keys(fitting?.answers ?? {})).toHaveLength(20);
		expect(fitting?.revision).toBe(21);
	});
});

describe("listing", () => {
	test("finds the player's name and puts the last change first", async () => {
		const player = await createPlayer({
			name: "Béla Žižka",
			requestKey: key(),
		});
		const first = await startFitting({
			playerId: player.id,
			requestKey: key(),
		});
		const second = await startFitting({
			playerId: player.id,
			requestKey: key(),
		});
		await database().fitting.update({
			where: { id: second.id },
			data: { updatedAt: new Date("2001-01-01") },
		});
		const { fittings, next } = await listFittings({ search: "zizka be" });
		expect(fittings.map(({ number }) => number)).toEqual([
			first.number,
			second.number,
		]);
		expect(next).toBeNull();
		expect((await listFittings({ search: "no such" })).fittings).toEqual([]);
	});

	test("pages through every fitting once, ties included", async () => {
		await database().fitting.updateMany({
			where: { number: { lte: 12 } },
			data: { updatedAt: new Date("2020-06-01T12:00:00.123Z") },
		});
		const everything = (await listFittings({ limit: 200 })).fittings;
		const paged: number[] = [];
		let after: string | undefined;
		do {
			const page = await listFittings({ limit: 5, after });
			paged.push(...page.fittings.map(({ number }) => number));
			after = page.next ?? undefined;
		} while (after !== undefined);
		expect(paged).toEqual(everything.map(({ number }) => number));
		expect(paged.length).toBe(await database().fitting.count());
		expect(new Set(paged).size).toBe(paged.length);
	});
});
