import "server-only";
import { fileURLToPath } from "node:url";

/** Whether the address names a PostgreSQL database, as `postgresql://…` or `postgres://…`. */
export const isPostgresql = (
	databaseUrl: string | undefined,
): databaseUrl is string => /^postgres(ql)?:\/\//.test(databaseUrl ?? "");

/**
 * The file behind a `file:` database address, absolute or relative to the working directory.
 * Throws, naming the variable, where the address is of another kind.
 */
export function databaseFile(databaseUrl: string | undefined): string {
	if (!databaseUrl) {
		throw new Error(
			"DATABASE_URL is not set: start with `npm start`, or set it, e.g. file:./data/cue-fitting.db",
		);
	}
	if (!databaseUrl.startsWith("file:")) {
		throw new Error(
			`DATABASE_URL must name a SQLite file as file:<path> or a PostgreSQL database as postgresql://…, got ${databaseUrl.split(":")[0]}:…`,
		);
	}
	if (databaseUrl.startsWith("file://")) return fileURLToPath(databaseUrl);
	const path = databaseUrl.slice("file:".length);
	if (path === "" || path.includes("?") || path.includes(":memory:")) {
		throw new Error(
			`DATABASE_URL must name a SQLite file and nothing else, got ${databaseUrl}`,
		);
	}
	return path;
}
