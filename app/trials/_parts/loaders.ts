import "server-only";
import { notFound } from "next/navigation";
import { cache } from "react";
import type { Outcome } from "@/lib/numerics/outcome";
import type { FittingSummary } from "@/lib/records/fittings/data";
import { getFitting, listFittingsOf } from "@/lib/records/fittings/loaders";
import type { RackCueRecord, TrialRecord } from "@/lib/records/trials/data";
import { getTrial, listRack, trialsOf } from "@/lib/records/trials/loaders";
import { questionFrom, targetFrom } from "@/lib/records/trials/question";
import { answerTrial, type TrialAnswer } from "@/lib/trial/answer";
import type { RackCue } from "@/lib/trial/preference";

export interface TrialParams {
	readonly params: Promise<{ number: string }>;
}

const trialNumbered = cache(getTrial);

/** The trial an address names, or the not-found page. */
export async function trialOf({ params }: TrialParams): Promise<TrialRecord> {
	const { number } = await params;
	const trial = /^[1-9]\d{0,8}$/.test(number)
		? await trialNumbered(Number(number))
		: null;
	return trial ?? notFound();
}

/** What all of a player's trials say, with the rack and the last fitting they were read with. */
export async function playerTrials(playerId: string): Promise<{
	rack: RackCueRecord[];
	cues: readonly RackCue[];
	fitting: FittingSummary | null;
	answer: Outcome<TrialAnswer>;
}> {
	const [rack, trials, [latest]] = await Promise.all([
		listRack(),
		trialsOf(playerId),
		listFittingsOf(playerId),
	]);
	const target =
		latest === undefined ? {} : targetFrom(await getFitting(latest.number));
	const question = questionFrom({ rack, trials, target });
	return {
		rack,
		cues: question.rack,
		fitting: latest ?? null,
		answer: answerTrial(question),
	};
}
