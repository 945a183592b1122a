import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { migrate } from "@/lib/records/migrate";
import { temporaryFolder } from "../support/database";

// The ORM's own command line, through the engine stand-in, is the outside check of the runner.
const folder = temporaryFolder();
const url = `file:${join(folder.path, "schema.db")}`;
beforeAll(() => {
	migrate(url);
});
afterAll(() => folder.remove());

function orm(...args: string[]): { status: number | null; output: string } {
	const { status, stdout, stderr } = spawnSync(
		process.execPath,
		["node_modules/prisma/build/index.js", "migrate", ...args],
		{
			encoding: "utf8",
			env: {
				...process.env,
				DATABASE_URL: url,
				PRISMA_SCHEMA_ENGINE_BINARY: "scripts/schema-engine.mjs",
				PRISMA_HIDE_UPDATE_MESSAGE: "1",
				CHECKPOINT_DISABLE: "1",
			},
		},
	);
	return { status, output: stdout + stderr };
}

const differenceTo = (schema: string) =>
	orm("diff", "--from-config-datasource", "--to-schema", schema, "--exit-code");

test("the migrated database is what the schema says", () => {
	expect(differenceTo("prisma/schema.prisma")).toMatchObject({
		status: 0,
		output: expect.stringContaining("No difference detected"),
	});
}, 30_000);

test("and a schema with one column more would be told apart", () => {
	const schema = join(folder.path, "changed.prisma");
	writeFileSync(
		schema,
		readFileSync("prisma/schema.prisma", "utf8").replace(
			"model Sequence {",
			"model Sequence {\n  more Int?",
		),
	);
	expect(differenceTo(schema)).toMatchObject({
		status: 2,
		output: expect.stringContaining("more"),
	});
}, 30_000);

test("the ORM reads the runner's history as its own", () => {
	expect(orm("status")).toMatchObject({
		status: 0,
		output: expect.stringContaining("Database schema is up to date"),
	});
	expect(orm("deploy")).toMatchObject({
		status: 0,
		output: expect.stringContaining("No pending migrations to apply"),
	});
}, 30_000);
