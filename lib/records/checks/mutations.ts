import "server-only";
import type { BenchStage } from "@/lib/build/as-built";
import type { Refusal } from "@/lib/numerics/outcome";
import { canonicalJson } from "@/lib/records/canonical";
import {
	type CheckRecord,
	checkContentSchema,
	decisionSchema,
	stageSchema,
} from "@/lib/records/checks/data";
import { countIn, whatIsSaid } from "@/lib/records/checks/evidence";
import { checksOf } from "@/lib/records/checks/loaders";
import { inTransaction } from "@/lib/records/database";
import {
	benchBuild,
	bySchema,
	jobSelection,
	noteSchema,
	toJob,
} from "@/lib/records/jobs/data";
import {
	addEvent,
	editJob,
	type JobEdit,
	type JobSaved,
} from "@/lib/records/jobs/edit";
import { revisionIn } from "@/lib/records/jobs/quotes";
import { carriedOut, once } from "@/lib/records/once";
import { today } from "@/lib/records/settings/loaders";
import { asMeasured } from "@/lib/workshop/as-measured";
import {
	type CheckContent,
	type CheckDecision,
	openFindings,
} from "@/lib/workshop/check";
import { decideRefusals, writeRefusals } from "@/lib/workshop/check-rules";
import { predictionOf, weighedCue } from "@/lib/workshop/weighed-cue";

export interface NewCheck {
	readonly number: number;
	/** The latest check when this one was begun; null where there was none. */
	readonly after: string | null;
	readonly stage: BenchStage;
	readonly content: Omit<CheckContent, "predicted">;
	readonly by: string;
	readonly requestKey: string;
}

/** Written; refused; or somebody else wrote a check meanwhile, which has to be seen first. */
export type CheckSaved =
	| { readonly ok: true; readonly checkId: string }
	| { readonly ok: false; readonly refusals: readonly Refusal[] }
	| { readonly ok: false; readonly conflict: CheckRecord };

/**
 * Writes what was measured, once for each request key. It is kept for good: a slip is put right by
 * another check. Where it tells what the woods weigh, without doubt, it counts for them at once. Refused
 * as lib/workshop/check-rules.ts says; throws where there is no such job.
 */
export async function writeCheck(given: NewCheck): Promise<CheckSaved> {
	const by = bySchema.parse(given.by);
	const stage = stageSchema.parse(given.stage);
	const read = checkContentSchema.parse({ ...given.content, predicted: null });
	const { number, requestKey } = given;
	return inTransaction(async (transaction): Promise<CheckSaved> => {
		const request = { key: requestKey, kind: "write-check" } as const;
		const before = await carriedOut(transaction, request);
		if (before !== null) return { ok: true, checkId: before };
		const row = await transaction.job.findUnique({
			where: { number },
			select: jobSelection,
		});
		if (row === null) throw new Error(`there is no job ${number}`);
		const job = toJob(row);
		const build = benchBuild(job);
		const refusals = writeRefusals({
			state: job.state,
			build,
			stage,
			content: read,
		});
		if (refusals.length > 0) return { ok: false, refusals };
		const [latest] = await checksOf(job.id, transaction);
		if (latest !== undefined && latest.id !== given.after)
			return { ok: false, conflict: latest };
		const weighed = weighedCue(build, stage, read.figures);
		const content: CheckContent = {
			...read,
			predicted: weighed.ok ? predictionOf(weighed.value) : null,
		};
		const checkId = await once(transaction, request, async () => {
			const { id } = await transaction.jobCheck.create({
				data: {
					jobId: job.id,
					stage,
					readings: JSON.parse(canonicalJson(content)),
					by,
					requestKey,
				},
			});
			await addEvent(transaction, {
				jobId: job.id,
				kind: "checked",
				by,
				note: content.note,
				facts: { checkId: id, stage },
				requestKey,
			});
			await transaction.job.update({
				where: { id: job.id },
				data: { revision: { increment: 1 } },
			});
			return id;
		});
		const said = await whatIsSaid(
			job,
			await checksOf(job.id, transaction),
			transaction,
		);
		if (said.ok && said.value.doubt === null)
			await countIn(transaction, {
				job,
				checkId,
				said: said.value.said,
				by,
				requestKey,
			});
		return { ok: true, checkId };
	});
}

/**
 * Decides, by name, what becomes of a cue out of tolerance. Where the customer is to be told what a
 * finished cue came to, the next revision says so and needs the customer's yes. Refused as
 * check-rules.ts says, and as a revision is.
 */
export async function decideCheck({
	checkId,
	decision: given,
	...rest
}: JobEdit & {
	checkId: string;
	decision: CheckDecision;
	by: string;
	note: string;
}): Promise<JobSaved> {
	const by = bySchema.parse(rest.by);
	const note = noteSchema.parse(rest.note);
	const decision = decisionSchema.parse(given);
	return editJob("decide-check", rest, async (transaction, job) => {
		const checks = await checksOf(job.id, transaction);
		const build = benchBuild(job);
		const refusals = decideRefusals({
			build,
			checks,
			checkId,
			decision,
			note,
		});
		if (refusals.length > 0) return { refusals };
		const open = openFindings(build, checks).filter(
			({ check }) => check.id === checkId,
		);
		const stage = open[0]?.check.stage;
		const event = {
			kind: "decided",
			by,
			note,
			facts: { checkId, decision, ...(stage === undefined ? {} : { stage }) },
		} as const;
		if (decision !== "tell-customer" || stage !== "finished")
			return { change: {}, event };
		const revised = await revisionIn(transaction, job, {
			content: asMeasured(job.latest.content, open, today()),
			by,
			reason: note,
			requestKey: rest.requestKey,
		});
		if ("refusals" in revised || revised.change === null) return revised;
		await addEvent(transaction, {
			...revised.event,
			jobId: job.id,
			requestKey: `${rest.requestKey}:revision`,
		});
		return { change: revised.change, event };
	});
}

export type EvidenceTaken =
	| { readonly ok: true }
	| { readonly ok: false; readonly refusals: readonly Refusal[] };

/**
 * Lets the latest check speak for its woods although it was doubted. Refused as evidenceOf says; throws
 * where there is no such job or check.
 */
export async function takeEvidence(given: {
	number: number;
	checkId: string;
	by: string;
	requestKey: string;
}): Promise<EvidenceTaken> {
	const by = bySchema.parse(given.by);
	const { number, checkId, requestKey } = given;
	return inTransaction(async (transaction): Promise<EvidenceTaken> => {
		const request = { key: requestKey, kind: "take-evidence" } as const;
		if ((await carriedOut(transaction, request)) !== null) return { ok: true };
		const row = await transaction.job.findUnique({
			where: { number },
			select: jobSelection,
		});
		if (row === null) throw new Error(`there is no job ${number}`);
		const job = toJob(row);
		const checks = await checksOf(job.id, transaction);
		const from = checks.findIndex(({ id }) => id === checkId);
		if (from < 0) throw new Error(`job ${number} has no check ${checkId}`);
		const said = await whatIsSaid(job, checks.slice(from), transaction);
		if (!said.ok) return said;
		await once(transaction, request, async () => {
			await countIn(transaction, {
				job,
				checkId,
				said: said.value.said,
				by,
				requestKey,
			});
			return checkId;
		});
		return { ok: true };
	});
}
