import "server-only";
import { randomUUID } from "node:crypto";
import { Client } from "pg";
import {
	appliedMigrations,
	type HistoryRow,
	type Migration,
	MigrationError,
	readMigrations,
} from "@/lib/records/migration-files";

// The ORM's own table, column for column.
const HISTORY_TABLE = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
	"id" VARCHAR(36) PRIMARY KEY NOT NULL,
	"checksum" VARCHAR(64) NOT NULL,
	"finished_at" TIMESTAMPTZ,
	"migration_name" VARCHAR(255) NOT NULL,
	"logs" TEXT,
	"rolled_back_at" TIMESTAMPTZ,
	"started_at" TIMESTAMPTZ NOT NULL DEFAULT now(),
	"applied_steps_count" INTEGER NOT NULL DEFAULT 0
)`;

/** Any number will do, as long as every process that migrates takes the same. */
const LOCK = 72_707_369;

/**
 * Applies the migrations of `folder` that the PostgreSQL database does not have yet, each in one
 * transaction with its line in the history. Processes that start at once take turns. Returns the
 * names applied; throws a MigrationError as `migrateSqlite` does.
 */
export async function migratePostgresql(
	databaseUrl: string,
	folder = "prisma/migrations-postgresql",
): Promise<string[]> {
	const migrations = readMigrations(folder);
	const client = new Client({ connectionString: databaseUrl });
	await client.connect();
	try {
		await client.query("SELECT pg_advisory_lock($1)", [LOCK]);
		await client.query(HISTORY_TABLE);
		const { rows } = await client.query<HistoryRow>(
			'SELECT migration_name, checksum, finished_at FROM "_prisma_migrations" WHERE rolled_back_at IS NULL',
		);
		const applied = appliedMigrations(rows, migrations);
		const fresh = migrations.filter(({ name }) => !applied.has(name));
		for (const migration of fresh) await apply(client, migration);
		return fresh.map(({ name }) => name);
	} finally {
		// The lock ends with the connection.
		await client.end();
	}
}

async function apply(client: Client, migration: Migration): Promise<void> {
	const { name, sql, checksum } = migration;
	const startedAt = new Date();
	await client.query("BEGIN");
	try {
		await client.query(sql);
		await client.query(
			'INSERT INTO "_prisma_migrations" (id, checksum, migration_name, started_at, finished_at, applied_steps_count) VALUES ($1, $2, $3, $4, now(), 1)',
			[randomUUID(), checksum, name, startedAt],
		);
		await client.query("COMMIT");
	} catch (error) {
		await client.query("ROLLBACK");
		const reason = error instanceof Error ? error.message : String(error);
		throw new MigrationError(
			`migration ${name} failed and was undone: ${reason}`,
			{ cause: error },
		);
	}
}
