import "server-only";
import {
	type ShotChange,
	type StartTrial,
	type TrialPlan,
	trialPlanSchema,
} from "@/lib/forms/trial";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";
import { takeNumber } from "@/lib/records/numbers";
import { once } from "@/lib/records/once";
import {
	type ShotRecord,
	shotSelection,
	standing,
	type TrialRecord,
	toRackCue,
	toShot,
	toTrial,
	trialSelection,
} from "@/lib/records/trials/data";
import { seededChance, shuffled } from "@/lib/trial/chance";
import { balancedOrder, LETTERS, slotAt } from "@/lib/trial/order";

/**
 * Starts a trial, once for each request key: deals the letters and the order by the seed and keeps
 * the cues' figures as they are now. Throws where the player or a cue is not there.
 */
export async function startTrial({
	requestKey,
	seed,
	...asked
}: StartTrial & { requestKey: string; seed: number }): Promise<TrialRecord> {
	return inTransaction(async (transaction) => {
		const id = await once(
			transaction,
			{ key: requestKey, kind: "start-trial" },
			async () => {
				const player = await transaction.player.findUnique({
					where: { id: asked.playerId },
				});
				if (!player) throw new Error(`there is no player ${asked.playerId}`);
				const plan = await planOf(transaction, asked, seed);
				const created = await transaction.trial.create({
					data: {
						number: await takeNumber(transaction, "trial"),
						playerId: player.id,
						plan,
						isDemo: player.isDemo,
					},
				});
				return created.id;
			},
		);
		return toTrial(
			await transaction.trial.findUniqueOrThrow({
				where: { id },
				select: trialSelection,
			}),
		);
	});
}

async function planOf(
	transaction: DatabaseTransaction,
	{ cueIds, shotsEach, shotsPerTurn, isPaired, isHidden }: StartTrial,
	seed: number,
): Promise<TrialPlan> {
	const chance = seededChance(seed);
	const rows = await transaction.trialCue.findMany({
		where: { id: { in: cueIds }, retiredAt: null },
	});
	const dealt = shuffled(cueIds, chance);
	const cues = dealt.map((cueId, i) => {
		const row = rows.find(({ id }) => id === cueId);
		if (row === undefined)
			throw new Error(`there is no cue ${cueId} on the rack`);
		const { name, lengthMm, massG, buttDiameterMm, tipDiameterMm, ...rest } =
			toRackCue(row);
		return {
			letter: LETTERS[i] ?? "A",
			cueId,
			name,
			lengthMm,
			massG,
			buttDiameterMm,
			tipDiameterMm,
			balanceFromButtMm: rest.balanceFromButtMm,
		};
	});
	const order = balancedOrder({
		cueCount: cueIds.length,
		roundCount: Math.ceil(shotsEach / shotsPerTurn),
		shotsPerTurn,
		chance,
	});
	return trialPlanSchema.parse({
		cues,
		rounds: order.rounds,
		shotsPerTurn,
		isPaired,
		isHidden,
	});
}

/** The shots as they stand after the changes; `refused` are the changes that could not be made. */
export interface ShotsKept {
	readonly shots: readonly ShotRecord[];
	readonly hasEnded: boolean;
	/** Request keys of shots that another device was faster with, or that came after the end. */
	readonly refused: readonly string[];
}

/**
 * Carries out a device's changes in their order. A shot sent again changes nothing but its own line
 * and position; a shot taken back stays taken back, however often it is sent again. Refused: a shot
 * that is not the next one, any change after the end, taking back a shot that is not the last.
 * Null where there is no such trial.
 */
export async function keepShots(
	trialId: string,
	changes: readonly ShotChange[],
): Promise<ShotsKept | null> {
	return inTransaction(async (transaction) => {
		// The trial's row first: on a database with several writers this is what makes them take turns.
		const { count } = await transaction.trial.updateMany({
			where: { id: trialId },
			data: { updatedAt: new Date() },
		});
		if (count === 0) return null;
		const trial = await transaction.trial.findUniqueOrThrow({
			where: { id: trialId },
			select: { plan: true, endedAt: true },
		});
		const plan = trialPlanSchema.parse(trial.plan);
		const hasEnded = trial.endedAt !== null;
		const refused: string[] = [];
		for (const change of changes) {
			const isDone =
				!hasEnded &&
				(change.kind === "put"
					? await putShot(transaction, trialId, plan, change)
					: await takeBack(transaction, trialId, change.requestKey));
			if (!isDone) refused.push(change.requestKey);
		}
		const shots = await transaction.trialShot.findMany({
			where: { trialId, ...standing },
			select: shotSelection,
			orderBy: { shotNumber: "asc" },
		});
		return { shots: shots.map(toShot), hasEnded, refused };
	});
}

async function putShot(
	transaction: DatabaseTransaction,
	trialId: string,
	plan: TrialPlan,
	change: Extract<ShotChange, { kind: "put" }>,
): Promise<boolean> {
	const { requestKey, shotNumber, isPotted } = change;
	const noted = {
		line: change.line ?? null,
		position: change.position ?? null,
	};
	const known = await transaction.trialShot.findUnique({
		where: { requestKey },
	});
	if (known !== null) {
		if (known.trialId !== trialId)
			throw new Error(`shot ${requestKey} belongs to another trial`);
		if (known.undoneAt === null)
			await transaction.trialShot.update({
				where: { requestKey },
				data: noted,
			});
		return true;
	}
	const slot = slotAt(plan, shotNumber);
	const next = await transaction.trialShot.count({
		where: { trialId, ...standing },
	});
	if (slot === null || shotNumber !== next) return false;
	await transaction.trialShot.create({
		data: {
			trialId,
			shotNumber,
			letter: slot.letter,
			isPotted,
			...noted,
			place: `${trialId}:${shotNumber}`,
			requestKey,
		},
	});
	return true;
}

async function takeBack(
	transaction: DatabaseTransaction,
	trialId: string,
	requestKey: string,
): Promise<boolean> {
	const known = await transaction.trialShot.findUnique({
		where: { requestKey, trialId },
	});
	// Taken back before it ever arrived, or already: nothing is left to do.
	if (known === null || known.undoneAt !== null) return true;
	const later = await transaction.trialShot.count({
		where: { trialId, ...standing, shotNumber: { gt: known.shotNumber } },
	});
	if (later > 0) return false;
	await transaction.trialShot.update({
		where: { requestKey },
		data: { undoneAt: new Date(), place: null },
	});
	return true;
}

/** Ends a trial; ended again it stays ended as it was. False where there is no such trial. */
export async function endTrial(trialId: string): Promise<boolean> {
	return inTransaction(async (transaction) => {
		await transaction.trial.updateMany({
			where: { id: trialId, endedAt: null },
			data: { endedAt: new Date() },
		});
		return (await transaction.trial.count({ where: { id: trialId } })) === 1;
	});
}
