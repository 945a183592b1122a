import { beforeAll, describe, expect, test } from "vitest";
import type { RackCueFields, ShotChange, StartTrial } from "@/lib/forms/trial";
import { must } from "@/lib/numerics/outcome";
import { database } from "@/lib/records/database";
import { getFitting } from "@/lib/records/fittings/loaders";
import { saveAnswers, startFitting } from "@/lib/records/fittings/mutations";
import { createPlayer } from "@/lib/records/players/mutations";
import type { RackCueRecord, TrialRecord } from "@/lib/records/trials/data";
import {
	getRackCue,
	getTrial,
	listRack,
	listTrials,
	trialsOf,
} from "@/lib/records/trials/loaders";
import {
	endTrial,
	keepShots,
	startTrial,
} from "@/lib/records/trials/mutations";
import { questionFrom, targetFrom } from "@/lib/records/trials/question";
import {
	addDemoRack,
	addRackCue,
	changeRackCue,
	retireRackCue,
} from "@/lib/records/trials/rack";
import { applyTrialWish, revertTrialWish } from "@/lib/records/trials/wishes";
import { answerTrial } from "@/lib/trial/answer";
import { shotsPlanned, slotAt } from "@/lib/trial/order";
import { temporaryDatabase } from "../support/database";

temporaryDatabase();

const key = () => crypto.randomUUID();
const FIGURES: RackCueFields = {
	name: "Invented",
	lengthMm: 1460,
	massG: 510,
	buttDiameterMm: 29,
	tipDiameterMm: 9.5,
	balanceFromButtMm: 432,
	notes: "",
};
let playerId: string;
let cues: RackCueRecord[];

beforeAll(async () => {
	const player = await createPlayer({ name: "Tess Trial", requestKey: key() });
	playerId = player.id;
	cues = [
		await addRackCue({
			...FIGURES,
			name: "Light",
			massG: 470,
			requestKey: key(),
		}),
		await addRackCue({
			...FIGURES,
			name: "Heavy",
			massG: 550,
			requestKey: key(),
		}),
		await addRackCue({
			...FIGURES,
			name: "Long",
			lengthMm: 1524,
			requestKey: key(),
		}),
	];
});

const begin = (change: Partial<StartTrial> = {}, requestKey = key()) =>
	startTrial({
		playerId,
		cueIds: cues.slice(0, 2).map(({ id }) => id),
		shotsEach: 10,
		shotsPerTurn: 5,
		isPaired: true,
		isHidden: false,
		seed: 7,
		...change,
		requestKey,
	});
const put = (
	shotNumber: number,
	change: Partial<Extract<ShotChange, { kind: "put" }>> = {},
): Extract<ShotChange, { kind: "put" }> => ({
	kind: "put",
	requestKey: key(),
	shotNumber,
	isPotted: true,
	...change,
});
const standingIn = async ({ number }: TrialRecord) =>
	(await getTrial(number))?.shots ?? [];

