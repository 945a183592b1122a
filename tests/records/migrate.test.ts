import { cpSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Database from "libsql";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { migrateSqlite as migrate } from "@/lib/records/migrate-sqlite";
import { MigrationError } from "@/lib/records/migration-files";
import { temporaryFolder } from "../support/database";

let folder: ReturnType<typeof temporaryFolder>;
let migrations: string;
let file: string;
let url: string;

beforeEach(() => {
	folder = temporaryFolder();
	migrations = join(folder.path, "migrations");
	file = join(folder.path, "data", "test.db");
	url = `file:${file}`;
	add(
		"0001_first",
		`CREATE TABLE "Parent" ("id" INTEGER PRIMARY KEY, "name" TEXT);
		CREATE TABLE "Child" ("id" INTEGER PRIMARY KEY, "parentId" INTEGER NOT NULL,
			CONSTRAINT "c" FOREIGN KEY ("parentId") REFERENCES "Parent" ("id") ON DELETE CASCADE);`,
	);
});
afterEach(() => folder.remove());

function add(name: string, sql: string): void {
	mkdirSync(join(migrations, name), { recursive: true });
	writeFileSync(join(migrations, name, "migration.sql"), sql);
}

function rows<Row>(sql: string): Row[] {
	const database = new Database(file);
	try {
		return (database.prepare(sql).all() as Row[]).map((row) => {
			const { _metadata, ...values } = row as Row & { _metadata?: unknown };
			return values as Row;
		});
	} finally {
		database.close();
	}
}

function run(sql: string): void {
	const database = new Database(file);
	try {
		database.exec(sql);
	} finally {
		database.close();
	}
}

function failure(): MigrationError {
	try {
		migrate(url, migrations);
	} catch (error) {
		if (error instanceof MigrationError) return error;
		throw error;
	}
	throw new Error("the migration did not fail");
}

const tables = () =>
	rows<{ name: string }>(
		"SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name",
	).map(({ name }) => name);

describe("applying", () => {
	test("makes the folder and the file, applies in the order of names, and once", () => {
		add("0002_second", 'ALTER TABLE "Parent" ADD COLUMN "born" TEXT;');
		expect(migrate(url, migrations)).toEqual(["0001_first", "0002_second"]);
		expect(migrate(url, migrations)).toEqual([]);
		add("0003_third", 'ALTER TABLE "Parent" ADD COLUMN "left" TEXT;');
		expect(migrate(url, migrations)).toEqual(["0003_third"]);
		const history = rows<{
			migration_name: string;
			finished_at: string | null;
			applied_steps_count: number;
			checksum: string;
		}>('SELECT * FROM "_prisma_migrations" ORDER BY migration_name');
		expect(history.map((row) => row.migration_name)).toEqual([
			"0001_first",
			"0002_second",
			"0003_third",
		]);
		for (const row of history) {
			expect(row.finished_at).not.toBeNull();
			expect(row.applied_steps_count).toBe(1);
			expect(row.checksum).toMatch(/^[0-9a-f]{64}$/);
		}
	});

	test("leaves the database in WAL mode", () => {
		migrate(url, migrations);
		expect(rows("PRAGMA journal_mode")).toEqual([{ journal_mode: "wal" }]);
	});

	test("an address that is not a SQLite file is refused by name", () => {
		expect(() => migrate("mysql://u:secret@h/d", migrations)).toThrow(
			/^DATABASE_URL must name a SQLite file as file:<path> or a PostgreSQL database as postgresql:\/\/…, got mysql:…$/,
		);
		expect(() => migrate(undefined, migrations)).toThrow(
			/^DATABASE_URL is not set/,
		);
		expect(() => migrate("file::memory:", migrations)).toThrow(/DATABASE_URL/);
	});

	test("an empty folder of migrations is refused", () => {
		expect(() => migrate(url, folder.path)).toThrow(/no migrations/);
	});
});

describe("redefining a table", () => {
	// The script the ORM writes for SQLite, where a column's type or constraint changes.
	const redefinition = `PRAGMA defer_foreign_keys=ON;
		PRAGMA foreign_keys=OFF;
		CREATE TABLE "new_Parent" ("id" INTEGER PRIMARY KEY, "name" TEXT NOT NULL DEFAULT 'none');
		INSERT INTO "new_Parent" ("id", "name") SELECT "id", coalesce("name", 'none') FROM "Parent";
		DROP TABLE "Parent";
		ALTER TABLE "new_Parent" RENAME TO "Parent";
		PRAGMA foreign_keys=ON;
		PRAGMA defer_foreign_keys=OFF;`;

	beforeEach(() => {
		migrate(url, migrations);
		run(
			`INSERT INTO "Parent" VALUES (1, 'a'), (2, NULL); INSERT INTO "Child" VALUES (10, 1), (20, 2);`,
		);
		add("0002_redefine", redefinition);
	});

	test("keeps the rows that refer to it", () => {
		expect(migrate(url, migrations)).toEqual(["0002_redefine"]);
		expect(rows('SELECT * FROM "Child" ORDER BY id')).toEqual([
			{ id: 10, parentId: 1 },
			{ id: 20, parentId: 2 },
		]);
		expect(rows('SELECT * FROM "Parent" ORDER BY id')).toEqual([
			{ id: 1, name: "a" },
			{ id: 2, name: "none" },
		]);
	});

	test("the same script inside a plain transaction would have lost them", () => {
		run(`PRAGMA foreign_keys=ON; BEGIN; ${redefinition} COMMIT;`);
		expect(rows('SELECT * FROM "Child"')).toEqual([]);
	});

	test("is undone where it leaves a reference to nothing", () => {
		add(
			"0002_redefine",
			redefinition.replace('FROM "Parent";', 'FROM "Parent" WHERE "id" = 1;'),
		);
		const { message } = failure();
		expect(message).toContain("0002_redefine");
		expect(message).toContain("1 broken references");
		expect(message).toContain("Child row 20 to Parent");
		expect(rows('SELECT "id" FROM "Parent" ORDER BY id')).toEqual([
			{ id: 1 },
			{ id: 2 },
		]);
		expect(rows('SELECT "id" FROM "Child"')).toHaveLength(2);
		expect(tables()).not.toContain("new_Parent");
	});
});

describe("refusing", () => {
	test("a migration that fails half-way leaves no trace and can be mended", () => {
		add(
			"0002_broken",
			'CREATE TABLE "Left" ("id" INTEGER); INSERT INTO "Nowhere" VALUES (1);',
		);
		expect(failure().message).toMatch(
			/^migration 0002_broken failed and was undone: .*no such table: Nowhere/,
		);
		expect(tables()).toContain("Parent");
		expect(tables()).not.toContain("Left");
		add("0002_broken", 'CREATE TABLE "Left" ("id" INTEGER);');
		expect(migrate(url, migrations)).toEqual(["0002_broken"]);
	});

	test("a migration edited after it was applied", () => {
		migrate(url, migrations);
		add("0001_first", 'CREATE TABLE "Other" ("id" INTEGER);');
		add("0002_second", 'CREATE TABLE "Second" ("id" INTEGER);');
		expect(failure().message).toContain(
			"0001_first was edited after it was applied",
		);
		expect(tables()).not.toContain("Second");
	});

	test("a migration that another tool began and did not finish", () => {
		migrate(url, migrations);
		add("0002_second", 'CREATE TABLE "Second" ("id" INTEGER);');
		run(
			`INSERT INTO "_prisma_migrations" (id, checksum, migration_name) VALUES ('x', 'y', '0002_second')`,
		);
		expect(failure().message).toContain("0002_second was started");
		run(
			`UPDATE "_prisma_migrations" SET rolled_back_at = current_timestamp WHERE id = 'x'`,
		);
		expect(migrate(url, migrations)).toEqual(["0002_second"]);
	});

	test("a database made by a newer program", () => {
		cpSync(migrations, join(folder.path, "newer"), { recursive: true });
		mkdirSync(join(folder.path, "newer", "0009_newer"));
		writeFileSync(
			join(folder.path, "newer", "0009_newer", "migration.sql"),
			'CREATE TABLE "Newer" ("id" INTEGER);',
		);
		migrate(url, join(folder.path, "newer"));
		expect(failure().message).toContain("0009_newer");
	});

	test("a migration that ends the transaction it runs in", () => {
		add("0002_commits", 'CREATE TABLE "Kept" ("id" INTEGER); COMMIT;');
		expect(failure().message).toContain("0002_commits ends the transaction");
	});
});
