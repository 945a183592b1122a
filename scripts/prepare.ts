import { closeDatabase } from "@/lib/records/database";
import { migrate } from "@/lib/records/migrate";
import { MigrationError } from "@/lib/records/migration-files";
import { seedDemo } from "@/seed/seed";

try {
	const applied = await migrate(process.env.DATABASE_URL);
	if (applied.length > 0) console.log(`migrated: ${applied.join(", ")}`);
	const players = await seedDemo();
	if (players > 0) console.log(`added ${players} invented demo players`);
} catch (error) {
	if (!(error instanceof MigrationError)) throw error;
	console.error(`The database was not changed: ${error.message}.`);
	process.exitCode = 1;
} finally {
	await closeDatabase();
}
