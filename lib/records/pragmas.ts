import "server-only";

/** How long a writer waits for another process's write before it gives up. */
export const BUSY_TIMEOUT_MS = 10_000;

/**
 * What every connection sets before its first statement.
 * WAL: readers do not wait for a writer. synchronous FULL: an acknowledged write survives a power
 * cut, which WAL with NORMAL does not promise. SQLite leaves foreign keys off unless told.
 */
export const connectionPragmas: readonly string[] = [
	`PRAGMA busy_timeout = ${BUSY_TIMEOUT_MS}`,
	"PRAGMA journal_mode = WAL",
	"PRAGMA synchronous = FULL",
	"PRAGMA foreign_keys = ON",
];
