"use server";

import { revalidatePath } from "next/cache";
import type { z } from "zod";
import { readReader } from "@/app/_ui/preferences/loaders";
import {
	decideCheckSchema,
	evidenceSchema,
	readCheck,
	takeEvidenceSchema,
	writeCheckSchema,
} from "@/lib/forms/check";
import type { Refusal } from "@/lib/numerics/outcome";
import { stageName } from "@/lib/present/check-view";
import { formatDay } from "@/lib/present/dates";
import { refusalView } from "@/lib/present/notices";
import {
	decideCheck,
	takeEvidence,
	writeCheck,
} from "@/lib/records/checks/mutations";
import { benchBuild } from "@/lib/records/jobs/data";
import { getJob } from "@/lib/records/jobs/loaders";
import {
	restoreEvidence,
	withdrawEvidence,
} from "@/lib/records/wood-evidence/mutations";
import { woodsOf } from "@/lib/workshop/check-rules";
import type { ActionResult } from "../../actions";

/** There is no sign-in yet: whoever reaches the app works at its bench. */
async function mayMeasure(): Promise<void> {}

async function refused(refusals: readonly Refusal[]): Promise<ActionResult> {
	const reader = await readReader();
	return {
		ok: false,
		messages: refusals.map((refusal) => refusalView(refusal, reader).text),
	};
}

/** Writes what was measured; texts are read in the units of whoever typed them. */
export async function write(
	request: z.input<typeof writeCheckSchema>,
): Promise<ActionResult> {
	await mayMeasure();
	const { texts, note, ...given } = writeCheckSchema.parse(request);
	const reader = await readReader();
	const { say } = reader;
	const job = await getJob(given.number);
	if (job === null) return { ok: false, messages: [say("job.gone")] };
	const build = benchBuild(job);
	const read = readCheck({
		stage: given.stage,
		texts,
		note,
		stationsMm: build.stations.map(({ stationMm }) => stationMm),
		woods: woodsOf(build),
		system: reader.system,
	});
	if (!read.ok) return { ok: false, messages: [say("checks.form.wrong")] };
	const saved = await writeCheck({ ...given, content: read.content });
	if (saved.ok) return { ok: true };
	if ("refusals" in saved) return refused(saved.refusals);
	const { by, stage, createdAt } = saved.conflict;
	return {
		ok: false,
		messages: [
			say("checks.form.conflict", {
				by,
				stage: stageName(stage, reader),
				when: formatDay(createdAt, reader),
			}),
		],
	};
}

/** Decides what becomes of a cue out of tolerance. */
export async function decide(
	request: z.input<typeof decideCheckSchema>,
): Promise<ActionResult> {
	await mayMeasure();
	const saved = await decideCheck(decideCheckSchema.parse(request));
	if (saved.ok) return { ok: true };
	if ("refusals" in saved) return refused(saved.refusals);
	const { say } = await readReader();
	return {
		ok: false,
		messages: [say(saved.conflict === null ? "job.gone" : "job.conflict")],
	};
}

/** Lets a doubted check count for its woods. */
export async function take(
	request: z.input<typeof takeEvidenceSchema>,
): Promise<ActionResult> {
	await mayMeasure();
	const taken = await takeEvidence(takeEvidenceSchema.parse(request));
	return taken.ok ? { ok: true } : refused(taken.refusals);
}

/** Takes evidence out of its wood's band. */
export async function withdraw(
	request: z.input<typeof evidenceSchema>,
): Promise<ActionResult> {
	await mayMeasure();
	const saved = await withdrawEvidence(evidenceSchema.parse(request));
	revalidatePath("/workshop/woods");
	return saved.ok ? { ok: true } : refused(saved.refusals);
}

/** Lets withdrawn evidence count again. */
export async function restore(
	request: z.input<typeof evidenceSchema>,
): Promise<ActionResult> {
	await mayMeasure();
	const saved = await restoreEvidence(evidenceSchema.parse(request));
	revalidatePath("/workshop/woods");
	return saved.ok ? { ok: true } : refused(saved.refusals);
}
