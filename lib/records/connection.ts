import "server-only";
import { PrismaPg } from "@prisma/adapter-pg";
import { PrismaClient as PostgresqlClient } from "@/generated/postgresql/client";
import { PrismaClient } from "@/generated/prisma/client";
import { isPostgresql } from "@/lib/records/location";
import { BUSY_TIMEOUT_MS } from "@/lib/records/pragmas";
import { sqliteAdapter } from "@/lib/records/sqlite";

/** Connections one process holds to a PostgreSQL server. */
const POOL_SIZE = 10;

/**
 * A client of its own, for tests and scripts; the app shares one, `database()`. Ended by
 * `$disconnect()`. Both clients are generated from the one schema, so their rows have the same types.
 */
export function connect(databaseUrl: string | undefined): PrismaClient {
	// Writers wait for one another in line; the line may be longer than the ORM's two seconds.
	const transactionOptions = {
		maxWait: BUSY_TIMEOUT_MS,
		timeout: BUSY_TIMEOUT_MS,
	};
	if (isPostgresql(databaseUrl))
		return new PostgresqlClient({
			adapter: new PrismaPg({
				connectionString: databaseUrl,
				max: POOL_SIZE,
				connectionTimeoutMillis: BUSY_TIMEOUT_MS,
			}),
			transactionOptions,
		}) as unknown as PrismaClient;
	return new PrismaClient({
		adapter: sqliteAdapter(databaseUrl),
		transactionOptions,
	});
}
