import "server-only";
import { recommend } from "@/lib/advice/recommend";
import { isAsSeen } from "@/lib/advice/seen";
import { specFrom } from "@/lib/advice/spec";
import { differingFields } from "@/lib/forms/answer-changes";
import { answersSchema, readAnswers } from "@/lib/forms/answers";
import type { KeptAnswer, SaveRequest } from "@/lib/forms/device-sync";
import type { Answers } from "@/lib/forms/fields";
import { problemText, refusalView } from "@/lib/present/notices";
import { openConflicts } from "@/lib/records/fittings/changes";
import type { FittingRecord } from "@/lib/records/fittings/data";
import { currentSettings } from "@/lib/records/settings/loaders";
import { specSavedBy } from "@/lib/records/specs/loaders";
import { saveSpec } from "@/lib/records/specs/mutations";
import type { Reader } from "@/lib/words/reader";
import { offerOf } from "@/lib/workshop/settings";

type Saved = NonNullable<KeptAnswer["saved"]>;

/**
 * Computes the advice anew from the stored answers and freezes it, once for each request key. Refused
 * where an answer cannot be read or is in dispute, the build cannot be made, the answers are not those
 * the device showed, or the figures are not those that were seen.
 */
export async function freezeSpec(
	fitting: FittingRecord,
	{ requestKey, reason, answers: shown, seen }: SaveRequest,
	reader: Reader,
): Promise<Saved> {
	const refused = (...messages: string[]): Saved => ({ ok: false, messages });
	const known = await specSavedBy(requestKey);
	if (known !== null) return { ok: true, ...known };

	const answers = answersSchema.parse(fitting.answers);
	const conflicts = await openConflicts(fitting.id);
	if (conflicts.length > 0) return refused(reader.say("offline.save.conflict"));
	if (differingFields(answers, shown as Answers).length > 0)
		return refused(reader.say("offline.save.otherAnswers"));
	const { input, problems } = readAnswers(
		answers,
		"metric",
		fitting.takenWishes,
	);
	if (problems.length > 0)
		return refused(...problems.map((problem) => problemText(problem, reader)));
	const workshop = offerOf(await currentSettings());
	const advice = recommend({ ...input, workshop });
	if (advice.ok && !isAsSeen(advice.value, seen))
		return refused(reader.say("offline.save.otherFigures"));
	const content = advice.ok
		? specFrom(advice.value, advice.value.search)
		: advice;
	if (!content.ok)
		return refused(
			...content.refusals.map((refusal) => refusalView(refusal, reader).text),
		);
	const saved = await saveSpec({
		fittingId: fitting.id,
		content: content.value,
		reason,
		requestKey,
	});
	return { ok: true, ...saved };
}
