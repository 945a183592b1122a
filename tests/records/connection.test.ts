import { expect, test } from "vitest";
import { connect } from "@/lib/records/connection";
import { database } from "@/lib/records/database";
import { temporaryDatabase } from "../support/database";

const own = temporaryDatabase();

const WANTED = [
	["foreign_keys", 1n],
	["synchronous", 2n], // FULL
	["journal_mode", "wal"],
	["busy_timeout", 10_000n],
] as const;

type Queryable = Pick<ReturnType<typeof database>, "$queryRawUnsafe">;

async function pragmas(queryable: Queryable): Promise<unknown[]> {
	const values: unknown[] = [];
	for (const [name] of WANTED) {
		const [row] = await queryable.$queryRawUnsafe<Record<string, unknown>[]>(
			`PRAGMA ${name}`,
		);
		const value = Object.values(row ?? {})[0];
		values.push(typeof value === "number" ? BigInt(value) : value);
	}
	return values;
}

const wanted = WANTED.map(([, value]) => value);

test("the connection has its settings before, in and after a transaction", async () => {
	expect(await pragmas(database())).toEqual(wanted);
	await database().$transaction(async (transaction) => {
		expect(await pragmas(transaction)).toEqual(wanted);
	});
	expect(await pragmas(database())).toEqual(wanted);
});

test("and after a transaction that was undone, of which nothing stays", async () => {
	await expect(
		database().$transaction(async (transaction) => {
			await transaction.sequence.create({ data: { name: "gone", next: 1 } });
			throw new Error("changed my mind");
		}),
	).rejects.toThrow("changed my mind");
	expect(await database().sequence.findMany()).toEqual([]);
	expect(await pragmas(database())).toEqual(wanted);
});

test("a reference to nothing is refused", async () => {
	await expect(
		database().fitting.create({
			data: { number: 1, playerId: "nobody", answers: {} },
		}),
	).rejects.toMatchObject({ code: "P2003" });
});

test("a statement that fails inside a transaction undoes what came before it", async () => {
	await expect(
		database().$transaction(async (transaction) => {
			await transaction.sequence.create({ data: { name: "half", next: 1 } });
			await transaction.sequence.create({ data: { name: "half", next: 2 } });
		}),
	).rejects.toMatchObject({ code: "P2002" });
	expect(await database().sequence.findMany()).toEqual([]);
});

test("another client sees what was committed, through a file name with spaces and signs", async () => {
	const other = connect(own.url);
	await database().sequence.create({ data: { name: "seen", next: 7 } });
	expect(await other.sequence.findMany()).toEqual([{ name: "seen", next: 7 }]);
	await other.$disconnect();
});
