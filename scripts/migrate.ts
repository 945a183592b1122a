import { migrate } from "@/lib/records/migrate";

const applied = await migrate(process.env.DATABASE_URL);
console.log(
	applied.length > 0
		? `migrated: ${applied.join(", ")}`
		: "the database is up to date",
);
