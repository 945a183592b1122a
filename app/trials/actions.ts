"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { readReader } from "@/app/_ui/preferences/loaders";
import {
	rackCueFieldsSchema,
	shotChangesSchema,
	startTrialSchema,
	WISH_OF,
	wishAnswer,
} from "@/lib/forms/trial";
import { getFitting, listFittingsOf } from "@/lib/records/fittings/loaders";
import { getTrial, listRack, trialsOf } from "@/lib/records/trials/loaders";
import {
	endTrial,
	keepShots,
	type ShotsKept,
	startTrial,
} from "@/lib/records/trials/mutations";
import { questionFrom, targetFrom } from "@/lib/records/trials/question";
import {
	addDemoRack,
	addRackCue,
	changeRackCue,
	retireRackCue,
} from "@/lib/records/trials/rack";
import {
	applyTrialWish,
	revertTrialWish,
	type WishReverted,
} from "@/lib/records/trials/wishes";
import { answerTrial } from "@/lib/trial/answer";
import { TRIAL_FIELDS } from "@/lib/trial/assumptions";

/** An action is a public endpoint: whatever comes in is parsed, whoever the type says sent it. */
const idSchema = z.string().min(1).max(64);
const keySchema = z.uuid();
const revisionSchema = z.number().int().min(1);

const beginSchema = startTrialSchema.extend({ requestKey: keySchema });
const keepSchema = z.strictObject({
	trialId: idSchema,
	changes: shotChangesSchema,
});
const cueSchema = z.strictObject({
	id: idSchema.nullable(),
	revision: revisionSchema,
	fields: rackCueFieldsSchema,
	requestKey: keySchema,
});
const retireSchema = z.strictObject({
	id: idSchema,
	isRetired: z.boolean(),
});
const wishSchema = z.strictObject({
	trialNumber: z.number().int().min(1),
	field: z.enum(TRIAL_FIELDS),
	/** The answer as it was shown; what is computed now must still come to it. */
	answer: z.string().max(40),
	requestKey: keySchema,
});

/** Deals the order by chance and opens the trial. */
export async function begin(
	request: z.input<typeof beginSchema>,
): Promise<void> {
	const asked = beginSchema.parse(request);
	const seed = crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;
	const trial = await startTrial({ ...asked, seed });
	redirect(`/trials/${trial.number}`);
}

/** Stores shots as they come; throws where the trial is gone. */
export async function keep(
	request: z.input<typeof keepSchema>,
): Promise<ShotsKept> {
	const { trialId, changes } = keepSchema.parse(request);
	const kept = await keepShots(trialId, changes);
	if (kept === null) throw new Error(`trial ${trialId} is gone`);
	return kept;
}

export async function end(trialId: string): Promise<void> {
	if (!(await endTrial(idSchema.parse(trialId))))
		throw new Error(`trial ${trialId} is gone`);
}

export type CueKept =
	| { readonly ok: true; readonly revision: number }
	| { readonly ok: false; readonly message: string };

/** Adds a cue to the rack, or changes one. */
export async function keepCue(
	request: z.input<typeof cueSchema>,
): Promise<CueKept> {
	const { id, revision, fields, requestKey } = cueSchema.parse(request);
	if (id === null) {
		const added = await addRackCue({ ...fields, requestKey });
		return { ok: true, revision: added.revision };
	}
	const { say } = await readReader();
	const saved = await changeRackCue({ id, revision, fields });
	return saved.ok
		? { ok: true, revision: saved.cue.revision }
		: {
				ok: false,
				message:
					saved.conflict === null
						? say("trials.form.gone")
						: say("trials.form.changed"),
			};
}

/** Takes a cue off the rack, or puts it back. */
export async function retireCue(
	request: z.input<typeof retireSchema>,
): Promise<void> {
	const { id, isRetired } = retireSchema.parse(request);
	await retireRackCue(id, isRetired);
	revalidatePath("/trials/rack");
}

export async function fillWithInvented(): Promise<void> {
	await addDemoRack();
	revalidatePath("/trials/rack");
}

export type WishSet =
	| { readonly ok: true }
	| { readonly ok: false; readonly message: string };

/**
 * Sets a wish of the player's last fitting from what the trials say, computed anew; refused where it
 * no longer comes to what was shown.
 */
export async function setWish(
	request: z.input<typeof wishSchema>,
): Promise<WishSet> {
	const { trialNumber, field, answer, requestKey } = wishSchema.parse(request);
	const { say } = await readReader();
	const trial = await getTrial(trialNumber);
	const wish = WISH_OF[field];
	if (trial === null || wish === null)
		return { ok: false, message: say("trials.offer.noSuch") };
	const [latest] = await listFittingsOf(trial.player.id);
	if (latest === undefined)
		return { ok: false, message: say("trials.offer.noFitting") };
	const answered = answerTrial(
		questionFrom({
			rack: await listRack(),
			trials: await trialsOf(trial.player.id),
			target: targetFrom(await getFitting(latest.number)),
		}),
	);
	const offer = answered.ok
		? answered.value.wishUpdates.find((update) => update.field === field)
		: undefined;
	if (offer === undefined || wishAnswer(field, offer.value) !== answer)
		return {
			ok: false,
			message: say("trials.offer.otherNow"),
		};
	await applyTrialWish({
		trialId: trial.id,
		fittingId: latest.id,
		field: wish,
		after: answer,
		offer,
		requestKey,
	});
	revalidatePath(`/trials/${trialNumber}/results`);
	revalidatePath("/fittings/[number]", "layout");
	return { ok: true };
}

/** Puts back what stood there before. */
export async function putWishBack(
	wishId: string,
	trialNumber: number,
): Promise<WishReverted> {
	const reverted = await revertTrialWish(idSchema.parse(wishId));
	revalidatePath(`/trials/${z.number().int().parse(trialNumber)}/results`);
	revalidatePath("/fittings/[number]", "layout");
	return reverted;
}
