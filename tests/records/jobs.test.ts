import { beforeAll, describe, expect, test, vi } from "vitest";
import { database } from "@/lib/records/database";
import { startFitting } from "@/lib/records/fittings/mutations";
import type { JobRecord } from "@/lib/records/jobs/data";
import {
	countJobs,
	getJob,
	listJobs,
	neighbourJob,
} from "@/lib/records/jobs/loaders";
import {
	addJobNote,
	changeCustomer,
	moveJob,
	openJob,
	setDue,
} from "@/lib/records/jobs/mutations";
import { agree, newRevision, writeQuote } from "@/lib/records/jobs/quotes";
import { createPlayer } from "@/lib/records/players/mutations";
import { today } from "@/lib/records/settings/loaders";
import { getSpecRevision } from "@/lib/records/specs/loaders";
import { saveSpec } from "@/lib/records/specs/mutations";
import type { JobContent } from "@/lib/workshop/job-content";
import { addDays } from "@/lib/workshop/working-days";
import { direct, temporaryDatabase } from "../support/database";
import { askedContent, quoteUntil } from "../workshop/support/jobs";

const own = temporaryDatabase();
const key = () => crypto.randomUUID();
const by = "Bench One";
const soon = addDays(today(), 14);

let specRevisionId: string;
let playerId: string;
let content: JobContent;
beforeAll(async () => {
	content = askedContent();
	const player = await createPlayer({ name: "Job Test", requestKey: key() });
	playerId = player.id;
	const fitting = await startFitting({ playerId, requestKey: key() });
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

const open = (more: Partial<Parameters<typeof openJob>[0]> = {}) =>
	openJob({
		requestKey: key(),
		from: { specRevisionId },
		customerName: "Job Test",
		content,
		by,
		...more,
	});
const at = ({ number, revision }: JobRecord) => ({ number, revision });
const done = (saved: Awaited<ReturnType<typeof moveJob>>): JobRecord => {
	if (!saved.ok) throw new Error(`refused: ${JSON.stringify(saved)}`);
	return saved.job;
};
const quoted = async (job?: JobRecord, validUntil = soon) => {
	const from = job ?? (await open());
	return done(
		await writeQuote({
			...at(from),
			quote: quoteUntil(validUntil),
			by,
			requestKey: key(),
		}),
	);
};
const yes = (job: JobRecord, more: Partial<Parameters<typeof agree>[0]> = {}) =>
	agree({
		number: job.number,
		jobRevision: job.latest.revision,
		contentSha256: job.latest.contentSha256,
		agreedName: "A. Customer",
		via: "page",
		requestKey: key(),
		...more,
	});
const agreed = async (job?: JobRecord) => {
	const saved = await yes(job ?? (await quoted()));
	if (!saved.ok) throw new Error(`refused: ${JSON.stringify(saved)}`);
	return saved.job;
};
const move = (
	job: JobRecord,
	to: Parameters<typeof moveJob>[0]["to"],
	more: Partial<Parameters<typeof moveJob>[0]> = {},
) => moveJob({ ...at(job), to, by, requestKey: key(), ...more });

describe("opening", () => {
	test("gives the next number, the player, a first revision with billets, and a line of history", async () => {
		const first = await open();
		const second = await open({ dueOn: soon, notes: "Left hand." });
		expect(second.number).toBe(first.number + 1);
		expect(second).toMatchObject({
			state: "asked",
			dueOn: soon,
			notes: "Left hand.",
			player: { id: playerId },
			isAgreed: false,
			agreed: null,
			isDemo: false,
		});
		expect(second.revisions).toHaveLength(1);
		expect(second.latest.content.build.billets.map(({ use }) => use)).toEqual([
			"shaft",
			"butt",
		]);
		expect(second.events).toMatchObject([
			{ kind: "opened", toState: "asked", by },
		]);
	});

	test("the same request key opens one job", async () => {
		const requestKey = key();
		const [a, b] = await Promise.all([
			open({ requestKey }),
			open({ requestKey }),
		]);
		expect(a.id).toBe(b.id);
		expect(await open({ requestKey })).toMatchObject({ number: a.number });
		const next = await open();
		expect(next.number).toBe(a.number + 1);
	});

	test("a number once given is not given again, even where the job is gone", async () => {
		const gone = await open();
		await database().job.update({
			where: { id: gone.id },
			data: { isDemo: true },
		});
		await database().jobRevision.deleteMany({ where: { jobId: gone.id } });
		await database().jobEvent.deleteMany({ where: { jobId: gone.id } });
		await database().job.delete({ where: { id: gone.id } });
		expect((await open()).number).toBeGreaterThan(gone.number);
	});

	test("from what is not there, nothing", async () => {
		await expect(
			open({ from: { specRevisionId: "no such revision" } }),
		).rejects.toThrow("no spec revision");
		await expect(
			open({ from: { onlineCueId: "no such cue" } }),
		).rejects.toThrow("no online cue");
	});
});

describe("the way of a job", () => {
	test("asked, quoted, agreed, bench, waiting, bench, checked, handed over, each with who and when", async () => {
		let job = await agreed();
		expect(job).toMatchObject({ state: "agreed", isAgreed: true });
		job = done(await move(job, "on-the-bench"));
		job = done(
			await move(job, "waiting", {
				waitingFor: "drying",
				expectedOn: soon,
				note: "Points glued",
			}),
		);
		expect(job.waiting).toEqual({ for: "drying", expectedOn: soon });
		job = done(await move(job, "on-the-bench", { by: "Bench Two" }));
		expect(job.waiting).toBeNull();
		job = done(await move(job, "checked"));
		job = done(await move(job, "handed-over"));
		expect(job.state).toBe("handed-over");
		expect(
			job.events
				.toReversed()
				.map(({ kind, toState, by: who }) => [kind, toState, who]),
		).toEqual([
			["opened", "asked", by],
			["quoted", "quoted", by],
			["agreed", "agreed", "A. Customer"],
			["moved", "on-the-bench", by],
			["moved", "waiting", by],
			["moved", "on-the-bench", "Bench Two"],
			["moved", "checked", by],
			["moved", "handed-over", by],
		]);
		expect(await move(job, "on-the-bench")).toMatchObject({
			ok: false,
			refusals: [{ code: "no-such-move", facts: { from: "handed-over" } }],
		});
	});

	test("no bench before the customer's yes, and no yes by hand", async () => {
		const job = await quoted();
		for (const to of ["on-the-bench", "agreed", "checked"] as const)
			expect(await move(job, to)).toMatchObject({
				ok: false,
				refusals: [{ code: "no-such-move", value: to }],
			});
		expect(await getJob(job.number)).toMatchObject({ state: "quoted" });
	});

	test("a wait says for what and until when", async () => {
		const job = done(await move(await agreed(), "on-the-bench"));
		const codes = async (more: object) => {
			const saved = await move(job, "waiting", more);
			return saved.ok || !("refusals" in saved)
				? saved
				: saved.refusals.map(({ code, field }) => [code, field]);
		};
		expect(await codes({})).toEqual([
			["wait-needs-reason", "waitingFor"],
			["not-a-date", "expectedOn"],
		]);
		expect(
			await codes({ waitingFor: "parts", expectedOn: addDays(today(), -1) }),
		).toEqual([["date-passed", "expectedOn"]]);
		expect((await getJob(job.number))?.state).toBe("on-the-bench");
	});

	test("two edits at once: one is done, the other gets the job as it is", async () => {
		const job = await agreed();
		const both = await Promise.all([
			move(job, "on-the-bench"),
			setDue({ ...at(job), dueOn: soon, by, requestKey: key() }),
		]);
		expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
		const lost = both.find(({ ok }) => !ok);
		expect(lost).toMatchObject({
			conflict: { number: job.number, revision: job.revision + 1 },
		});
		expect((await getJob(job.number))?.revision).toBe(job.revision + 1);
	});

	test("a retry with the same key is the same edit, whatever happened since", async () => {
		const job = await agreed();
		const requestKey = key();
		const first = done(await move(job, "on-the-bench", { requestKey }));
		done(await move(first, "checked"));
		const again = done(await move(job, "on-the-bench", { requestKey }));
		expect(again.state).toBe("checked");
		expect(
			again.events.filter(({ toState }) => toState === "on-the-bench"),
		).toHaveLength(1);
		await expect(
			setDue({ ...at(again), dueOn: null, by, requestKey }),
		).rejects.toThrow("already used to move-job");
	});

	test("due day, notes and customer are edits with a history too", async () => {
		let job = await open();
		job = done(
			await setDue({ ...at(job), dueOn: soon, by, requestKey: key() }),
		);
		job = done(
			await addJobNote({ ...at(job), note: "Rang.", by, requestKey: key() }),
		);
		job = done(
			await changeCustomer({
				...at(job),
				customerName: "Émilie Øst",
				customerContact: "by telephone",
				notes: "",
				by,
				requestKey: key(),
			}),
		);
		expect(job).toMatchObject({ dueOn: soon, customerName: "Émilie Øst" });
		expect(job.events.map(({ kind }) => kind)).toEqual([
			"customer-changed",
			"noted",
			"due-set",
			"opened",
		]);
		const { jobs } = await listJobs({ today: today(), search: "emilie ost" });
		expect(jobs.map(({ number }) => number)).toEqual([job.number]);
	});
});

describe("quoting and agreeing", () => {
	test("a quote is a new revision; the one before stays as it was", async () => {
		const asked = await open();
		const job = await quoted(asked);
		expect(job).toMatchObject({ state: "quoted", isAgreed: false });
		expect(job.revisions.map(({ revision }) => revision)).toEqual([2, 1]);
		expect(job.revisions[1]).toEqual(asked.latest);
		expect(job.latest.content).toEqual({
			...asked.latest.content,
			quote: quoteUntil(soon),
		});
	});

	test("the same quote again is no revision", async () => {
		const job = await quoted();
		const again = await quoted(job);
		expect(again.revision).toBe(job.revision);
		expect(again.revisions).toHaveLength(2);
	});

	test.each([
		["half a penny", { priceMinor: 48_000.5 }, "not-whole"],
		["less than nothing", { priceMinor: -1 }, "out-of-range"],
		["no currency", { currency: "pounds" }, "unknown-currency"],
		["no day", { validUntil: "2026-02-30" }, "not-a-date"],
		["yesterday", { validUntil: addDays(today(), -1) }, "date-passed"],
		["years ahead", { validUntil: addDays(today(), 401) }, "date-too-far"],
		[
			"lighter than light",
			{ mayVary: [{ code: "mass-g" as const, within: -7 }] },
			"out-of-range",
		],
	])("%s is refused", async (_, wrong, code) => {
		const job = await open();
		expect(
			await writeQuote({
				...at(job),
				quote: quoteUntil(soon, wrong),
				by,
				requestKey: key(),
			}),
		).toMatchObject({ ok: false, refusals: [{ code }] });
		expect((await getJob(job.number))?.revisions).toHaveLength(1);
	});

	test("agreeing twice is once, by the same key, by another, or both at once", async () => {
		const job = await quoted();
		const requestKey = key();
		const both = await Promise.all([
			yes(job, { requestKey }),
			yes(job, { agreedName: "Another Name" }),
		]);
		expect(both.map(({ ok }) => ok)).toEqual([true, true]);
		expect(await yes(job, { requestKey })).toMatchObject({ ok: true });
		const after = await getJob(job.number);
		expect(after?.events.filter(({ kind }) => kind === "agreed")).toHaveLength(
			1,
		);
		expect(after?.revision).toBe(job.revision + 1);
		expect(
			await database().agreement.count({
				where: { jobRevision: { jobId: job.id } },
			}),
		).toBe(1);
	});

	test("what was replaced, or is not what was seen, cannot be agreed to", async () => {
		const seen = await quoted();
		const now = done(
			await writeQuote({
				...at(seen),
				quote: quoteUntil(soon, { priceMinor: 50_000 }),
				by,
				requestKey: key(),
			}),
		);
		const replaced = { ok: false, refusals: [{ code: "quote-replaced" }] };
		expect(await yes(seen)).toMatchObject(replaced);
		expect(
			await yes(now, { contentSha256: seen.latest.contentSha256 }),
		).toMatchObject(replaced);
		expect(await getJob(now.number)).toMatchObject({
			state: "quoted",
			isAgreed: false,
		});
	});

	test("an expired quote, one not written, and a cancelled job cannot be agreed to", async () => {
		const asked = await open();
		expect(await yes(asked)).toMatchObject({
			refusals: [{ code: "no-quote" }],
		});
		const old = await quoted(await open(), today());
		vi.useFakeTimers({
			toFake: ["Date"],
			now: Date.parse(`${addDays(today(), 1)}T12:00:00`),
		});
		try {
			expect(await yes(old)).toMatchObject({
				refusals: [{ code: "quote-expired", value: addDays(today(), -1) }],
			});
		} finally {
			vi.useRealTimers();
		}
		const gone = await quoted();
		const cancelled = done(await move(gone, "cancelled"));
		expect(await yes(cancelled)).toMatchObject({
			refusals: [{ code: "job-closed", value: "cancelled" }],
		});
	});

	test("a change after the yes is quoted once more; the bench cannot begin before the second yes", async () => {
		const job = await agreed();
		const changed = done(
			await newRevision({
				...at(job),
				content: {
					...askedContent({ buttWood: "black-walnut" }),
					quote: quoteUntil(soon, { priceMinor: 40_000 }),
				},
				reason: "Customer prefers walnut",
				by,
				requestKey: key(),
			}),
		);
		expect(changed).toMatchObject({
			state: "quoted",
			isAgreed: false,
			agreed: { revision: 2 },
		});
		expect(changed.events[0]).toMatchObject({
			kind: "changed",
			note: "Customer prefers walnut",
			facts: { revision: 3 },
		});
		expect(changed.latest.content.build.billets[1]?.wood).toBe("black-walnut");
		const again = await agreed(changed);
		expect(again).toMatchObject({ state: "agreed", agreed: { revision: 3 } });
	});

	test("on the bench a change leaves the job there, but it cannot be finished before it is agreed to", async () => {
		const bench = done(await move(await agreed(), "on-the-bench"));
		const changed = done(
			await writeQuote({
				...at(bench),
				quote: quoteUntil(soon, { priceMinor: 52_000 }),
				by,
				requestKey: key(),
			}),
		);
		expect(changed).toMatchObject({
			state: "on-the-bench",
			isAgreed: false,
			agreed: { revision: 2 },
		});
		expect(await move(changed, "checked")).toMatchObject({
			refusals: [{ code: "not-agreed", facts: { revision: 3 } }],
		});
		const after = await agreed(changed);
		expect(after.state).toBe("on-the-bench");
		expect(done(await move(after, "checked")).state).toBe("checked");
	});

	test("taking a change back needs no second yes", async () => {
		const job = await agreed();
		const changed = done(
			await writeQuote({
				...at(job),
				quote: quoteUntil(soon, { priceMinor: 52_000 }),
				by,
				requestKey: key(),
			}),
		);
		const back = done(
			await newRevision({
				...at(changed),
				content: job.latest.content,
				reason: "Taken back",
				by,
				requestKey: key(),
			}),
		);
		expect(back).toMatchObject({
			state: "agreed",
			isAgreed: true,
			latest: { revision: 4 },
		});
	});

	test("a change without a quote is refused once there was one, and any change of a closed job", async () => {
		const job = await quoted();
		const change = (from: JobRecord, next: JobContent) =>
			newRevision({
				...at(from),
				content: next,
				reason: "",
				by,
				requestKey: key(),
			});
		expect(await change(job, askedContent({}, 530))).toMatchObject({
			refusals: [{ code: "quote-missing" }],
		});
		const cancelled = done(await move(job, "cancelled"));
		expect(await change(cancelled, job.latest.content)).toMatchObject({
			refusals: [{ code: "job-closed" }],
		});
	});
});

describe("what was written down stays", () => {
	test.each([
		[
			"a revision's content",
			`UPDATE "JobRevision" SET "reason" = 'other'`,
			"a job revision never changes",
		],
		["a revision", `DELETE FROM "JobRevision"`, "a job revision is kept"],
		[
			"an agreement's name",
			`UPDATE "Agreement" SET "agreedName" = 'Someone Else'`,
			"an agreement never changes",
		],
		["an agreement", `DELETE FROM "Agreement"`, "an agreement is kept"],
		[
			"a line of history",
			`UPDATE "JobEvent" SET "by" = 'Someone Else'`,
			"what happened to a job never changes",
		],
		["history", `DELETE FROM "JobEvent"`, "what happened to a job is kept"],
	])("%s, by the database itself", async (_, sql, message) => {
		await agreed();
		await expect(direct(own.url, sql)).rejects.toThrow(message);
	});
});

describe("the queue", () => {
	const day = (offset: number) => addDays("2031-03-10", offset);
	const now = day(0);
	const names = async (request: Partial<Parameters<typeof listJobs>[0]>) =>
		(
			await listJobs({ today: now, search: "queue", limit: 200, ...request })
		).jobs.map(({ customerName }) => customerName);
	let late: JobRecord;
	beforeAll(async () => {
		late = await open({ customerName: "Queue late", dueOn: day(-1) });
		await open({ customerName: "Queue undated" });
		await open({ customerName: "Queue next month", dueOn: day(30) });
		await quoted(await open({ customerName: "Queue today", dueOn: day(0) }));
		await open({ customerName: "Queue sixth day", dueOn: day(6) });
		await open({ customerName: "Queue seventh day", dueOn: day(7) });
		const gone = await open({ customerName: "Queue gone", dueOn: day(-3) });
		done(await move(gone, "cancelled"));
	});

	test("soonest due first, undated last, closed ones only where asked for", async () => {
		expect(await names({})).toEqual([
			"Queue late",
			"Queue today",
			"Queue sixth day",
			"Queue seventh day",
			"Queue next month",
			"Queue undated",
		]);
		expect(await names({ states: ["cancelled"] })).toEqual(["Queue gone"]);
		expect(await names({ states: ["quoted"] })).toEqual(["Queue today"]);
		expect(await names({ states: ["asked", "cancelled"] })).toEqual([
			"Queue next month",
			"Queue seventh day",
			"Queue sixth day",
			"Queue late",
			"Queue gone",
			"Queue undated",
		]);
	});

	test("overdue, this week and without a day", async () => {
		expect(await names({ due: "overdue" })).toEqual(["Queue late"]);
		expect(await names({ due: "week" })).toEqual([
			"Queue today",
			"Queue sixth day",
		]);
		expect(await names({ due: "none" })).toEqual(["Queue undated"]);
	});

	test("found by number, customer or wood, in any order, and by no wildcard", async () => {
		expect(await names({ search: `${late.number} late queue` })).toEqual([
			"Queue late",
		]);
		expect(await names({ search: "EBONY queue month" })).toEqual([
			"Queue next month",
		]);
		expect(await names({ search: "queue walnut" })).toEqual([]);
		expect(await names({ search: "queue_late%" })).toEqual(["Queue late"]);
	});

	test("pages follow one another without gap or repeat, whatever their size", async () => {
		const whole = await names({});
		for (const limit of [1, 2, 4]) {
			const seen: string[] = [];
			let after: string | undefined;
			do {
				const page = await listJobs({
					today: now,
					search: "queue",
					limit,
					...(after === undefined ? {} : { after }),
				});
				expect(page.jobs.length).toBeLessThanOrEqual(limit);
				seen.push(...page.jobs.map(({ customerName }) => customerName));
				after = page.next ?? undefined;
			} while (after !== undefined);
			expect(seen).toEqual(whole);
		}
	});

	test("the next and the previous job walk the same queue, and end at its ends", async () => {
		const whole = (
			await listJobs({ today: now, search: "queue", limit: 200 })
		).jobs.map(({ number }) => number);
		const step = (number: number, direction: "next" | "previous") =>
			neighbourJob(number, { today: now, search: "queue", direction });
		for (const [i, number] of whole.entries()) {
			expect(await step(number, "next")).toBe(whole[i + 1] ?? null);
			expect(await step(number, "previous")).toBe(whole[i - 1] ?? null);
		}
		expect(await step(999_999, "next")).toBeNull();
	});

	test("counts by state, and what is late", async () => {
		const before = await countJobs(now);
		const job = await open({ dueOn: day(-5) });
		const after = await countJobs(now);
		expect(after.byState.asked).toBe(before.byState.asked + 1);
		expect(after.overdue).toBe(before.overdue + 1);
		done(await move(job, "cancelled"));
		const cancelled = await countJobs(now);
		expect(cancelled.overdue).toBe(before.overdue);
		expect(cancelled.byState.cancelled).toBe(before.byState.cancelled + 1);
	});

	test("a row says what it waits for, what it is and whether it was agreed to", async () => {
		const bench = done(
			await move(
				await agreed(await quoted(await open({ customerName: "Waiter" }))),
				"on-the-bench",
			),
		);
		done(
			await move(bench, "waiting", { waitingFor: "parts", expectedOn: soon }),
		);
		const { jobs } = await listJobs({ today: now, search: "waiter" });
		expect(jobs).toMatchObject([
			{
				waiting: { for: "parts", expectedOn: soon },
				isAgreed: true,
				latest: {
					content: { build: { request: { buttWood: "gaboon-ebony" } } },
				},
			},
		]);
	});
});
