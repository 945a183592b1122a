import { beforeAll, describe, expect, test } from "vitest";
import { type AnswerChange, changeTo } from "@/lib/forms/answer-changes";
import type { Answers } from "@/lib/forms/fields";
import { database } from "@/lib/records/database";
import {
	keepChanges,
	listChanges,
	openConflicts,
} from "@/lib/records/fittings/changes";
import { getFitting } from "@/lib/records/fittings/loaders";
import { startFitting } from "@/lib/records/fittings/mutations";
import { createPlayer } from "@/lib/records/players/mutations";
import { temporaryDatabase } from "../support/database";

temporaryDatabase();

const key = () => crypto.randomUUID();
const TABLET = { id: key(), name: "Tablet", by: "Coach A" };
const PHONE = { id: key(), name: "Phone", by: "" };
const SENT_AT = "2030-01-01T10:00:00.000Z";
const RECEIVED_AT = new Date("2031-01-01T00:00:00.000Z");

let playerId: string;
beforeAll(async () => {
	playerId = (await createPlayer({ name: "Changes", requestKey: key() })).id;
});
const start = () => startFitting({ playerId, requestKey: key() });

const change = (
	field: AnswerChange["field"],
	after: AnswerChange["after"],
	base: Answers = {},
	more: Partial<AnswerChange> = {},
): AnswerChange => ({
	...changeTo({
		field,
		after,
		base,
		waiting: undefined,
		key: key(),
		typedAt: "2030-01-01T09:58:00.000Z",
	}),
	...more,
});
const keep = (
	fittingId: string,
	device: typeof TABLET,
	...changes: AnswerChange[]
) =>
	keepChanges({
		fittingId,
		device,
		changes,
		sentAt: SENT_AT,
		receivedAt: RECEIVED_AT,
	});

describe("changes of answers", () => {
	test("are stored with device, person and the time by the server's clock, and raise the revision once", async () => {
		const { id, number } = await start();
		await keep(
			id,
			TABLET,
			change("stature", "178 cm"),
			change("gripReadings", ["28 mm", "28.5 mm"]),
		);
		expect(await getFitting(number)).toMatchObject({
			answers: { stature: "178 cm", gripReadings: ["28 mm", "28.5 mm"] },
			revision: 2,
		});
		const [, first] = await listChanges(id, 10);
		expect(first).toMatchObject({
			field: "stature",
			before: null,
			after: "178 cm",
			overrode: null,
			deviceName: "Tablet",
			by: "Coach A",
			at: new Date("2030-12-31T23:58:00.000Z"),
		});
	});

	test("sent twice, also at once, are stored once", async () => {
		const { id, number } = await start();
		const one = change("stature", "178 cm");
		await Promise.all([keep(id, TABLET, one), keep(id, TABLET, one)]);
		await keep(id, TABLET, one, one);
		expect(await listChanges(id, 10)).toHaveLength(1);
		expect(await getFitting(number)).toMatchObject({ revision: 2 });
	});

	test("of one device at once, out of order of their keys, end with one value and every text in the log", async () => {
		const { id, number } = await start();
		await Promise.all(
			["1", "2", "3", "4", "5"].map((age) =>
				keep(id, TABLET, change("age", age)),
			),
		);
		expect(
			(await listChanges(id, 10)).map(({ after }) => after).sort(),
		).toEqual(["1", "2", "3", "4", "5"]);
		expect(await openConflicts(id)).toEqual([]);
		expect((await getFitting(number))?.revision).toBe(6);
	});

	test("made in ignorance of each other stand side by side until one settles them", async () => {
		const { id, number } = await start();
		await keep(id, PHONE, change("armSpan", "184 cm"));
		await keep(id, TABLET, change("armSpan", "180 cm"));
		const [conflict, ...more] = await openConflicts(id);
		expect(more).toEqual([]);
		expect(conflict).toMatchObject({
			field: "armSpan",
			after: "180 cm",
			deviceName: "Tablet",
			settledAt: null,
			overrode: { answer: "184 cm", from: { deviceName: "Phone", by: "" } },
		});
		expect((await getFitting(number))?.answers.armSpan).toBe("180 cm");

		await keep(
			id,
			TABLET,
			change(
				"armSpan",
				"184 cm",
				{ armSpan: "180 cm" },
				{ settles: [conflict?.id ?? ""] },
			),
		);
		expect(await openConflicts(id)).toEqual([]);
		expect((await getFitting(number))?.answers.armSpan).toBe("184 cm");
		expect((await listChanges(id, 10)).map(({ after }) => after)).toEqual([
			"184 cm",
			"180 cm",
			"184 cm",
		]);
	});

	test("settle nothing of another field or another fitting", async () => {
		const [one, other] = [await start(), await start()];
		for (const { id } of [one, other]) {
			await keep(id, PHONE, change("hand", "left"));
			await keep(id, TABLET, change("hand", "right"));
		}
		const [conflict] = await openConflicts(one.id);
		const settles = [conflict?.id ?? ""];
		await keep(other.id, TABLET, change("hand", "left", {}, { settles }));
		await keep(one.id, TABLET, change("age", "30", {}, { settles }));
		expect(await openConflicts(one.id)).toHaveLength(1);
	});

	test("of a fitting that is gone are refused, and go with a fitting that is deleted", async () => {
		expect(await keep("none", TABLET, change("age", "30"))).toBe(false);
		const { id } = await start();
		await keep(id, TABLET, change("age", "30"));
		await database().fitting.delete({ where: { id } });
		expect(await listChanges(id, 10)).toEqual([]);
	});

	test("by a key of another fitting's change are an error", async () => {
		const [one, other] = [await start(), await start()];
		const taken = change("age", "30");
		await keep(one.id, TABLET, taken);
		await expect(keep(other.id, TABLET, taken)).rejects.toThrow(taken.key);
	});
});

test("a fitting and its player keep the ids they were given where they began, once", async () => {
	const [playerKey, fittingKey] = [key(), key()];
	const [newPlayerId, fittingId] = [key(), key()];
	for (let i = 0; i < 2; i++) {
		const player = await createPlayer({
			id: newPlayerId,
			name: "Begun elsewhere",
			requestKey: playerKey,
		});
		const fitting = await startFitting({
			id: fittingId,
			playerId: player.id,
			requestKey: fittingKey,
		});
		expect([player.id, fitting.id]).toEqual([newPlayerId, fittingId]);
	}
});
