import "server-only";
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

export interface Migration {
	readonly name: string;
	readonly sql: string;
	readonly checksum: string;
}

/** A line of the ORM's own history table. */
export interface HistoryRow {
	readonly migration_name: string;
	readonly checksum: string;
	readonly finished_at: unknown;
}

export class MigrationError extends Error {
	override readonly name = "MigrationError";
}

/** The migrations of a folder in the order of their names. Throws a MigrationError where there is none. */
export function readMigrations(folder: string): Migration[] {
	const names = readdirSync(folder)
		.filter((name) => existsSync(join(folder, name, "migration.sql")))
		.sort();
	if (names.length === 0)
		throw new MigrationError(`no migrations in ${folder}`);
	return names.map((name) => {
		const sql = readFileSync(join(folder, name, "migration.sql"), "utf8");
		return {
			name,
			sql,
			checksum: createHash("sha256").update(sql).digest("hex"),
		};
	});
}

/**
 * The names of the migrations a database has. Throws a MigrationError where it has one that is
 * unknown here, was left half-applied by another tool, or was edited after it was applied.
 */
export function appliedMigrations(
	rows: readonly HistoryRow[],
	known: readonly Migration[],
): Set<string> {
	for (const row of rows) {
		const name = row.migration_name;
		const migration = known.find((candidate) => candidate.name === name);
		if (!migration) {
			throw new MigrationError(
				`the database has migration ${name}, which this version of the program does not know: use the newer program it was made with`,
			);
		}
		if (row.finished_at === null) {
			throw new MigrationError(
				`migration ${name} was started by another tool and not finished: restore the database from a backup, or repair it and mark the migration resolved`,
			);
		}
		if (row.checksum !== migration.checksum) {
			throw new MigrationError(
				`migration ${name} was edited after it was applied: put its text back and write a further migration`,
			);
		}
	}
	return new Set(rows.map((row) => row.migration_name));
}
