import "server-only";
import type { DatabaseTransaction } from "@/lib/records/database";
import type { DemoPlan, KeptDemo } from "@/lib/records/demo/data";

const id = { id: true } as const;
const real = { isDemo: false } as const;

/**
 * Every row marked as invented, less those that something real hangs on: a real job keeps the invented
 * spec it was made from, that spec its fitting, and the fitting its player. Nothing real is in it.
 */
export async function planRemoval(
	transaction: DatabaseTransaction,
): Promise<DemoPlan> {
	const kept: KeptDemo[] = [];
	const keeping = <Row extends { readonly id: string }>(
		rows: readonly Row[],
		whyOf: (row: Row) => KeptDemo | null,
	): { going: Row[]; staying: ReadonlySet<string> } => {
		const going: Row[] = [];
		const staying = new Set<string>();
		for (const row of rows) {
			const why = whyOf(row);
			if (why === null) going.push(row);
			else {
				kept.push(why);
				staying.add(row.id);
			}
		}
		return { going, staying };
	};

	const jobs = keeping(
		await transaction.job.findMany({
			where: { isDemo: true },
			select: {
				...id,
				number: true,
				playerCue: { select: { isDemo: true } },
				evidence: { where: real, select: id, take: 1 },
			},
		}),
		({ number, playerCue, evidence }) => {
			const because =
				playerCue?.isDemo === false
					? "cue"
					: evidence.length > 0
						? "evidence"
						: null;
			return because && { kind: "jobs", name: String(number), because };
		},
	);
	/** A job that stays: a real one, or one of those above. */
	const standing = {
		OR: [real, { id: { in: [...jobs.staying] } }],
	};
	const onlineCues = keeping(
		await transaction.onlineCue.findMany({
			where: { isDemo: true },
			select: { ...id, jobs: { where: standing, select: { number: true } } },
		}),
		({ jobs: [job] }) =>
			job
				? { kind: "onlineCues", name: String(job.number), because: "job" }
				: null,
	);
	const trials = keeping(
		await transaction.trial.findMany({
			where: { isDemo: true },
			select: {
				...id,
				number: true,
				wishes: { where: { fitting: real }, select: id, take: 1 },
			},
		}),
		({ number, wishes }) =>
			wishes.length > 0
				? { kind: "trials", name: String(number), because: "fitting" }
				: null,
	);
	const fittings = keeping(
		await transaction.fitting.findMany({
			where: { isDemo: true },
			select: {
				...id,
				number: true,
				spec: {
					select: {
						...id,
						revisions: {
							where: { jobs: { some: standing } },
							select: id,
							take: 1,
						},
					},
				},
				trialWishes: {
					where: {
						trial: { OR: [real, { id: { in: [...trials.staying] } }] },
					},
					select: id,
					take: 1,
				},
			},
		}),
		({ number, spec, trialWishes }) => {
			const because =
				(spec?.revisions.length ?? 0) > 0
					? "job"
					: trialWishes.length > 0
						? "trial"
						: null;
			return because && { kind: "fittings", name: String(number), because };
		},
	);
	const some = (where: object) => ({ where, select: id, take: 1 }) as const;
	const players = keeping(
		await transaction.player.findMany({
			where: { isDemo: true },
			orderBy: { name: "asc" },
			select: {
				...id,
				name: true,
				fittings: some({
					OR: [real, { id: { in: [...fittings.staying] } }],
				}),
				trials: some({ OR: [real, { id: { in: [...trials.staying] } }] }),
				cues: some(real),
				diary: some(real),
				jobs: some(standing),
			},
		}),
		({
			name,
			fittings: ofPlayer,
			trials: played,
			cues,
			diary,
			jobs: asked,
		}) => {
			const because =
				ofPlayer.length > 0
					? "fitting"
					: asked.length > 0
						? "job"
						: played.length > 0
							? "trial"
							: cues.length > 0
								? "cue"
								: diary.length > 0
									? "note"
									: null;
			return because && { kind: "players", name, because };
		},
	);
	const marked = { where: { isDemo: true }, select: id } as const;
	const idsOf = (rows: readonly { readonly id: string }[]) =>
		rows.map((row) => row.id);
	const ids: DemoPlan["ids"] = {
		jobs: idsOf(jobs.going),
		onlineCues: idsOf(onlineCues.going),
		trials: idsOf(trials.going),
		fittings: idsOf(fittings.going),
		specs: fittings.going.flatMap(({ spec }) => (spec ? [spec.id] : [])),
		players: idsOf(players.going),
		notes: idsOf(await transaction.playerNote.findMany(marked)),
		playerCues: idsOf(await transaction.playerCue.findMany(marked)),
		rackCues: idsOf(await transaction.trialCue.findMany(marked)),
		evidence: idsOf(await transaction.woodEvidence.findMany(marked)),
		settings: idsOf(await transaction.settingVersion.findMany(marked)),
	};
	return {
		ids,
		inventory: {
			counts: Object.fromEntries(
				Object.entries(ids).map(([kind, list]) => [kind, list.length]),
			) as DemoPlan["inventory"]["counts"],
			players: players.going.map(({ name }) => name),
			kept,
		},
	};
}
