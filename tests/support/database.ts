import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll } from "vitest";
import { closeDatabase } from "@/lib/records/database";
import { migrate } from "@/lib/records/migrate";

/** A folder of its own for a test, removed with it. */
export function temporaryFolder(): { path: string; remove: () => void } {
	const path = mkdtempSync(join(tmpdir(), "records test %20 #-"));
	return { path, remove: () => rmSync(path, { recursive: true }) };
}

/** Gives the test file a migrated database of its own, as the app's `database()`. */
export function temporaryDatabase(): { readonly url: string } {
	const folder = temporaryFolder();
	const url = `file:${join(folder.path, "test.db")}`;
	const before = process.env.DATABASE_URL;
	beforeAll(() => {
		process.env.DATABASE_URL = url;
		migrate(url);
	});
	afterAll(async () => {
		await closeDatabase();
		if (before === undefined) delete process.env.DATABASE_URL;
		else process.env.DATABASE_URL = before;
		folder.remove();
	});
	return { url };
}
