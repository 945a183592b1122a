import { defineConfig } from "vitest/config";
import { alias } from "./vitest.config";

/** Everything that reaches the database, on a PostgreSQL server started for the run. */
export default defineConfig({
	resolve: { alias },
	test: {
		name: "postgresql",
		globalSetup: "tests/support/postgresql.ts",
		include: [
			"tests/records/**/*.test.ts",
			"tests/documents/spec-downloads.test.ts",
		],
		// SQLite's own: its pragmas, its file, its migrations, the start on an empty folder.
		exclude: [
			"tests/records/connection.test.ts",
			"tests/records/migrate.test.ts",
			"tests/records/schema.test.ts",
			"tests/records/start.test.ts",
		],
		testTimeout: 120_000,
	},
});
