// Writes the next migration of both databases: npm run db:author -- what_changes. For SQLite from the
// difference between prisma/schema.prisma and the migrations so far, on a scratch database, because
// the ORM's development command may empty the one it is given. For PostgreSQL from the difference to
// the schema as of its last migration, which is kept beside them: no server is needed.
import { spawnSync } from "node:child_process";
import {
	existsSync,
	mkdirSync,
	mkdtempSync,
	readdirSync,
	rmSync,
	writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ormEnvironment, postgresqlSchema } from "./generate.mjs";

const name = process.argv[2];
if (!name || !/^[a-z0-9_]+$/.test(name)) {
	console.error("usage: npm run db:author -- what_changes");
	process.exit(2);
}
const ORM = "node_modules/prisma/build/index.js";
const SQLITE = "prisma/migrations";
const POSTGRESQL = "prisma/migrations-postgresql";
const AS_OF_LAST = join(POSTGRESQL, "as-of-last.prisma");

/**
 * @param {string} scratch
 * @param {string[]} args
 * @param {"inherit" | "pipe"} stdout
 */
function orm(scratch, args, stdout = "inherit") {
	const run = spawnSync(process.execPath, [ORM, "migrate", ...args], {
		encoding: "utf8",
		stdio: ["ignore", stdout, "inherit"],
		env: {
			...ormEnvironment(),
			DATABASE_URL: `file:${join(scratch, "scratch.db")}`,
		},
	});
	if (run.status !== 0) process.exit(run.status ?? 1);
	return run.stdout;
}

const scratch = mkdtempSync(join(tmpdir(), "author-"));
process.on("exit", () => rmSync(scratch, { recursive: true }));
orm(scratch, ["dev", "--create-only", "--name", name]);
const folder = readdirSync(SQLITE)
	.filter((entry) => entry.endsWith(`_${name}`))
	.sort()
	.at(-1);
if (folder === undefined) {
	console.error(`no migration called ${name} was written to ${SQLITE}`);
	process.exit(1);
}
const next = join(scratch, "next.prisma");
writeFileSync(next, postgresqlSchema());
const from = existsSync(AS_OF_LAST)
	? ["--from-schema", AS_OF_LAST]
	: ["--from-empty"];
const sql = orm(
	scratch,
	["diff", ...from, "--to-schema", next, "--script"],
	"pipe",
);
mkdirSync(join(POSTGRESQL, folder), { recursive: true });
writeFileSync(join(POSTGRESQL, folder, "migration.sql"), sql);
writeFileSync(AS_OF_LAST, postgresqlSchema());
console.log(`and ${join(POSTGRESQL, folder, "migration.sql")}: read both`);
