import "server-only";
import { isPostgresql } from "@/lib/records/location";
import { migratePostgresql } from "@/lib/records/migrate-postgresql";
import { migrateSqlite } from "@/lib/records/migrate-sqlite";

/** Brings the database behind the address to the schema of this version; returns the migrations applied. */
export const migrate = async (
	databaseUrl: string | undefined,
): Promise<string[]> =>
	isPostgresql(databaseUrl)
		? migratePostgresql(databaseUrl)
		: migrateSqlite(databaseUrl);
