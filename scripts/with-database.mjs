// Runs a TypeScript file on the app's own database: node scripts/with-database.mjs scripts/migrate.ts
import { spawnSync } from "node:child_process";
import { readEnvironment } from "./environment.mjs";
import { generate } from "./generate.mjs";

generate();
const { databaseUrl } = readEnvironment(process.env);
const { status } = spawnSync(
	process.execPath,
	["--conditions=react-server", "--import=tsx", ...process.argv.slice(2)],
	{ stdio: "inherit", env: { ...process.env, DATABASE_URL: databaseUrl } },
);
process.exitCode = status ?? 1;
