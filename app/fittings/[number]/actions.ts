"use server";

import { redirect } from "next/navigation";
import { z } from "zod";
import { readReader } from "@/app/_ui/preferences/loaders";
import { recommend } from "@/lib/advice/recommend";
import { isAsSeen, type SeenFigures } from "@/lib/advice/seen";
import { specFrom } from "@/lib/advice/spec";
import { answersSchema, readAnswers } from "@/lib/forms/answers";
import type { Answers } from "@/lib/forms/fields";
import { CHOICES } from "@/lib/forms/fitting-input";
import type { TakenWish } from "@/lib/forms/taken-wishes";
import { problemText, refusalView } from "@/lib/present/notices";
import type { FittingRecord } from "@/lib/records/fittings/data";
import { getFitting } from "@/lib/records/fittings/loaders";
import { saveAnswers, startFitting } from "@/lib/records/fittings/mutations";
import { currentSettings } from "@/lib/records/settings/loaders";
import { saveSpec } from "@/lib/records/specs/mutations";
import { offerOf } from "@/lib/workshop/settings";

/** An action is a public endpoint: whatever comes in is parsed, whoever the type says sent it. */
const numberSchema = z.number().int().min(1);
const keepSchema = z.strictObject({
	fittingId: z.string().min(1).max(64),
	answers: answersSchema,
	revision: numberSchema,
});
const specSchema = z.strictObject({
	fittingNumber: numberSchema,
	revision: numberSchema,
	reason: z.string().trim().max(400),
	requestKey: z.uuid(),
	seen: z.strictObject({
		lengthMm: z.number(),
		massG: z.number(),
		buttDiameterMm: z.number(),
		tipDiameterMm: z.number(),
		buttWood: z.enum(CHOICES.buttWood),
	}),
});

const refitSchema = z.strictObject({
	playerId: z.string().min(1).max(64),
	fittingId: z.string().min(1).max(64),
	requestKey: z.uuid(),
});

interface Current {
	readonly answers: Answers;
	readonly revision: number;
	readonly takenWishes: readonly TakenWish[];
}

export type Kept =
	| { readonly ok: true; readonly revision: number }
	| { readonly ok: false; readonly conflict: Current };

/** Stores the answers as typed; a conflict brings what another device stored meanwhile. */
export async function keepAnswers(request: {
	fittingId: string;
	answers: Answers;
	revision: number;
}): Promise<Kept> {
	const saved = await saveAnswers(keepSchema.parse(request));
	if (saved.ok) return saved;
	if (saved.conflict === null)
		throw new Error(`fitting ${request.fittingId} is gone`);
	return { ok: false, conflict: currentOf(saved.conflict) };
}

/** What the server has by now; null where the fitting is gone. */
export async function currentAnswers(
	fittingNumber: number,
): Promise<Current | null> {
	const fitting = await getFitting(numberSchema.parse(fittingNumber));
	return fitting && currentOf(fitting);
}

const currentOf = (fitting: FittingRecord): Current => ({
	answers: answersSchema.parse(fitting.answers),
	revision: fitting.revision,
	takenWishes: fitting.takenWishes,
});

export type SpecResult =
	| { readonly ok: true; readonly number: number; readonly revision: number }
	| { readonly ok: false; readonly messages: readonly string[] };

/**
 * Computes the advice anew from the stored answers and freezes it. Refused where an answer cannot be
 * read, the build cannot be made, the answers changed since, or the figures are not those that were seen.
 */
export async function freezeSpec(request: {
	fittingNumber: number;
	revision: number;
	reason: string;
	requestKey: string;
	seen: SeenFigures;
}): Promise<SpecResult> {
	const reader = await readReader();
	const { fittingNumber, revision, reason, requestKey, seen } =
		specSchema.parse(request);
	const fitting = await getFitting(fittingNumber);
	if (fitting === null)
		return { ok: false, messages: [`There is no fitting ${fittingNumber}.`] };
	if (fitting.revision !== revision)
		return {
			ok: false,
			messages: [
				"The answers were changed on another device. Look at the figures again, then save.",
			],
		};
	const { input, problems } = readAnswers(
		answersSchema.parse(fitting.answers),
		"metric",
		fitting.takenWishes,
	);
	if (problems.length > 0)
		return {
			ok: false,
			messages: problems.map((problem) => problemText(problem, reader)),
		};
	const workshop = offerOf(await currentSettings());
	const advice = recommend({ ...input, workshop });
	if (advice.ok && !isAsSeen(advice.value, seen))
		return {
			ok: false,
			messages: [
				"The figures computed for saving are not the ones on the page. Reload it, look at them again, then save.",
			],
		};
	const content = advice.ok
		? specFrom(advice.value, advice.value.search)
		: advice;
	if (!content.ok)
		return {
			ok: false,
			messages: content.refusals.map(
				(refusal) => refusalView(refusal, reader).text,
			),
		};
	const saved = await saveSpec({
		fittingId: fitting.id,
		content: content.value,
		reason,
		requestKey,
	});
	return { ok: true, ...saved };
}

/** Begins a new fitting of the same player with this one's answers, and opens it. */
export async function refit(
	request: z.input<typeof refitSchema>,
): Promise<void> {
	const { playerId, fittingId, requestKey } = refitSchema.parse(request);
	const fitting = await startFitting({
		playerId,
		requestKey,
		basedOnFittingId: fittingId,
	});
	redirect(`/fittings/${fitting.number}/player`);
}