describe("the rack", () => {
	test("a cue is added once for a key, changed on its revision, taken off and put back", async () => {
		const requestKey = key();
		const one = await addRackCue({ ...FIGURES, name: "Twice", requestKey });
		const again = await addRackCue({ ...FIGURES, name: "Twice", requestKey });
		expect(again).toEqual(one);
		const changed = await changeRackCue({
			id: one.id,
			revision: 1,
			fields: { ...FIGURES, name: "Twice", massG: 520 },
		});
		expect(changed).toMatchObject({
			ok: true,
			cue: { massG: 520, revision: 2 },
		});
		expect(
			await changeRackCue({ id: one.id, revision: 1, fields: FIGURES }),
		).toMatchObject({ ok: false, conflict: { massG: 520 } });
		await retireRackCue(one.id, true);
		const off = (await getRackCue(one.id))?.retiredAt;
		expect(off).toBeInstanceOf(Date);
		await retireRackCue(one.id, true);
		expect((await getRackCue(one.id))?.retiredAt).toEqual(off);
		await expect(
			begin({ cueIds: [one.id, cues[0]?.id ?? ""] }),
		).rejects.toThrow(/no cue .* on the rack/);
		await retireRackCue(one.id, false);
		expect(await getRackCue(one.id)).toMatchObject({
			massG: 520,
			retiredAt: null,
		});
		await expect(retireRackCue("none", true)).rejects.toThrow();
	});
	test("figures outside their bounds are refused", async () => {
		await expect(
			addRackCue({ ...FIGURES, massG: 5000, requestKey: key() }),
		).rejects.toMatchObject({ name: "ZodError" });
	});
	test("the invented rack goes into an empty rack only", async () => {
		expect(await addDemoRack()).toBe(0);
		const before = await database().trialCue.findMany();
		await database().trialCue.deleteMany();
		try {
			const added = await addDemoRack();
			expect(added).toBeGreaterThan(4);
			const rack = await listRack();
			expect(rack).toHaveLength(added);
			expect(rack.every(({ isDemo }) => isDemo)).toBe(true);
			expect(await addDemoRack()).toBe(0);
		} finally {
			await database().trialCue.deleteMany();
			await database().trialCue.createMany({ data: before });
		}
	});
});

describe("starting a trial", () => {
	test("keeps the cues as they are, deals letters and a balanced order, counts up", async () => {
		const first = await begin();
		const second = await begin();
		expect(second.number).toBe(first.number + 1);
		expect(first.plan.cues.map(({ letter }) => letter)).toEqual(["A", "B"]);
		expect(first.plan.cues.map(({ cueId }) => cueId).sort()).toEqual(
			cues
				.slice(0, 2)
				.map(({ id }) => id)
				.sort(),
		);
		expect(shotsPlanned(first.plan)).toBe(20);
		expect(await getTrial(first.number)).toEqual(first);
	});
	test("once for a key, the same for a seed, letters dealt by it", async () => {
		const requestKey = key();
		const one = await begin({}, requestKey);
		expect((await begin({}, requestKey)).number).toBe(one.number);
		const dealt = new Set<string | undefined>();
		for (let seed = 0; seed < 12; seed++) {
			const { plan } = await startTrial({
				playerId,
				cueIds: cues.map(({ id }) => id),
				shotsEach: 6,
				shotsPerTurn: 1,
				isPaired: true,
				isHidden: true,
				seed,
				requestKey: key(),
			});
			dealt.add(plan.cues[0]?.cueId);
		}
		expect(dealt.size).toBe(3);
	});
	test("of a player or a cue that is not there is refused", async () => {
		await expect(begin({ playerId: "nobody" })).rejects.toThrow(/no player/);
		await expect(begin({ cueIds: ["a", "b"] })).rejects.toThrow(/no cue/);
	});
});

