import "server-only";
import { randomUUID } from "node:crypto";
import { mkdirSync } from "node:fs";
import { dirname } from "node:path";
import Database from "libsql";
import { databaseFile } from "@/lib/records/location";
import {
	appliedMigrations,
	type HistoryRow,
	type Migration,
	MigrationError,
	readMigrations,
} from "@/lib/records/migration-files";
import { connectionPragmas } from "@/lib/records/pragmas";

// The ORM's own table, column for column, so that its status and deploy commands agree with this runner.
const HISTORY_TABLE = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
	"id" TEXT PRIMARY KEY NOT NULL,
	"checksum" TEXT NOT NULL,
	"finished_at" DATETIME,
	"migration_name" TEXT NOT NULL,
	"logs" TEXT,
	"rolled_back_at" DATETIME,
	"started_at" DATETIME NOT NULL DEFAULT current_timestamp,
	"applied_steps_count" INTEGER UNSIGNED NOT NULL DEFAULT 0
)`;

/**
 * Applies the migrations of `folder` that the SQLite database does not have yet, in the order of their
 * names, each in one transaction together with its line in the history: a crash half-way leaves no
 * trace, and the next start repeats it. Returns the names applied.
 *
 * Throws a MigrationError and leaves the database as it was when a migration fails, leaves broken
 * references, was edited after it was applied, was left half-applied by another tool, or is unknown here.
 */
export function migrateSqlite(
	databaseUrl: string | undefined,
	folder = "prisma/migrations",
): string[] {
	const file = databaseFile(databaseUrl);
	mkdirSync(dirname(file), { recursive: true });
	const migrations = readMigrations(folder);
	const database = new Database(file);
	try {
		for (const pragma of connectionPragmas) database.exec(pragma);
		// Before BEGIN: inside a transaction SQLite ignores it, and dropping a table that is being
		// redefined would then delete or detach the rows that refer to it.
		database.exec("PRAGMA foreign_keys = OFF");
		return migrations
			.filter((migration) => applyOnce(database, migration, migrations))
			.map((migration) => migration.name);
	} finally {
		database.close();
	}
}

/** True where the migration was applied now; false where the database had it. */
function applyOnce(
	database: Database.Database,
	migration: Migration,
	known: readonly Migration[],
): boolean {
	// The write lock first, then the look at the history: two processes starting at once take turns.
	database.exec("BEGIN IMMEDIATE");
	try {
		database.exec(HISTORY_TABLE);
		const applied = readHistory(database, known);
		const fresh = !applied.has(migration.name);
		if (fresh) apply(database, migration);
		database.exec("COMMIT");
		return fresh;
	} catch (error) {
		if (database.inTransaction) database.exec("ROLLBACK");
		throw error;
	}
}

function readHistory(
	database: Database.Database,
	known: readonly Migration[],
): Set<string> {
	const rows = database
		.prepare(
			'SELECT migration_name, checksum, finished_at FROM "_prisma_migrations" WHERE rolled_back_at IS NULL',
		)
		.all() as HistoryRow[];
	return appliedMigrations(rows, known);
}

function apply(database: Database.Database, migration: Migration): void {
	const { name } = migration;
	const startedAt = new Date().toISOString();
	try {
		database.exec(migration.sql);
	} catch (error) {
		const reason = error instanceof Error ? error.message : String(error);
		throw new MigrationError(
			`migration ${name} failed and was undone: ${reason}`,
			{ cause: error },
		);
	}
	if (!database.inTransaction) {
		throw new MigrationError(
			`migration ${name} ends the transaction it runs in: take BEGIN, COMMIT and ROLLBACK out of it`,
		);
	}
	const broken = database.prepare("PRAGMA foreign_key_check").all() as {
		table: string;
		rowid: number;
		parent: string;
	}[];
	if (broken.length > 0) {
		const rows = broken
			.slice(0, 5)
			.map((row) => `${row.table} row ${row.rowid} to ${row.parent}`);
		throw new MigrationError(
			`migration ${name} leaves ${broken.length} broken references and was undone: ${rows.join(", ")}`,
		);
	}
	database
		.prepare(
			'INSERT INTO "_prisma_migrations" (id, checksum, migration_name, started_at, finished_at, applied_steps_count) VALUES (?, ?, ?, ?, ?, 1)',
		)
		.run(
			randomUUID(),
			migration.checksum,
			name,
			startedAt,
			new Date().toISOString(),
		);
}
