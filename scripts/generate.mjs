import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import {
	chmodSync,
	existsSync,
	mkdirSync,
	readFileSync,
	writeFileSync,
} from "node:fs";
import { argv, execPath } from "node:process";
import { fileURLToPath } from "node:url";

const STAMP = "generated/stamp";
const ENGINE = "scripts/schema-engine.mjs";
const POSTGRESQL_SCHEMA = "generated/postgresql.prisma";

/** The one schema, told for PostgreSQL. */
export const postgresqlSchema = () =>
	readFileSync("prisma/schema.prisma", "utf8")
		.replace('provider = "sqlite"', 'provider = "postgresql"')
		.replace('"../generated/prisma"', '"./postgresql"');

/**
 * Generates the database client where the schema or the ORM's version has changed since the last
 * time. Throws with the ORM's own words where that fails.
 * @returns {boolean} whether anything was generated
 */
export function generate() {
	const hash = createHash("sha256");
	for (const file of [
		"prisma/schema.prisma",
		"node_modules/prisma/package.json",
		"scripts/generate.mjs",
	])
		hash.update(readFileSync(file));
	const wanted = hash.digest("hex");
	if (
		existsSync(STAMP) &&
		existsSync("generated/prisma/client.ts") &&
		existsSync("generated/postgresql/client.ts") &&
		readFileSync(STAMP, "utf8") === wanted
	)
		return false;

	mkdirSync("generated", { recursive: true });
	writeFileSync(POSTGRESQL_SCHEMA, postgresqlSchema());
	for (const schema of ["prisma/schema.prisma", POSTGRESQL_SCHEMA]) {
		const { status, stdout, stderr } = spawnSync(
			execPath,
			[
				"node_modules/prisma/build/index.js",
				...["generate", "--schema", schema],
			],
			{ encoding: "utf8", env: ormEnvironment() },
		);
		if (status !== 0)
			throw new Error(
				`generating the database client of ${schema} failed:\n${stdout}${stderr}`,
			);
	}
	writeFileSync(STAMP, wanted);
	return true;
}

/**
 * For the ORM's command line: its native engine is never fetched, and nothing is reported home.
 * @returns {NodeJS.ProcessEnv}
 */
export function ormEnvironment() {
	chmodSync(ENGINE, 0o755); // an archive may not have kept the mode
	return {
		...process.env,
		PRISMA_SCHEMA_ENGINE_BINARY: ENGINE,
		PRISMA_HIDE_UPDATE_MESSAGE: "1",
		CHECKPOINT_DISABLE: "1",
	};
}

if (argv[1] === fileURLToPath(import.meta.url))
	console.log(
		generate()
			? "generated the database client"
			: "the database client is up to date",
	);
