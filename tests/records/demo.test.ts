import { beforeAll, describe, expect, test } from "vitest";
import { closeDatabase, database } from "@/lib/records/database";
import { demoInventory, isDemoRemoved } from "@/lib/records/demo/loaders";
import { removeDemo } from "@/lib/records/demo/mutations";
import { startFitting } from "@/lib/records/fittings/mutations";
import { createPlayer } from "@/lib/records/players/mutations";
import { today } from "@/lib/records/settings/loaders";
import { saveSetting } from "@/lib/records/settings/mutations";
import { saveSpec } from "@/lib/records/specs/mutations";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import { readDemo, seedDemo } from "@/seed/seed";
import { temporaryDatabase } from "../support/database";

temporaryDatabase();

const key = () => crypto.randomUUID();
const names = readDemo().map(({ player }) => player.name);
const [first, second, third, fourth] = readDemo();
if (!first || !second || !third || !fourth) throw new Error("four are needed");

/** Every table's rows, to see what is gone and what is left. */
async function rows() {
	const db = database();
	const tables = {
		player: await db.player.findMany(),
		fitting: await db.fitting.findMany(),
		answerChange: await db.answerChange.findMany(),
		spec: await db.spec.findMany(),
		specRevision: await db.specRevision.findMany(),
		trialCue: await db.trialCue.findMany(),
		trial: await db.trial.findMany(),
		trialShot: await db.trialShot.findMany(),
		trialWish: await db.trialWish.findMany(),
		playerNote: await db.playerNote.findMany(),
		playerCue: await db.playerCue.findMany(),
		onlineCue: await db.onlineCue.findMany(),
		shareLink: await db.shareLink.findMany(),
		job: await db.job.findMany(),
		jobRevision: await db.jobRevision.findMany(),
		agreement: await db.agreement.findMany(),
		jobEvent: await db.jobEvent.findMany(),
		jobCheck: await db.jobCheck.findMany(),
		woodEvidence: await db.woodEvidence.findMany(),
		settingVersion: await db.settingVersion.findMany(),
	};
	return Object.fromEntries(
		Object.entries(tables).map(([name, list]) => [
			name,
			list.map((row: { id: string }) => row.id).sort(),
		]),
	) as Record<keyof typeof tables, string[]>;
}

let jobNumber = 0;
/** A job with one row of everything that can hang on it. */
async function job(
	isDemo: boolean,
	more: { playerId?: string; onlineCueId?: string; specRevisionId?: string },
) {
	const db = database();
	const created = await db.job.create({
		data: {
			...more,
			number: ++jobNumber,
			state: "asked",
			customerName: "Invented",
			searchText: "",
			requestKey: key(),
			isDemo,
			revisions: {
				create: {
					revision: 1,
					content: {},
					contentSha256: "",
					reason: "",
					by: "Bench",
					requestKey: key(),
					agreement: {
						create: {
							contentSha256: "",
							agreedName: "Invented",
							via: "bench",
							requestKey: key(),
						},
					},
				},
			},
			events: { create: { kind: "opened", by: "Bench", requestKey: key() } },
			checks: {
				create: {
					stage: "finished",
					readings: {},
					by: "Bench",
					requestKey: key(),
				},
			},
			links: { create: { tokenHash: key() } },
		},
		include: { checks: true },
	});
	await db.woodEvidence.create({
		data: {
			wood: "white-ash",
			jobId: created.id,
			checkId: created.checks[0]?.id ?? null,
			densityKgM3: 650,
			sdKgM3: 10,
			by: "Bench",
			isDemo,
			requestKey: key(),
		},
	});
	return created;
}

const trialOf = (playerId: string, isDemo: boolean, number: number) =>
	database().trial.create({
		data: {
			number,
			playerId,
			plan: {},
			isDemo,
			shots: {
				create: {
					shotNumber: 0,
					letter: "A",
					isPotted: true,
					requestKey: key(),
				},
			},
		},
	});
const wish = (trialId: string, fittingId: string) =>
	database().trialWish.create({
		data: {
			trialId,
			fittingId,
			field: "wishLength",
			after: "1450 mm",
			offer: {},
			requestKey: key(),
		},
	});

let stays: Awaited<ReturnType<typeof rows>>;

