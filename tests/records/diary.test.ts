import { describe, expect, test } from "vitest";
import { database } from "@/lib/records/database";
import { latestFittingOf, listDiary } from "@/lib/records/diary/loaders";
import {
	restorePlayerNote,
	withdrawPlayerNote,
	writePlayerNote,
} from "@/lib/records/diary/mutations";
import { startFitting } from "@/lib/records/fittings/mutations";
import { createPlayer, updatePlayer } from "@/lib/records/players/mutations";
import { temporaryDatabase } from "../support/database";

temporaryDatabase();

const key = () => crypto.randomUUID();
const somebody = () => createPlayer({ name: "Invented", requestKey: key() });
const note = (playerId: string, writtenOn: string, text = writtenOn) =>
	writePlayerNote({ playerId, writtenOn, text, requestKey: key() });
const texts = async (playerId: string) =>
	(await listDiary({ playerId })).entries.map((entry) =>
		entry.kind === "note" ? entry.text : entry.kind,
	);

describe("notes", () => {
	test("one request writes one note, and what is taken back can be put back", async () => {
		const { id: playerId } = await somebody();
		const request = {
			playerId,
			text: " Left elbow sore ",
			writtenOn: "2026-05-03",
			requestKey: key(),
		};
		const ids = await Promise.all(
			[1, 2, 3].map(() => writePlayerNote(request)),
		);
		expect(new Set(ids).size).toBe(1);
		expect(await texts(playerId)).toEqual(["Left elbow sore"]);
		const id = ids[0] ?? "";
		expect(await withdrawPlayerNote({ playerId, id })).toBe(true);
		expect(await withdrawPlayerNote({ playerId, id })).toBe(true);
		expect(await texts(playerId)).toEqual([]);
		expect(await restorePlayerNote({ playerId, id })).toBe(true);
		expect(await texts(playerId)).toEqual(["Left elbow sore"]);
	});

	test("another player's note is not there, and a missing player takes none", async () => {
		const one = await somebody();
		const other = await somebody();
		const id = await note(one.id, "2026-05-03");
		expect(await withdrawPlayerNote({ playerId: other.id, id })).toBe(false);
		expect(await texts(one.id)).toEqual(["2026-05-03"]);
		await expect(note("nobody", "2026-05-03")).rejects.toThrow("nobody");
		await expect(note(one.id, "2026-02-30")).rejects.toMatchObject({
			name: "ZodError",
		});
	});
});

test("pages of any size give every kind once, newest first", async () => {
	const { id: playerId } = await somebody();
	const first = await startFitting({ playerId, requestKey: key() });
	const second = await startFitting({
		playerId,
		requestKey: key(),
		basedOnFittingId: first.id,
	});
	const midnight = new Date("2026-05-03T00:00:00.000Z");
	await database().fitting.update({
		where: { id: first.id },
		data: { createdAt: midnight },
	});
	for (const day of ["2026-05-02", "2026-05-03", "2026-05-03", "2099-01-01"])
		await note(playerId, day);
	for (const since of ["2026-05-03", "2026-05-04"])
		await database().playerCue.create({
			data: {
				playerId,
				name: `cue of ${since}`,
				content: { lengthMm: 1470, massG: null },
				since,
			},
		});
	const other = await somebody();
	await note(other.id, "2026-05-03", "somebody else's");
	const whole = (await listDiary({ playerId })).entries;
	expect(whole).toHaveLength(8);
	expect(whole.map(({ at }) => at)).toEqual(
		whole.map(({ at }) => at).toSorted((a, b) => (a < b ? 1 : -1)),
	);
	expect(whole[0]).toMatchObject({ kind: "note", text: "2099-01-01" });
	expect(whole.at(-1)).toMatchObject({ kind: "note", text: "2026-05-02" });
	expect(whole.find(({ id }) => id === second.id)).toMatchObject({
		basedOnNumber: first.number,
	});
	for (const limit of [1, 2, 3, 7]) {
		const walked: string[] = [];
		let after: string | undefined;
		do {
			const page = await listDiary({ playerId, limit, after });
			walked.push(...page.entries.map(({ id }) => id));
			after = page.next ?? undefined;
		} while (after !== undefined);
		expect(walked, `pages of ${limit}`).toEqual(whole.map(({ id }) => id));
	}
	expect((await latestFittingOf(playerId))?.number).toBe(second.number);
	await expect(listDiary({ playerId, after: "no page" })).rejects.toThrow(
		RangeError,
	);
});

test("the day to measure again is set on the revision it was read at", async () => {
	const player = await somebody();
	const set = { id: player.id, revision: 1, remeasureOn: "2026-09-01" };
	expect(await updatePlayer(set)).toMatchObject({
		ok: true,
		player: { remeasureOn: "2026-09-01", revision: 2 },
	});
	expect(await updatePlayer({ ...set, remeasureOn: null })).toMatchObject({
		ok: false,
	});
});