describe("logging shots", () => {
	test("in order, with what was noted, the letter taken from the plan", async () => {
		const trial = await begin();
		const kept = await keepShots(trial.id, [
			put(0, { line: "left", isPotted: false }),
			put(1, { position: "good" }),
		]);
		expect(kept).toMatchObject({ hasEnded: false, refused: [] });
		expect(kept?.shots).toMatchObject([
			{
				shotNumber: 0,
				isPotted: false,
				line: "left",
				letter: slotAt(trial.plan, 0)?.letter,
			},
			{ shotNumber: 1, isPotted: true, position: "good" },
		]);
		expect(kept?.shots[0]).not.toHaveProperty("position");
	});
	test("sent twice, three times, alone or together, a shot stands once", async () => {
		const trial = await begin();
		const shot = put(0);
		await keepShots(trial.id, [shot]);
		await keepShots(trial.id, [shot, shot]);
		const { shots } = (await keepShots(trial.id, [
			{ ...shot, line: "on" },
		])) ?? { shots: [] };
		expect(shots).toMatchObject([{ requestKey: shot.requestKey, line: "on" }]);
		expect(await standingIn(trial)).toHaveLength(1);
	});
	test("taken back it is gone, its place is free, and sending it again does not bring it back", async () => {
		const trial = await begin();
		const [one, wrong] = [put(0), put(1)];
		const back: ShotChange = {
			kind: "take-back",
			requestKey: wrong.requestKey,
		};
		await keepShots(trial.id, [one, wrong]);
		await keepShots(trial.id, [back, back]);
		await keepShots(trial.id, [wrong]);
		expect(await standingIn(trial)).toHaveLength(1);
		const right = put(1, { isPotted: false });
		const kept = await keepShots(trial.id, [right]);
		expect(kept?.shots[1]).toMatchObject({
			requestKey: right.requestKey,
			isPotted: false,
		});
		// Both are kept as a record of what was pressed.
		expect(
			await database().trialShot.count({ where: { trialId: trial.id } }),
		).toBe(3);
	});
	test("a place is never filled twice: the slower device is told", async () => {
		const trial = await begin();
		const [mine, theirs] = [put(0), put(0, { isPotted: false })];
		await keepShots(trial.id, [mine]);
		const kept = await keepShots(trial.id, [theirs]);
		expect(kept?.refused).toEqual([theirs.requestKey]);
		expect(kept?.shots).toMatchObject([{ requestKey: mine.requestKey }]);
	});
	test("ten devices at once fill each place once", async () => {
		const trial = await begin();
		await Promise.all(
			Array.from({ length: 10 }, () =>
				keepShots(trial.id, [put(0), put(1), put(2)]),
			),
		);
		expect(
			(await standingIn(trial)).map(({ shotNumber }) => shotNumber),
		).toEqual([0, 1, 2]);
	});
	test("refused: a gap, a shot past the plan, taking back one that is not the last", async () => {
		const trial = await begin({ shotsEach: 1, shotsPerTurn: 1 });
		const [gap, one, two, past] = [put(1), put(0), put(1), put(2)];
		const kept = await keepShots(trial.id, [gap, one, two, past]);
		expect(kept?.refused).toEqual([gap.requestKey, past.requestKey]);
		const again = await keepShots(trial.id, [
			{ kind: "take-back", requestKey: one.requestKey },
		]);
		expect(again?.refused).toEqual([one.requestKey]);
	});
	test("nothing after the end; ended twice it ended once", async () => {
		const trial = await begin();
		await keepShots(trial.id, [put(0)]);
		expect(await endTrial(trial.id)).toBe(true);
		const ended = (await getTrial(trial.number))?.endedAt;
		expect(await endTrial(trial.id)).toBe(true);
		expect((await getTrial(trial.number))?.endedAt).toEqual(ended);
		const late = put(1);
		expect(await keepShots(trial.id, [late])).toMatchObject({
			hasEnded: true,
			refused: [late.requestKey],
		});
	});
	test("of a trial that is not there is null, and another trial's key is an error", async () => {
		expect(await keepShots("none", [put(0)])).toBeNull();
		expect(await endTrial("none")).toBe(false);
		const [one, other] = [await begin(), await begin()];
		const shot = put(0);
		await keepShots(one.id, [shot]);
		await expect(keepShots(other.id, [shot])).rejects.toThrow(/another trial/);
	});
});

describe("listing", () => {
	test("a player's trials, page by page, last begun first", async () => {
		const player = await createPlayer({
			name: "Ōlaf Pager",
			requestKey: key(),
		});
		for (let i = 0; i < 5; i++) await begin({ playerId: player.id });
		const first = await listTrials({ playerId: player.id, limit: 3 });
		const second = await listTrials({
			playerId: player.id,
			limit: 3,
			after: first.next ?? undefined,
		});
		const numbers = [...first.trials, ...second.trials].map(
			({ number }) => number,
		);
		expect(numbers).toHaveLength(5);
		expect([...numbers].sort((a, b) => b - a)).toEqual(numbers);
		expect(second.next).toBeNull();
		expect((await listTrials({ search: "olaf" })).trials).toHaveLength(5);
		expect((await listTrials({ search: "no such" })).trials).toEqual([]);
	});
});

