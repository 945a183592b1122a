import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { freePort } from "./server";

declare module "vitest" {
	interface ProvidedContext {
		/** A throw-away PostgreSQL server as its administrator; null where the run is on SQLite. */
		postgresqlUrl: string | null;
	}
}

/** Where Debian keeps its versions; elsewhere the programs are on the path. */
const DEBIAN = "/usr/lib/postgresql";

function programs(): string {
	const versions = existsSync(DEBIAN)
		? readdirSync(DEBIAN).sort((a, b) => Number(a) - Number(b))
		: [];
	const newest = versions.at(-1);
	return newest === undefined ? "" : join(DEBIAN, newest, "bin/");
}

/** The server refuses to run as root: there it is run as its own user. */
function run(program: string, args: readonly string[]): void {
	const isRoot = process.getuid?.() === 0;
	const command = [`${programs()}${program}`, ...args];
	execFileSync(
		isRoot ? "runuser" : (command[0] as string),
		isRoot ? ["-u", "postgres", "--", ...command] : command.slice(1),
		{ stdio: ["ignore", "ignore", "inherit"], cwd: tmpdir() },
	);
}

/** A cluster in a folder of its own, on loopback; ended and removed after the run. */
export default async function setup(project: TestProject) {
	const folder = mkdtempSync(join(tmpdir(), "postgresql-test-"));
	if (process.getuid?.() === 0) execFileSync("chown", ["postgres", folder]);
	const data = join(folder, "data");
	const port = await freePort();
	run("initdb", [
		...["-D", data, "-U", "tester", "-A", "trust", "-E", "UTF8"],
		...["--locale=C.UTF-8", "--no-sync"],
	]);
	run("pg_ctl", [
		...["-D", data, "-w", "-t", "60", "-l", join(folder, "log"), "-o"],
		`-p ${port} -c listen_addresses=127.0.0.1 -c unix_socket_directories=${folder} -c fsync=off -c max_connections=200`,
		"start",
	]);
	project.provide("postgresqlUrl", `postgresql://tester@127.0.0.1:${port}`);
	return () => {
		run("pg_ctl", ["-D", data, "-m", "immediate", "-w", "stop"]);
		rmSync(folder, { recursive: true });
	};
}
