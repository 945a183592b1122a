import { z } from "zod";
import { answersSchema } from "@/lib/forms/answers";
import { database, inTransaction } from "@/lib/records/database";
import { DEMO_REMOVED_KEY } from "@/lib/records/demo/data";
import { isDemoRemoved } from "@/lib/records/demo/loaders";
import { takeNumber } from "@/lib/records/numbers";
import { playerFieldsSchema } from "@/lib/records/players/data";
import { searchable } from "@/lib/records/search";
import { seedDemoRack } from "@/lib/records/trials/rack";
import demo from "./demo.json";
import { readDemoJobs, seedDemoJob } from "./jobs";

const demoSchema = z.strictObject({
	about: z.string(),
	club: z.string(),
	recordedAt: z.iso.datetime(),
	players: z.array(
		playerFieldsSchema.omit({ remeasureOn: true }).extend({
			id: z.string(),
			fitting: z.strictObject({ id: z.string(), answers: answersSchema }),
		}),
	),
});

const HOUR_MS = 3_600_000;

/** The invented club: one fitting for each player, an hour apart, in the order of the file. */
export function readDemo() {
	const { club, recordedAt, players } = demoSchema.parse(demo);
	return players.map(({ fitting, ...player }, i) => ({
		player: { ...player, notes: `${player.notes} ${club}.` },
		fitting,
		at: new Date(Date.parse(recordedAt) + i * HOUR_MS),
	}));
}

/**
 * Puts the invented demo players, their fittings, two jobs of theirs and a rack of trial cues into a database that has no
 * players, all of them or none. Gives how many players were added: none where someone is recorded already, or where the
 * invented data was taken away before.
 */
export async function seedDemo(): Promise<number> {
	const entries = readDemo();
	// Looked at first, because working the invented jobs out takes its time.
	if ((await database().player.count()) > 0 || (await isDemoRemoved()))
		return 0;
	const jobs = readDemoJobs(
		entries.map(({ player, fitting, at }) => ({ ...fitting, player, at })),
	);
	return inTransaction(async (transaction) => {
		if ((await transaction.player.count()) > 0) return 0;
		const removed = await transaction.appliedRequest.findUnique({
			where: { key: DEMO_REMOVED_KEY },
		});
		if (removed !== null) return 0;
		for (const { player, fitting, at } of entries) {
			const stamps = { isDemo: true, createdAt: at, updatedAt: at };
			await transaction.player.create({
				data: { ...player, ...stamps, searchName: searchable(player.name) },
			});
			await transaction.fitting.create({
				data: {
					...fitting,
					...stamps,
					number: await takeNumber(transaction, "fitting"),
					playerId: player.id,
				},
			});
		}
		for (const job of jobs) await seedDemoJob(transaction, job);
		await seedDemoRack(transaction);
		return entries.length;
	});
}
