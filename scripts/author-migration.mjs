// Writes the next migration from the difference between prisma/schema.prisma and the migrations so
// far: npm run db:author -- what_changes. On a scratch database: the ORM's development command may
// empty the one it is given.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ormEnvironment } from "./generate.mjs";

const name = process.argv[2];
if (!name || !/^[a-z0-9_]+$/.test(name)) {
	console.error("usage: npm run db:author -- what_changes");
	process.exit(2);
}
const scratch = mkdtempSync(join(tmpdir(), "author-"));
try {
	const { status } = spawnSync(
		process.execPath,
		[
			"node_modules/prisma/build/index.js",
			...["migrate", "dev", "--create-only", "--name", name],
		],
		{
			stdio: "inherit",
			env: {
				...ormEnvironment(),
				DATABASE_URL: `file:${join(scratch, "scratch.db")}`,
			},
		},
	);
	process.exitCode = status ?? 1;
} finally {
	rmSync(scratch, { recursive: true });
}
