import { beforeAll, describe, expect, test } from "vitest";
import { checksOf, predictedResults } from "@/lib/records/checks/loaders";
import {
	decideCheck,
	takeEvidence,
	writeCheck,
} from "@/lib/records/checks/mutations";
import { database } from "@/lib/records/database";
import { getFitting } from "@/lib/records/fittings/loaders";
import { startFitting } from "@/lib/records/fittings/mutations";
import type { JobRecord } from "@/lib/records/jobs/data";
import { getJob } from "@/lib/records/jobs/loaders";
import { moveJob, openJob } from "@/lib/records/jobs/mutations";
import { agree, newRevision, writeQuote } from "@/lib/records/jobs/quotes";
import { presentCueOf } from "@/lib/records/player-cues/loaders";
import { createPlayer } from "@/lib/records/players/mutations";
import { settingsOn, today } from "@/lib/records/settings/loaders";
import { getSpecRevision } from "@/lib/records/specs/loaders";
import { saveSpec } from "@/lib/records/specs/mutations";
import {
	evidenceByWood,
	evidenceOfJob,
	latestEvidence,
} from "@/lib/records/wood-evidence/loaders";
import {
	restoreEvidence,
	withdrawEvidence,
} from "@/lib/records/wood-evidence/mutations";
import type { CheckFigures } from "@/lib/workshop/check";
import { offerOf } from "@/lib/workshop/settings";
import { addDays } from "@/lib/workshop/working-days";
import { direct, temporaryDatabase } from "../support/database";
import { checkContent } from "../workshop/support/checks";
import { askedContent, quoteUntil } from "../workshop/support/jobs";

const own = temporaryDatabase();
const key = () => crypto.randomUUID();
const by = "Bench One";
const content = askedContent();
const { build } = content;
const massG = build.targets.mass.value;
const balanceMm = Math.round(build.targets.balance.value) + 5;
const natural = {
	massG: build.naturalMassG.value,
	balanceFromButtMm: build.naturalBalanceFromButtMm.value,
};

let specRevisionId: string;
let playerId: string;
let firstFittingId: string;
beforeAll(async () => {
	const player = await createPlayer({ name: "Check Test", requestKey: key() });
	playerId = player.id;
	const fitting = await startFitting({ playerId, requestKey: key() });
	firstFittingId = fitting.id;
	const saved = await saveSpec({
		fittingId: fitting.id,
		content: { lengthMm: 1473 },
		reason: "",
		requestKey: key(),
	});
	const revision = await getSpecRevision(saved.number);
	if (revision === null) throw new Error("the spec was just saved");
	specRevisionId = revision.id;
});

const at = ({ number, revision }: JobRecord) => ({ number, revision });
const done = (saved: Awaited<ReturnType<typeof moveJob>>): JobRecord => {
	if (!saved.ok) throw new Error(`refused: ${JSON.stringify(saved)}`);
	return saved.job;
};
const yes = async (job: JobRecord) => {
	const saved = await agree({
		number: job.number,
		jobRevision: job.latest.revision,
		contentSha256: job.latest.contentSha256,
		agreedName: "A. Customer",
		via: "page",
		requestKey: key(),
	});
	if (!saved.ok) throw new Error(`refused: ${JSON.stringify(saved)}`);
	return saved.job;
};
const move = (job: JobRecord, to: "on-the-bench" | "checked" | "handed-over") =>
	moveJob({ ...at(job), to, by, requestKey: key() });
const now = async ({ number }: { number: number }): Promise<JobRecord> => {
	const job = await getJob(number);
	if (job === null) throw new Error(`job ${number} is gone`);
	return job;
};
const onTheBench = async () => {
	const job = await openJob({
		requestKey: key(),
		from: { specRevisionId },
		customerName: "Check Test",
		content,
		by,
	});
	const quoted = done(
		await writeQuote({
			...at(job),
			quote: quoteUntil(addDays(today(), 14)),
			by,
			requestKey: key(),
		}),
	);
	return done(await move(await yes(quoted), "on-the-bench"));
};
const latestOf = async (job: JobRecord) =>
	(await checksOf(job.id))[0]?.id ?? null;
const write = async (
	job: JobRecord,
	stage: Parameters<typeof writeCheck>[0]["stage"],
	figures: CheckFigures,
	more: Partial<Parameters<typeof writeCheck>[0]> = {},
) =>
	writeCheck({
		number: job.number,
		after: await latestOf(job),
		stage,
		content: checkContent(figures),
		by,
		requestKey: key(),
		...more,
	});
