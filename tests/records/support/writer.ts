import { closeDatabase } from "@/lib/records/database";
import { getFitting } from "@/lib/records/fittings/loaders";
import { saveAnswers, startFitting } from "@/lib/records/fittings/mutations";
import { saveSpec } from "@/lib/records/specs/mutations";

// One of several processes that write at once: reads, then writes what depends on what it read.
const [playerId = "", fittingNumber, me = "", writes] = process.argv.slice(2);

for (let i = 0; i < Number(writes); i++) {
	await startFitting({ playerId, requestKey: crypto.randomUUID() });
	for (let saved = false; !saved; ) {
		const fitting = await getFitting(Number(fittingNumber));
		if (!fitting) throw new Error(`there is no fitting ${fittingNumber}`);
		const answers = { ...fitting.answers, [`${me}-${i}`]: "x" };
		const { ok } = await saveAnswers({
			fittingId: fitting.id,
			answers,
			revision: fitting.revision,
		});
		saved = ok;
		if (saved) {
			await saveSpec({
				fittingId: fitting.id,
				content: answers,
				reason: me,
				requestKey: crypto.randomUUID(),
			});
		}
	}
}
await closeDatabase();
