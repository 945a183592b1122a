import { beforeEach, describe, expect, test } from "vitest";
import { contentSha256 } from "@/lib/records/canonical";
import { database } from "@/lib/records/database";
import { getFitting, listFittings } from "@/lib/records/fittings/loaders";
import { startFitting } from "@/lib/records/fittings/mutations";
import { createPlayer } from "@/lib/records/players/mutations";
import { getSpecRevision, listRevisions } from "@/lib/records/specs/loaders";
import { saveSpec } from "@/lib/records/specs/mutations";
import { direct, temporaryDatabase } from "../support/database";

const own = temporaryDatabase();

const key = () => crypto.randomUUID();
let fittingId: string;
let fittingNumber: number;
beforeEach(async () => {
	const player = await createPlayer({ name: "Spec Test", requestKey: key() });
	const fitting = await startFitting({
		playerId: player.id,
		requestKey: key(),
	});
	fittingId = fitting.id;
	fittingNumber = fitting.number;
});
const save = (content: object, requestKey = key()) =>
	saveSpec({ fittingId, content, reason: "tried it", requestKey });

describe("saving", () => {
	test("first gives a number and revision 1, and finishes the fitting", async () => {
		const saved = await save({ lengthMm: 1470 });
		expect(saved.revision).toBe(1);
		const fitting = await getFitting(fittingNumber);
		expect(fitting?.spec).toEqual({ number: saved.number, latestRevision: 1 });
		expect(fitting?.finishedAt).toBeInstanceOf(Date);
	});

	test("different content is the next revision; the earlier one stays as it was", async () => {
		const { number } = await save({ lengthMm: 1470, woods: ["ash", "ebony"] });
		const before = await getSpecRevision(number, 1);
		expect(await save({ lengthMm: 1480 })).toEqual({ number, revision: 2 });
		const after = await getSpecRevision(number, 1);
		expect(after).toEqual({ ...before, latestRevision: 2 });
		expect(after?.content).toEqual({ lengthMm: 1470, woods: ["ash", "ebony"] });
		expect(after?.contentSha256).toBe(contentSha256(after?.content));
		expect(await getSpecRevision(number)).toMatchObject({
			revision: 2,
			content: { lengthMm: 1480 },
		});
		expect(await listRevisions(number)).toMatchObject([
			{ revision: 2, reason: "tried it" },
			{ revision: 1 },
		]);
		const { fittings } = await listFittings({ search: "spec test" });
		expect(fittings.map(({ spec }) => spec)).toContainEqual({
			number,
			latestRevision: 2,
		});
	});

	test("equal content is the same revision, whatever the order of its names", async () => {
		const first = await save({ a: 1, b: { c: 2, d: [3] } });
		expect(await save({ b: { d: [3], c: 2 }, a: 1 })).toEqual(first);
		expect(await listRevisions(first.number)).toHaveLength(1);
	});

	test("going back to earlier content is a change, and so a revision", async () => {
		await save({ a: 1 });
		await save({ a: 2 });
		expect((await save({ a: 1 })).revision).toBe(3);
	});

	test("the same key gives the same revision, whatever was saved since", async () => {
		const requestKey = key();
		const first = await save({ a: 1 });
		const repeated = key();
		expect(await save({ a: 1 }, repeated)).toEqual(first);
		const second = await save({ a: 2 }, requestKey);
		expect(await save({ a: 2 }, requestKey)).toEqual(second);
		expect(await save({ a: 1 }, repeated)).toEqual(first);
		expect(await listRevisions(first.number)).toHaveLength(2);
	});

	test("twenty different saves at once are revisions 1 to 20 of one spec", async () => {
		const saved = await Promise.all(
			Array.from({ length: 20 }, (_, a) => save({ a })),
		);
		expect(new Set(saved.map(({ number }) => number)).size).toBe(1);
		expect(saved.map(({ revision }) => revision).sort((a, b) => a - b)).toEqual(
			Array.from({ length: 20 }, (_, i) => i + 1),
		);
	});

	test("the same save five times at once is one revision", async () => {
		const requestKey = key();
		const saved = await Promise.all(
			Array.from({ length: 5 }, () => save({ a: 1 }, requestKey)),
		);
		expect(new Set(saved.map((one) => JSON.stringify(one))).size).toBe(1);
		expect(await listRevisions(saved[0]?.number ?? 0)).toHaveLength(1);
	});

	test.each([
		["NaN", { a: { b: Number.NaN } }, /content\.a\.b is NaN/],
		["an infinity", { a: [Number.POSITIVE_INFINITY] }, /content\.a\[0\]/],
		["a date", { at: new Date() }, /content\.at is a object/],
		["a function", { f: () => 1 }, /content\.f is a function/],
	])("refuses content with %s", async (_, content, message) => {
		await expect(save(content)).rejects.toThrow(message);
		expect((await getFitting(fittingNumber))?.spec).toBeNull();
	});

	test("of a fitting that is not there is refused", async () => {
		fittingId = "none";
		await expect(save({ a: 1 })).rejects.toThrow("there is no fitting none");
	});
});

describe("a saved revision", () => {
	test("is not there under a number or revision never given", async () => {
		const { number } = await save({ a: 1 });
		expect(await getSpecRevision(number, 2)).toBeNull();
		expect(await getSpecRevision(99_999)).toBeNull();
		expect(await listRevisions(99_999)).toEqual([]);
	});

	test("is refused change and removal by the database itself, and says so", async () => {
		const { number } = await save({ a: 1 });
		const before = await getSpecRevision(number, 1);
		await expect(
			direct(own.url, `UPDATE "SpecRevision" SET reason = 'x'`),
		).rejects.toThrow(
			"a saved spec revision never changes; save a new revision instead",
		);
		await expect(direct(own.url, 'DELETE FROM "SpecRevision"')).rejects.toThrow(
			"a saved spec revision is kept; it cannot be deleted",
		);
		await expect(
			database().specRevision.updateMany({ data: { reason: "x" } }),
		).rejects.toThrow();
		await expect(database().specRevision.deleteMany()).rejects.toThrow();
		expect(await getSpecRevision(number, 1)).toEqual(before);
	});

	test("keeps its spec, its fitting and its player from being deleted", async () => {
		await save({ a: 1 });
		await expect(database().spec.deleteMany()).rejects.toThrow();
		await expect(database().fitting.deleteMany()).rejects.toThrow();
		await expect(database().player.deleteMany()).rejects.toThrow();
	});
});
