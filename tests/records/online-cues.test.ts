import { describe, expect, test } from "vitest";
import { database } from "@/lib/records/database";
import { getJob } from "@/lib/records/jobs/loaders";
import { openOnlineCue } from "@/lib/records/online-cues/loaders";
import {
	changeOnlineCue,
	keepOnlineCue,
	renewLink,
	sendOnlineCue,
} from "@/lib/records/online-cues/mutations";
import { newToken } from "@/lib/records/share-links/data";
import { withBillets } from "@/lib/workshop/job-content";
import { temporaryDatabase } from "../support/database";
import { askedContent } from "../workshop/support/jobs";

temporaryDatabase();

const answers = {
	gameId: "snooker",
	lengthMm: "58 in",
	massG: "540 g",
} as const;
const challenge = () => ({
	id: crypto.randomUUID(),
	expiresAtMs: Date.now() + 60_000,
});
const mine = newToken();
const keep = (change: Partial<Parameters<typeof keepOnlineCue>[0]> = {}) =>
	keepOnlineCue({
		requestKey: crypto.randomUUID(),
		answers,
		deviceToken: mine,
		challenge: challenge(),
		...change,
	});
const kept = async (change: Parameters<typeof keep>[0] = {}) => {
	const result = await keep(change);
	if (!result.ok) throw new Error(result.code);
	return result;
};
const opened = async (token: string, deviceToken: string | null = null) => {
	const result = await openOnlineCue(token, deviceToken);
	if (result.standing !== "open") throw new Error(result.standing);
	return result;
};

describe("a cue that is kept", () => {
	test("opens by its address as it was typed, for everybody to read and for its device to change", async () => {
		const { token } = await kept();
		expect(await opened(token)).toMatchObject({
			cue: { answers, revision: 1, jobs: [] },
			isOwn: false,
		});
		expect((await opened(token, mine)).isOwn).toBe(true);
		expect((await opened(token, newToken())).isOwn).toBe(false);
		expect(await openOnlineCue(newToken(), mine)).toEqual({
			standing: "unknown",
		});
	});

	test("keeps neither the address nor the device's token", async () => {
		const { token, cue } = await kept();
		const row = await database().onlineCue.findUniqueOrThrow({
			where: { id: cue.id },
			include: { links: true },
		});
		expect(JSON.stringify(row)).not.toContain(token);
		expect(JSON.stringify(row)).not.toContain(mine);
	});

	test("is one cue however often the same request comes, and its work counts once", async () => {
		const requestKey = crypto.randomUUID();
		const work = challenge();
		const first = await kept({ requestKey, challenge: work });
		const again = await kept({ requestKey, challenge: work });
		expect(again.cue.id).toBe(first.cue.id);
		expect((await opened(again.token)).cue.id).toBe(first.cue.id);
		expect(await keep({ challenge: work })).toEqual({
			ok: false,
			code: "challenge-used",
		});
	});

	test("refuses fields that are not asked, and texts longer than any answer", async () => {
		await expect(keep({ answers: { name: "x" } as never })).rejects.toThrow();
		await expect(keep({ answers: { tip: "x".repeat(121) } })).rejects.toThrow();
	});

	test("closes after half a year", async () => {
		const { token } = await kept();
		const days = (count: number) => new Date(Date.now() + count * 86_400_000);
		expect((await openOnlineCue(token, null, days(179))).standing).toBe("open");
		expect((await openOnlineCue(token, null, days(181))).standing).toBe(
			"expired",
		);
	});

	test("gets a new address in place of all others, by its device alone", async () => {
		const { token, cue } = await kept();
		expect(await renewLink({ id: cue.id, deviceToken: newToken() })).toBeNull();
		expect(await renewLink({ id: cue.id, deviceToken: null })).toBeNull();
		const renewed = await renewLink({ id: cue.id, deviceToken: mine });
		expect((await openOnlineCue(token, mine)).standing).toBe("revoked");
		expect((await opened(renewed ?? "")).cue.id).toBe(cue.id);
	});
});

