import { spawn } from "node:child_process";
import { expect, test } from "vitest";
import { database } from "@/lib/records/database";
import { getFitting } from "@/lib/records/fittings/loaders";
import { startFitting } from "@/lib/records/fittings/mutations";
import { createPlayer } from "@/lib/records/players/mutations";
import { listRevisions } from "@/lib/records/specs/loaders";
import { temporaryDatabase } from "../support/database";

const own = temporaryDatabase();

const PROCESSES = 4;
const WRITES = 5;

test("processes that write at once give no number twice and lose no update", async () => {
	const player = await createPlayer({
		name: "Shared",
		requestKey: crypto.randomUUID(),
	});
	const shared = await startFitting({
		playerId: player.id,
		requestKey: crypto.randomUUID(),
	});
	const ended = await Promise.all(
		Array.from({ length: PROCESSES }, (_, i) => {
			const child = spawn(
				process.execPath,
				[
					"--conditions=react-server",
					"--import=tsx",
					"tests/records/support/writer.ts",
					...[player.id, shared.number, `process${i}`, WRITES].map(String),
				],
				{
					env: { ...process.env, DATABASE_URL: own.url },
					stdio: ["ignore", "inherit", "pipe"],
				},
			);
			let errors = "";
			child.stderr.on("data", (chunk) => {
				errors += chunk;
			});
			return new Promise<{ code: number | null; errors: string }>((done) =>
				child.once("exit", (code) => done({ code, errors })),
			);
		}),
	);
	expect(ended).toEqual(
		Array.from({ length: PROCESSES }, () => ({ code: 0, errors: "" })),
	);

	const writes = PROCESSES * WRITES;
	const numbers = await database().fitting.findMany({
		select: { number: true },
		orderBy: { number: "asc" },
	});
	expect(numbers.map(({ number }) => number)).toEqual(
		Array.from({ length: writes + 1 }, (_, i) => i + 1),
	);
	const fitting = await getFitting(shared.number);
	expect(Object.keys(fitting?.answers ?? {})).toHaveLength(writes);
	expect(fitting?.revision).toBe(writes + 1);
	const revisions = await listRevisions(fitting?.spec?.number ?? 0);
	expect(revisions.map(({ revision }) => revision)).toEqual(
		Array.from({ length: writes }, (_, i) => writes - i),
	);
}, 60_000);