describe("what is computed from the records", () => {
	const played = async (shots = 20) => {
		const trial = await begin();
		await keepShots(
			trial.id,
			Array.from({ length: shots }, (_, i) => {
				const letter = slotAt(trial.plan, i)?.letter;
				const cue = trial.plan.cues.find((one) => one.letter === letter);
				return put(i, { isPotted: cue?.name === "Light" || i % 3 === 0 });
			}),
		);
		return (await getTrial(trial.number)) as TrialRecord;
	};

	test("shots carry their cue, round and pair, and the answer names the better cue", async () => {
		const trial = await played();
		const question = questionFrom({
			rack: await listRack(),
			trials: [trial],
			target: {},
		});
		const answer = must(answerTrial(question));
		const [comparison] = answer.analyses[0]?.comparisons ?? [];
		expect(comparison).toMatchObject({ basis: "pairs", comparedShots: 10 });
		const light = cues[0]?.id ?? "";
		const ahead = comparison?.cueIds[0] === light ? 1 : -1;
		expect(ahead * (comparison?.difference.value ?? 0)).toBeGreaterThan(0.3);
		expect(answer.wishUpdates[0]).toMatchObject({ field: "massG" });
	});
	test("a cue changed since stands for the old trial with its old figures, and is not proposed as such", async () => {
		const trial = await played();
		const rack = (await listRack()).map((cue) =>
			cue.id === cues[0]?.id ? { ...cue, massG: 490 } : cue,
		);
		const question = questionFrom({ rack, trials: [trial], target: {} });
		const then = question.rack.find(({ id }) => id.includes("in trial"));
		expect(then).toMatchObject({ massG: 470, isAvailable: false });
		for (const { cueIds } of must(answerTrial(question)).proposals)
			expect(cueIds).not.toContain(then?.id);
	});
	test("a retired cue still counts in the trials it was in", async () => {
		const trial = await played();
		const rack = (await listRack()).map((cue) =>
			cue.id === cues[0]?.id ? { ...cue, retiredAt: new Date() } : cue,
		);
		const question = questionFrom({ rack, trials: [trial], target: {} });
		expect(
			question.rack.find(({ id }) => id === cues[0]?.id)?.isAvailable,
		).toBe(false);
		expect(answerTrial(question).ok).toBe(true);
	});
	test("the target is the advice before the player's own wishes", async () => {
		const { id, number } = await startFitting({ playerId, requestKey: key() });
		await saveAnswers({
			fittingId: id,
			answers: { stature: "178 cm", wishMass: "600 g" },
			revision: 1,
		});
		const target = targetFrom(await getFitting(number));
		expect(target.massG?.value).toBeLessThan(560);
		expect(target.massG?.sd).toBeGreaterThan(0);
		expect(target.balanceFromButtMm).toBeUndefined();
		expect(targetFrom(null)).toEqual({});
	});
	test("a player's trials come back with their shots, first begun first", async () => {
		const trials = await trialsOf(playerId);
		const numbers = trials.map(({ number }) => number);
		expect([...numbers].sort((a, b) => a - b)).toEqual(numbers);
		expect(trials.some(({ shots }) => shots.length === 20)).toBe(true);
	});
});