beforeAll(async () => {
	const db = database();
	// What a coach recorded, before anything invented is there.
	const real = await createPlayer({ name: "Real Person", requestKey: key() });
	const fitting = await startFitting({
		playerId: real.id,
		requestKey: key(),
	});
	await saveSpec({
		fittingId: fitting.id,
		content: { real: true },
		reason: "",
		requestKey: key(),
	});
	const realTrial = await trialOf(real.id, false, 1);
	await wish(realTrial.id, fitting.id);
	await db.playerNote.create({
		data: {
			playerId: real.id,
			text: "A real line",
			writtenOn: "2026-01-01",
			requestKey: key(),
		},
	});
	const online = await db.onlineCue.create({
		data: { choices: {}, requestKey: key() },
	});
	await job(false, { playerId: real.id, onlineCueId: online.id });
	await saveSetting({
		kind: "header",
		content: { ...DEFAULT_SETTINGS.header, basis: "workshop", name: "Real" },
		editedFrom: 0,
		validFrom: today(),
		by: "Bench",
		requestKey: key(),
	});
	stays = await rows();

	// The invented data, seeded past the person who is there, and more of each kind.
	for (const { player, fitting: invented } of readDemo()) {
		await db.player.create({
			data: { ...player, isDemo: true, searchName: "" },
		});
		await db.fitting.create({
			data: {
				...invented,
				number: 100 + names.indexOf(player.name),
				playerId: player.id,
				isDemo: true,
			},
		});
	}
	await saveSpec({
		fittingId: first.fitting.id,
		content: { invented: true },
		reason: "",
		requestKey: key(),
	});
	await db.answerChange.create({
		data: {
			fittingId: first.fitting.id,
			revision: 2,
			field: "stature",
			after: "1800 mm",
			deviceId: "d",
			deviceName: "",
			by: "",
			requestKey: key(),
		},
	});
	const trial = await trialOf(first.player.id, true, 2);
	await wish(trial.id, first.fitting.id);
	await db.trialCue.create({
		data: {
			name: "Invented",
			lengthMm: 1460,
			massG: 510,
			buttDiameterMm: 29,
			tipDiameterMm: 9.5,
			balanceFromButtMm: 432,
			isDemo: true,
		},
	});
	const inventedOnline = await db.onlineCue.create({
		data: { choices: {}, requestKey: key(), isDemo: true },
	});
	const made = await job(true, {
		playerId: first.player.id,
		onlineCueId: inventedOnline.id,
	});
	await db.playerCue.create({
		data: {
			playerId: first.player.id,
			name: "Invented",
			content: {},
			jobId: made.id,
			since: "2026-01-01",
			isDemo: true,
		},
	});
	await db.playerNote.create({
		data: {
			playerId: real.id,
			text: "An invented line at a real person",
			writtenOn: "2026-01-01",
			requestKey: key(),
			isDemo: true,
		},
	});
	await saveSetting({
		kind: "prices",
		content: DEFAULT_SETTINGS.prices,
		editedFrom: 0,
		validFrom: today(),
		by: "Seed",
		requestKey: key(),
		isDemo: true,
	});
	// Real things on invented people.
	await db.fitting.create({
		data: { number: 200, playerId: second.player.id, answers: {} },
	});
	const { number } = await saveSpec({
		fittingId: third.fitting.id,
		content: { invented: true },
		reason: "",
		requestKey: key(),
	});
	const revision = await db.specRevision.findFirstOrThrow({
		where: { spec: { number } },
	});
	await job(false, { specRevisionId: revision.id });
	await db.playerNote.create({
		data: {
			playerId: fourth.player.id,
			text: "A real line at an invented person",
			writtenOn: "2026-01-01",
			requestKey: key(),
		},
	});
});

const KEPT = [
	{ kind: "fittings", name: String(100 + 2), because: "job" },
	{ kind: "players", name: second.player.name, because: "fitting" },
	{ kind: "players", name: third.player.name, because: "fitting" },
	{ kind: "players", name: fourth.player.name, because: "note" },
];

describe("removing the invented demo data", () => {
	test("is told beforehand, with what stays and why, and changes nothing yet", async () => {
		const before = await rows();
		const { counts, players, kept } = await demoInventory();
		expect(await rows()).toEqual(before);
		expect(counts).toEqual({
			players: names.length - 3,
			fittings: names.length - 1,
			specs: 1,
			trials: 1,
			notes: 1,
			playerCues: 1,
			rackCues: 1,
			onlineCues: 1,
			jobs: 1,
			evidence: 1,
			settings: 1,
		});
		expect(players).not.toContain("Real Person");
		expect([...kept].sort(byName)).toEqual([...KEPT].sort(byName));
		expect(await isDemoRemoved()).toBe(false);
	});

	test("takes every invented row and nothing else", async () => {
		const before = await rows();
		await removeDemo();
		const after = await rows();
		for (const table of Object.keys(stays) as (keyof typeof stays)[])
			expect(after[table], table).toEqual(expect.arrayContaining(stays[table]));
		const left = (table: keyof typeof stays) =>
			after[table].filter((id) => !stays[table].includes(id));
		expect(left("player").sort()).toEqual(
			[second, third, fourth].map(({ player }) => player.id).sort(),
		);
		const real = await database().fitting.findFirstOrThrow({
			where: { number: 200 },
		});
		expect(left("fitting").sort()).toEqual([real.id, third.fitting.id].sort());
		expect(left("job")).toHaveLength(1);
		expect(left("specRevision")).toHaveLength(1);
		expect(left("playerNote")).toHaveLength(1);
		for (const table of [
			"trial",
			"trialShot",
			"trialWish",
			"trialCue",
			"onlineCue",
			"playerCue",
			"answerChange",
			"settingVersion",
		] as const)
			expect(left(table), table).toEqual([]);
		for (const table of [
			"jobRevision",
			"agreement",
			"jobEvent",
			"jobCheck",
			"shareLink",
			"woodEvidence",
		] as const) {
			expect(before[table], table).toHaveLength(3);
			expect(after[table], table).toHaveLength(2);
		}
	});

	test("a second time finds nothing but what stays", async () => {
		const before = await rows();
		const { counts } = await removeDemo();
		expect(Object.values(counts).every((count) => count === 0)).toBe(true);
		expect(await rows()).toEqual(before);
	});
});

describe("in a database that holds the invented data alone", () => {
	temporaryDatabase();

	test("nobody is left, and the next start adds nobody", async () => {
		await closeDatabase();
		expect(await seedDemo()).toBe(names.length);
		await removeDemo();
		expect(await isDemoRemoved()).toBe(true);
		expect(await seedDemo()).toBe(0);
		const { player, fitting, trialCue } = await rows();
		expect([player, fitting, trialCue]).toEqual([[], [], []]);
	});
});

const byName = (a: { name: string }, b: { name: string }) =>
	a.name < b.name ? -1 : 1;