const written = async (...p: Parameters<typeof write>): Promise<string> => {
	const saved = await write(...p);
	if (!saved.ok) throw new Error(`refused: ${JSON.stringify(saved)}`);
	return saved.checkId;
};
const decide = async (
	job: JobRecord,
	checkId: string,
	decision: Parameters<typeof decideCheck>[0]["decision"],
	note = "Likes it heavy",
) =>
	decideCheck({
		...at(await now(job)),
		checkId,
		decision,
		by: "Bench Two",
		note,
		requestKey: key(),
	});
const codes = (saved: object): string[] =>
	"refusals" in saved
		? (saved.refusals as { code: string }[]).map(({ code }) => code)
		: [];

describe("a check", () => {
	test("is kept as it was read and typed, with a line of history", async () => {
		const job = await onTheBench();
		const id = await written(
			job,
			"finished",
			{},
			{
				content: checkContent(
					{ massG: 541.3, lengthMm: 1473 },
					{ typed: { massG: "19.09 oz" }, note: "Scale 2" },
				),
			},
		);
		const [check] = await checksOf(job.id);
		expect(check).toMatchObject({
			id,
			stage: "finished",
			by,
			decision: null,
			content: {
				figures: { massG: 541.3, lengthMm: 1473 },
				typed: { massG: "19.09 oz" },
				note: "Scale 2",
			},
		});
		const after = await now(job);
		expect(after.events[0]).toMatchObject({
			kind: "checked",
			by,
			note: "Scale 2",
			facts: { checkId: id, stage: "finished" },
		});
		expect(after.revision).toBe(job.revision + 1);
	});

	test("the same key writes one check, also at the same moment", async () => {
		const job = await onTheBench();
		const requestKey = key();
		const both = await Promise.all(
			[1, 2].map(() =>
				write(job, "finished", { massG }, { requestKey, after: null }),
			),
		);
		expect(both.every(({ ok }) => ok)).toBe(true);
		expect(await checksOf(job.id)).toHaveLength(1);
		expect(
			(await now(job)).events.filter(({ kind }) => kind === "checked"),
		).toHaveLength(1);
	});

	test("of two people at once the second sees the first's before writing", async () => {
		const job = await onTheBench();
		const both = await Promise.all([
			write(job, "finished", { massG }, { after: null }),
			write(
				job,
				"finished",
				{ massG: massG + 1 },
				{ after: null, by: "Bench Two" },
			),
		]);
		expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
		const [first] = await checksOf(job.id);
		expect(both.find(({ ok }) => !ok)).toMatchObject({
			conflict: { id: first?.id, by: first?.by },
		});
		await written(job, "finished", { massG: massG + 1 });
		expect(await checksOf(job.id)).toHaveLength(2);
	});

	test("is refused off the bench, empty, or out of every range", async () => {
		const job = await openJob({
			requestKey: key(),
			from: { specRevisionId },
			customerName: "Check Test",
			content,
			by,
		});
		expect(codes(await write(job, "finished", { massG }))).toEqual([
			"not-on-the-bench",
		]);
		const bench = await onTheBench();
		expect(codes(await write(bench, "finished", {}))).toEqual(["nothing-read"]);
		expect(codes(await write(bench, "finished", { massG: 9 }))).toEqual([
			"out-of-range",
		]);
		expect(await checksOf(bench.id)).toEqual([]);
	});

	test("never changes and is never deleted, past the ORM too", async () => {
		const job = await onTheBench();
		const id = await written(job, "finished", { massG });
		await expect(
			direct(own.url, `UPDATE "JobCheck" SET "by" = 'x' WHERE "id" = '${id}'`),
		).rejects.toThrow("never changes");
		await expect(
			direct(own.url, `DELETE FROM "JobCheck" WHERE "id" = '${id}'`),
		).rejects.toThrow("kept");
	});
});