describe("a change", () => {
	test("is made on the revision it was read at, by its device alone", async () => {
		const { cue } = await kept();
		const change = (
			massG: string,
			revision: number,
			deviceToken: string | null = mine,
		) =>
			changeOnlineCue({
				id: cue.id,
				revision,
				answers: { ...answers, massG },
				deviceToken,
			});
		expect(await change("550 g", 1)).toEqual({ ok: true, revision: 2 });
		expect(await change("560 g", 1)).toMatchObject({
			ok: false,
			conflict: { revision: 2, answers: { massG: "550 g" } },
		});
		// The same again is no change.
		expect(await change("550 g", 1)).toEqual({ ok: true, revision: 2 });
		expect(await change("560 g", 2, newToken())).toEqual({
			ok: false,
			conflict: null,
		});
		expect(await change("560 g", 2, null)).toEqual({
			ok: false,
			conflict: null,
		});
	});

	test("one of two at the same moment wins", async () => {
		const { cue } = await kept();
		const results = await Promise.all(
			["551 g", "552 g"].map((massG) =>
				changeOnlineCue({
					id: cue.id,
					revision: 1,
					answers: { massG },
					deviceToken: mine,
				}),
			),
		);
		expect(results.filter(({ ok }) => ok)).toHaveLength(1);
	});
});

describe("a cue sent to the workshop", () => {
	const asked = askedContent();
	const content = { ...asked, build: withBillets(asked.build) };
	const send = (change: Partial<Parameters<typeof sendOnlineCue>[0]> = {}) =>
		sendOnlineCue({
			requestKey: crypto.randomUUID(),
			answers,
			deviceToken: mine,
			challenge: challenge(),
			cueId: null,
			job: {
				customerName: "Invented Customer",
				customerContact: "invented@example.org",
				consentAt: new Date(),
				content,
				by: "online",
			},
			...change,
		});
	const sent = async (change: Parameters<typeof send>[0] = {}) => {
		const result = await send(change);
		if (!result.ok) throw new Error(result.code);
		return result;
	};

	test("is a job that is asked for, frozen, with the contact and when it may be kept", async () => {
		const { jobNumber, token } = await sent();
		const job = await getJob(jobNumber);
		expect(job).toMatchObject({
			state: "asked",
			customerName: "Invented Customer",
			customerContact: "invented@example.org",
			latest: { revision: 1, by: "online" },
		});
		expect(job?.consentAt).toBeInstanceOf(Date);
		expect(job?.latest.content).toEqual(content);
		const { cue } = await opened(token, mine);
		expect(cue.id).toBe(job?.onlineCueId);
		expect(cue.jobs).toEqual([{ number: jobNumber, sentAt: expect.any(Date) }]);
	});

	test("is one job however often the same request comes", async () => {
		const requestKey = crypto.randomUUID();
		const first = await sent({ requestKey });
		const again = await sent({ requestKey });
		expect(again.jobNumber).toBe(first.jobNumber);
		expect(again.cue.id).toBe(first.cue.id);
		expect((await opened(again.token, mine)).cue.jobs).toHaveLength(1);
	});

	test("is not sent by work that was done for something else, and leaves nothing then", async () => {
		const work = challenge();
		await sent({ challenge: work });
		const before = await database().onlineCue.count();
		expect(await send({ challenge: work })).toEqual({
			ok: false,
			code: "challenge-used",
		});
		expect(await database().onlineCue.count()).toBe(before);
	});

	test("is this device's kept cue brought up to date; another device's stays as it is", async () => {
		const { cue } = await kept();
		const changed = { ...answers, massG: "555 g" };
		const own = await sent({ cueId: cue.id, answers: changed });
		expect(own.cue).toMatchObject({
			id: cue.id,
			answers: changed,
			revision: 2,
		});
		const others = await sent({
			cueId: cue.id,
			deviceToken: newToken(),
			answers: { massG: "600 g" },
		});
		expect(others.cue.id).not.toBe(cue.id);
		const row = await database().onlineCue.findUniqueOrThrow({
			where: { id: cue.id },
		});
		expect(row.choices).toEqual(changed);
	});
});
