import "server-only";
import { setTimeout as pause } from "node:timers/promises";
import { Prisma, type PrismaClient } from "@/generated/prisma/client";
import { connect } from "@/lib/records/connection";
import { BUSY_TIMEOUT_MS } from "@/lib/records/pragmas";

export type Database = PrismaClient;
export type DatabaseTransaction = Prisma.TransactionClient;

// On the global object, in production too: the framework may load this module once a bundle, and
// each client holds a connection of its own.
const shared = globalThis as { recordsDatabase?: PrismaClient };

/** The app's database, opened on first use. Throws, naming DATABASE_URL, where that is missing or wrong. */
export function database(): Database {
	shared.recordsDatabase ??= connect(process.env.DATABASE_URL);
	return shared.recordsDatabase;
}

/** Ends the connection; the next use opens another. */
export async function closeDatabase(): Promise<void> {
	const open = shared.recordsDatabase;
	shared.recordsDatabase = undefined;
	await open?.$disconnect();
}

/** How often a unique value is looked for again: where it is not another transaction's, it stays taken. */
const UNIQUE_TRIES = 3;

/**
 * Carries out everything in `work` or nothing, as if no other transaction ran at the same time. On
 * PostgreSQL the loser of two that touched the same rows is told so by the server and tried again,
 * for as long as a writer waits for another on SQLite: `work` does nothing outside the database.
 */
export async function inTransaction<Result>(
	work: (transaction: DatabaseTransaction) => Promise<Result>,
): Promise<Result> {
	const giveUpAt = Date.now() + BUSY_TIMEOUT_MS;
	for (let tried = 1; ; tried++) {
		try {
			return await database().$transaction(work, {
				isolationLevel: Prisma.TransactionIsolationLevel.Serializable,
			});
		} catch (error) {
			if (!mayPass(error, tried) || Date.now() > giveUpAt) throw error;
			await pause(Math.random() * Math.min(400, 10 * 2 ** tried));
		}
	}
}

/**
 * PostgreSQL's serialization_failure and deadlock_detected; and a unique value that another
 * transaction took in between, which the next try finds.
 */
function mayPass(error: unknown, tried: number): boolean {
	if (!(error instanceof Error)) return false;
	const { code } = error as { code?: unknown };
	return (
		code === "P2034" ||
		error.message === "TransactionWriteConflict" ||
		(code === "P2002" && tried < UNIQUE_TRIES)
	);
}