describe("out of tolerance", () => {
	test("the job stays until somebody accepts it, with a reason and by name", async () => {
		const job = await onTheBench();
		const checkId = await written(job, "finished", { massG: massG + 12 });
		expect(codes(await move(await now(job), "checked"))).toEqual([
			"check-undecided",
		]);
		expect(codes(await decide(job, checkId, "accept", ""))).toEqual([
			"note-missing",
		]);
		const accepted = done(await decide(job, checkId, "accept"));
		expect(accepted.events[0]).toMatchObject({
			kind: "decided",
			by: "Bench Two",
			note: "Likes it heavy",
			facts: { checkId, decision: "accept", stage: "finished" },
		});
		expect((await checksOf(job.id))[0]?.decided).toMatchObject({
			decision: "accept",
			by: "Bench Two",
		});
		expect(done(await move(accepted, "checked")).state).toBe("checked");
	});

	test("a check after it was marked as checked holds back the handing over", async () => {
		const job = await onTheBench();
		const checked = done(await move(job, "checked"));
		await written(checked, "finished", { lengthMm: 1480 });
		expect(codes(await move(await now(job), "handed-over"))).toEqual([
			"check-undecided",
		]);
		await written(checked, "finished", { lengthMm: 1473 });
		expect(done(await move(await now(job), "handed-over")).state).toBe(
			"handed-over",
		);
	});

	test("reworked, it has to be measured again", async () => {
		const job = await onTheBench();
		const checkId = await written(job, "finished", { massG: massG + 12 });
		done(await decide(job, checkId, "rework", ""));
		expect(codes(await move(await now(job), "checked"))).toEqual([
			"rework-not-measured",
		]);
		await written(job, "finished", { massG: massG + 3 });
		expect(codes(await decide(job, checkId, "accept"))).toEqual([
			"nothing-to-decide",
		]);
		expect(done(await move(await now(job), "checked")).state).toBe("checked");
	});

	test("told to the customer, the next revision says what it came to and needs a yes", async () => {
		const job = await onTheBench();
		const checkId = await written(job, "finished", { massG: massG + 12 });
		const told = done(
			await decide(job, checkId, "tell-customer", "Dense ebony"),
		);
		expect(told).toMatchObject({
			state: "on-the-bench",
			isAgreed: false,
			latest: { revision: job.latest.revision + 1, reason: "Dense ebony" },
		});
		expect(told.latest.content.build.targets.mass).toEqual({
			value: massG + 12,
			basis: "measured",
		});
		expect(told.latest.content.quote?.priceMinor).toBe(48_000);
		expect(codes(await move(told, "checked"))).toEqual([
			"not-agreed",
			"customer-not-told",
		]);
		expect(done(await move(await yes(told), "checked")).state).toBe("checked");
	});

	test("two decisions at once: one stands, the other sees it", async () => {
		const job = await onTheBench();
		const checkId = await written(job, "finished", { massG: massG + 12 });
		const both = await Promise.all([
			decide(job, checkId, "accept"),
			decide(job, checkId, "rework"),
		]);
		expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
		expect(
			(await now(job)).events.filter(({ kind }) => kind === "decided"),
		).toHaveLength(1);
	});

	test("a change the customer has yet to agree to is not what the bench is held to", async () => {
		const job = await onTheBench();
		const heavier = askedContent({}, massG + 12);
		done(
			await newRevision({
				...at(job),
				content: { ...heavier, quote: job.latest.content.quote },
				by,
				reason: "heavier",
				requestKey: key(),
			}),
		);
		const checkId = await written(job, "finished", { massG: massG + 12 });
		done(await decide(job, checkId, "rework"));
	});
});

describe("handing over", () => {
	test("makes the cue as built the player's present one, and the next fitting begins with it", async () => {
		const job = await onTheBench();
		await written(job, "before-weighting", natural);
		await written(job, "finished", { massG: massG + 30 });
		await written(job, "finished", {
			massG: massG + 2.34,
			lengthMm: 1474,
			balanceFromButtMm: balanceMm,
		});
		const over = done(
			await move(done(await move(await now(job), "checked")), "handed-over"),
		);
		const cue = await presentCueOf(playerId);
		expect(cue).toMatchObject({
			jobNumber: over.number,
			since: today(),
			content: {
				origin: "as-built",
				massG: massG + 2.34,
				lengthMm: 1474,
				balanceFromButtMm: balanceMm,
				tipDiameterMm: 9.5,
				measured: ["lengthMm", "massG", "balanceFromButtMm"],
			},
		});
		const fitting = await startFitting({ playerId, requestKey: key() });
		const filled = {
			presentMass: `${massG + 2.3} g`,
			presentLength: "1474 mm",
			presentTip: "9.5 mm",
		};
		expect((await getFitting(fitting.number))?.answers).toMatchObject(filled);
		const refit = await startFitting({
			playerId,
			requestKey: key(),
			basedOnFittingId: firstFittingId,
		});
		expect((await getFitting(refit.number))?.answers).toMatchObject(filled);
		const later = await startFitting({
			playerId,
			requestKey: key(),
			basedOnFittingId: fitting.id,
		});
		expect(later.answers).toEqual(fitting.answers);
	});
});

