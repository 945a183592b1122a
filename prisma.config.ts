import { defineConfig } from "prisma/config";

// Read by the ORM's command line only. The running app takes its database from lib/records/database.ts.
export default defineConfig({
	schema: "prisma/schema.prisma",
	migrations: { path: "prisma/migrations" },
	datasource: { url: process.env.DATABASE_URL ?? "" },
});
