import "server-only";
import type { Prisma, PrismaClient } from "@/generated/prisma/client";
import { connect } from "@/lib/records/connection";

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