describe("what a weighed cue says of its woods", () => {
	const standing = async (job: JobRecord) =>
		(await evidenceOfJob(job.id)).filter(
			({ withdrawnAt }) => withdrawnAt === null,
		);
	const densities = async () =>
		offerOf(await settingsOn(today())).densities ?? {};

	test("counts at once, moves the band predictions are made with, and withdrawing returns it", async () => {
		const before = await densities();
		const job = await onTheBench();
		await written(job, "before-weighting", {
			massG: natural.massG + 18,
			balanceFromButtMm: natural.balanceFromButtMm,
		});
		const evidence = await standing(job);
		expect(evidence.map(({ wood }) => wood).sort()).toEqual([
			"gaboon-ebony",
			"white-ash",
		]);
		const taught = await densities();
		expect(taught["gaboon-ebony"]).not.toEqual(before["gaboon-ebony"]);
		for (const { id } of evidence)
			expect(
				await withdrawEvidence({ id, by: "Bench Two", requestKey: key() }),
			).toEqual({ ok: true });
		expect(await densities()).toEqual(before);
		const rows = await evidenceOfJob(job.id);
		expect(rows.every(({ withdrawnBy }) => withdrawnBy === "Bench Two")).toBe(
			true,
		);
		for (const { id } of evidence)
			expect(await restoreEvidence({ id, by, requestKey: key() })).toEqual({
				ok: true,
			});
		expect(await densities()).toEqual(taught);
		expect(
			(await now(job)).events.filter(({ kind }) =>
				kind.startsWith("evidence-"),
			),
		).toHaveLength(5);
	});

	test("of one cue the last check speaks; the one before can only come back in its place", async () => {
		const job = await onTheBench();
		await written(job, "before-weighting", natural);
		const [first] = await standing(job);
		await written(job, "before-weighting", {
			...natural,
			massG: natural.massG + 4,
		});
		const evidence = await standing(job);
		expect(evidence).toHaveLength(2);
		expect(evidence.map(({ id }) => id)).not.toContain(first?.id);
		expect(
			codes(
				await restoreEvidence({
					id: first?.id ?? "",
					by,
					requestKey: key(),
				}),
			),
		).toEqual(["other-evidence-stands"]);
	});

	test("a wild cue counts only when somebody takes it by name", async () => {
		const before = await evidenceByWood();
		const job = await onTheBench();
		const checkId = await written(job, "before-weighting", {
			...natural,
			massG: natural.massG + 150,
		});
		expect(await standing(job)).toEqual([]);
		expect(await evidenceByWood()).toEqual(before);
		const requestKey = key();
		const take = () =>
			takeEvidence({
				number: job.number,
				checkId,
				by: "Bench Two",
				requestKey,
			});
		expect(await take()).toEqual({ ok: true });
		expect(await take()).toEqual({ ok: true });
		const taken = await standing(job);
		expect(taken.length).toBeGreaterThan(0);
		expect(taken.every((one) => one.by === "Bench Two")).toBe(true);
		for (const { id } of taken)
			await withdrawEvidence({ id, by, requestKey: key() });
		expect(await evidenceByWood()).toEqual(before);
	});

	test("a finished cue without its metal told says nothing", async () => {
		const job = await onTheBench();
		const checkId = await written(job, "finished", {
			massG,
			balanceFromButtMm: build.targets.balance.value,
		});
		expect(await standing(job)).toEqual([]);
		expect(
			codes(
				await takeEvidence({
					number: job.number,
					checkId,
					by,
					requestKey: key(),
				}),
			),
		).toEqual(["metal-not-told"]);
		await written(job, "finished", {
			massG,
			balanceFromButtMm: build.targets.balance.value,
			metalMassG: build.addedWeight.metalMassG,
		});
		expect(await standing(job)).toHaveLength(2);
	});
});

test("every row of the checks' own tables has a key of its own", async () => {
	const events = await database().jobEvent.findMany({
		select: { requestKey: true },
	});
	expect(new Set(events.map(({ requestKey }) => requestKey)).size).toBe(
		events.length,
	);
});

describe("prediction and result over all builds", () => {
	test("of each job the latest telling check counts, newest job first", async () => {
		const first = await onTheBench();
		await written(first, "before-weighting", natural);
		const second = await onTheBench();
		await written(second, "before-weighting", {
			...natural,
			massG: natural.massG + 9,
		});
		await written(first, "before-weighting", {
			...natural,
			massG: natural.massG - 4,
		});
		await written(second, "blank-glued", { massG: 900 });
		const mine = (await predictedResults()).filter(({ jobNumber }) =>
			[first.number, second.number].includes(jobNumber),
		);
		expect(mine.map(({ jobNumber }) => jobNumber)).toEqual([
			first.number,
			second.number,
		]);
		const [of1, of2] = mine.map(({ prediction }) => prediction.mass);
		expect((of1?.measured ?? 0) - (of1?.expected ?? 0)).toBeCloseTo(-4, 6);
		expect((of2?.measured ?? 0) - (of2?.expected ?? 0)).toBeCloseTo(9, 6);
	});

	test("results of every wood, left out or not, newest first", async () => {
		const all = await latestEvidence(500);
		expect(all.length).toBeGreaterThan(1);
		expect(all.map(({ createdAt }) => createdAt.getTime())).toEqual(
			all.map(({ createdAt }) => createdAt.getTime()).sort((a, b) => b - a),
		);
		expect(await latestEvidence(1)).toEqual(all.slice(0, 1));
	});
});
