import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "libsql";
import { Client } from "pg";
import { afterAll, beforeAll, inject } from "vitest";
import { closeDatabase } from "@/lib/records/database";
import { databaseFile, isPostgresql } from "@/lib/records/location";
import { migrate } from "@/lib/records/migrate";

/** A folder of its own for a test, removed with it. */
export function temporaryFolder(): { path: string; remove: () => void } {
	const path = mkdtempSync(join(tmpdir(), "records test %20 #-"));
	return { path, remove: () => rmSync(path, { recursive: true }) };
}

/** A database of its own for a test: on the run's PostgreSQL server where there is one, else a SQLite file. */
export interface OwnDatabase {
	readonly url: string;
	readonly remove: () => Promise<void>;
}

export async function ownDatabase(): Promise<OwnDatabase> {
	const server = inject("postgresqlUrl");
	if (!server) {
		const folder = temporaryFolder();
		return {
			url: `file:${join(folder.path, "test.db")}`,
			remove: async () => folder.remove(),
		};
	}
	const name = `test_${randomUUID().replaceAll("-", "")}`;
	const administer = async (sql: string) => {
		const client = new Client({ connectionString: `${server}/postgres` });
		await client.connect();
		await client.query(sql);
		await client.end();
	};
	await administer(`CREATE DATABASE ${name}`);
	return {
		url: `${server}/${name}`,
		remove: () => administer(`DROP DATABASE ${name} WITH (FORCE)`),
	};
}

/** Statements past the ORM, on a connection of their own. */
export async function direct(url: string, sql: string): Promise<void> {
	if (isPostgresql(url)) {
		const client = new Client({ connectionString: url });
		await client.connect();
		await client.query(sql).finally(() => client.end());
		return;
	}
	const database = new Database(databaseFile(url));
	try {
		database.exec(sql);
	} finally {
		database.close();
	}
}

/** Gives the test file a migrated database of its own, as the app's `database()`. */
export function temporaryDatabase(): { readonly url: string } {
	let own: OwnDatabase | undefined;
	const before = process.env.DATABASE_URL;
	beforeAll(async () => {
		own = await ownDatabase();
		process.env.DATABASE_URL = own.url;
		await migrate(own.url);
	});
	afterAll(async () => {
		await closeDatabase();
		if (before === undefined) delete process.env.DATABASE_URL;
		else process.env.DATABASE_URL = before;
		await own?.remove();
	});
	return {
		get url() {
			if (!own) throw new Error("the database is made before the first test");
			return own.url;
		},
	};
}