describe("a wish set from a trial", () => {
	const fitting = async (answers: Record<string, string>) => {
		const started = await startFitting({ playerId, requestKey: key() });
		await saveAnswers({ fittingId: started.id, answers, revision: 1 });
		return started;
	};
	const apply = async (
		trial: TrialRecord,
		fittingId: string,
		requestKey = key(),
	) =>
		applyTrialWish({
			trialId: trial.id,
			fittingId,
			field: "wishMass",
			after: "489 g",
			offer: {
				field: "massG",
				value: 489.2,
				sd: 20,
				because: { sessions: 1, shots: 40 },
			},
			requestKey,
		});
	const wishIn = async (number: number) =>
		(await getFitting(number))?.answers.wishMass;

	test("stands in the fitting, is kept with its trial, and goes back to what stood there", async () => {
		const trial = await begin();
		const { id, number } = await fitting({
			wishMass: "530 g",
			stature: "178 cm",
		});
		const wishId = await apply(trial, id);
		expect((await getFitting(number))?.takenWishes).toEqual([
			{ field: "wishMass", after: "489 g", sd: 20, sessions: 1, shots: 40 },
		]);
		expect(await wishIn(number)).toBe("489 g");
		expect((await getFitting(number))?.answers.stature).toBe("178 cm");
		expect((await getTrial(trial.number))?.wishes).toMatchObject([
			{ id: wishId, before: "530 g", after: "489 g", revertedAt: null },
		]);
		expect(await revertTrialWish(wishId)).toEqual({ ok: true });
		expect(await wishIn(number)).toBe("530 g");
		expect((await getFitting(number))?.takenWishes).toEqual([]);
		expect(await revertTrialWish(wishId)).toEqual({ ok: true });
		expect(
			(await getTrial(trial.number))?.wishes[0]?.revertedAt,
		).toBeInstanceOf(Date);
	});
	test("goes on into a refit with its spread where it still stands, and is put back there alone", async () => {
		const trial = await begin();
		const { id, number } = await fitting({});
		await apply(trial, id);
		const refit = async (basedOnFittingId: string) =>
			startFitting({ playerId, requestKey: key(), basedOnFittingId });
		const second = await refit((await refit(id)).id);
		const taken = [
			{ field: "wishMass", after: "489 g", sd: 20, sessions: 1, shots: 40 },
		];
		expect(second.takenWishes).toEqual(taken);
		const wishes = (await getTrial(trial.number))?.wishes ?? [];
		expect(wishes).toHaveLength(3);
		const own = wishes.find((wish) => wish.fitting.id === second.id);
		expect(await revertTrialWish(own?.id ?? "none")).toEqual({ ok: true });
		expect(await wishIn(second.number)).toBeUndefined();
		expect((await getFitting(number))?.takenWishes).toEqual(taken);
		expect((await refit(second.id)).takenWishes).toEqual([]);
	});
	test("left open before, it is left open again", async () => {
		const trial = await begin();
		const { id, number } = await fitting({ stature: "170 cm" });
		await revertTrialWish(await apply(trial, id));
		expect((await getFitting(number))?.answers).toEqual({ stature: "170 cm" });
	});
	test("pressed twice it is set once", async () => {
		const trial = await begin();
		const { id, number } = await fitting({ wishMass: "530 g" });
		const requestKey = key();
		const first = await apply(trial, id, requestKey);
		expect(await apply(trial, id, requestKey)).toBe(first);
		await revertTrialWish(first);
		expect(await wishIn(number)).toBe("530 g");
	});
	test("changed by hand since, it is left alone and told", async () => {
		const trial = await begin();
		const { id, number } = await fitting({});
		const wishId = await apply(trial, id);
		const now = await getFitting(number);
		await saveAnswers({
			fittingId: id,
			answers: { wishMass: "500 g" },
			revision: now?.revision ?? 0,
		});
		expect(await revertTrialWish(wishId)).toEqual({
			ok: false,
			standsNow: "500 g",
		});
		expect(await wishIn(number)).toBe("500 g");
	});
	test("for another player's fitting is refused", async () => {
		const trial = await begin();
		const other = await createPlayer({ name: "Other", requestKey: key() });
		const { id } = await startFitting({
			playerId: other.id,
			requestKey: key(),
		});
		await expect(apply(trial, id)).rejects.toThrow(/two players/);
	});
});
