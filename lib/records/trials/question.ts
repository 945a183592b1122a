import "server-only";
import { advise } from "@/lib/advice/advise";
import { answersSchema, readAnswers } from "@/lib/forms/answers";
import type { FittingRecord } from "@/lib/records/fittings/data";
import type { RackCueRecord, TrialRecord } from "@/lib/records/trials/data";
import type { TrialQuestion, TrialSession } from "@/lib/trial/answer";
import { TRIAL_FIELDS } from "@/lib/trial/assumptions";
import { type Letter, shotsPlanned, slotAt } from "@/lib/trial/order";
import type { RackCue, Target } from "@/lib/trial/preference";
import type { Shot } from "@/lib/trial/shots";

type Named = Pick<RackCue, "id" | "name"> &
	Pick<RackCueRecord, (typeof TRIAL_FIELDS)[number]>;

const sameFigures = (one: Named, other: Named): boolean =>
	TRIAL_FIELDS.every((field) => one[field] === other[field]);

/**
 * The rack and a player's trials as the computation takes them. A cue whose figures were changed
 * after a trial stands for that trial as a cue of its own, with the figures it had.
 */
export function questionFrom({
	rack,
	trials,
	target,
}: {
	rack: readonly RackCueRecord[];
	trials: readonly TrialRecord[];
	target: Target;
}): TrialQuestion {
	const cues = new Map<string, RackCue>(
		rack
			.filter(({ retiredAt }) => retiredAt === null)
			.map((cue) => [cue.id, plain(cue, true)]),
	);
	const sessions = trials
		.filter(({ shots }) => shots.length > 0)
		.map((trial) => {
			const ids = new Map<Letter, string>(
				trial.plan.cues.map(({ letter, cueId, ...figures }) => {
					const cue = { ...figures, id: cueId };
					const known = cues.get(cueId);
					if (known !== undefined && sameFigures(known, cue))
						return [letter, cueId];
					const id =
						known === undefined ? cueId : `${cueId} in trial ${trial.number}`;
					cues.set(id, plain({ ...cue, id }, false));
					return [letter, id];
				}),
			);
			return sessionFrom(trial, (letter) => ids.get(letter) ?? letter);
		});
	return { rack: [...cues.values()], sessions, target };
}

const plain = (cue: Named, isAvailable: boolean): RackCue => ({
	id: cue.id,
	name: cue.name,
	lengthMm: cue.lengthMm,
	massG: cue.massG,
	buttDiameterMm: cue.buttDiameterMm,
	tipDiameterMm: cue.tipDiameterMm,
	balanceFromButtMm: cue.balanceFromButtMm,
	isAvailable,
});

/** One trial's shots; `cueIdOf` names the cue behind a letter. */
export function sessionFrom(
	{ plan, shots }: Pick<TrialRecord, "plan" | "shots">,
	cueIdOf: (letter: Letter) => string,
): TrialSession {
	return {
		isPaired: plan.isPaired,
		plannedShots: shotsPlanned(plan),
		shots: shots.map(
			({ shotNumber, letter, isPotted, line, position }): Shot => {
				const slot = slotAt(plan, shotNumber);
				if (slot === null)
					throw new RangeError(
						`shot ${shotNumber} is past the end of its trial`,
					);
				return {
					cueId: cueIdOf(letter),
					isPotted,
					line,
					position,
					round: slot.round,
					...(plan.isPaired ? { pair: slot.pair } : {}),
				};
			},
		),
	};
}

/**
 * What the advice holds best for the player of a fitting, before any wish of theirs: a wish is what
 * the trials are to question. Nothing where there is no fitting or no advice.
 */
export function targetFrom(fitting: FittingRecord | null): Target {
	if (fitting === null) return {};
	const { input } = readAnswers(answersSchema.parse(fitting.answers));
	const {
		lengthMm: _length,
		massG: _mass,
		buttDiameterMm: _butt,
		tipDiameterMm: _tip,
		...wishes
	} = input.wishes;
	const advice = advise({ ...input, wishes });
	if (!advice.ok) return {};
	const { length, mass, butt, tip } = advice.value;
	const belief = ({ exact, sd }: { exact: number; sd: number }) => ({
		value: exact,
		sd,
	});
	return {
		lengthMm: belief(length),
		massG: belief(mass),
		buttDiameterMm: belief(butt.figure),
		tipDiameterMm: belief(tip),
	};
}
