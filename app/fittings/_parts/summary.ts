import "server-only";
import { contentOf } from "@/app/specs/_parts/loaders";
import { advise } from "@/lib/advice/advise";
import { recommend } from "@/lib/advice/recommend";
import { answersSchema, readAnswers } from "@/lib/forms/answers";
import { isFieldName } from "@/lib/forms/device-sync";
import { refusalView } from "@/lib/present/notices";
import { type SummaryHead, summaryHead } from "@/lib/present/summary-head";
import {
	type SummarySource,
	type SummaryView,
	summarySource,
	summaryView,
} from "@/lib/present/summary-view";
import { openConflicts } from "@/lib/records/fittings/changes";
import type { FittingRecord } from "@/lib/records/fittings/data";
import { getFitting } from "@/lib/records/fittings/loaders";
import { currentSettings, today } from "@/lib/records/settings/loaders";
import { getSpecRevision } from "@/lib/records/specs/loaders";
import type { Reader } from "@/lib/words/reader";
import { offerOf } from "@/lib/workshop/settings";

export type Summary =
	| {
			readonly ok: true;
			readonly fitting: FittingRecord;
			readonly head: SummaryHead;
			readonly view: SummaryView;
	  }
	| {
			readonly ok: false;
			readonly fitting: FittingRecord;
			readonly messages: readonly string[];
	  };

/**
 * What the player of a fitting takes home: of the spec last saved, or of the advice as it stands while
 * none is. Null where there is no such fitting.
 */
export async function summaryOf(
	number: string,
	reader: Reader,
): Promise<Summary | null> {
	const fitting = /^[1-9]\d{0,8}$/.test(number)
		? await getFitting(Number(number))
		: null;
	if (fitting === null) return null;
	const { header, ...settings } = await currentSettings();
	const answers = answersSchema.parse(fitting.answers);
	const spec = fitting.spec && (await getSpecRevision(fitting.spec.number));
	const read = readAnswers(answers, "metric", fitting.takenWishes);
	const input = { ...read.input, workshop: offerOf({ header, ...settings }) };
	let source: SummarySource;
	if (spec !== null) source = contentOf(spec.content);
	else {
		const advice = recommend(input);
		if (!advice.ok)
			return {
				ok: false,
				fitting,
				messages: advice.refusals.map(
					(refusal) => refusalView(refusal, reader).text,
				),
			};
		source = summarySource(advice.value);
	}
	const around = advise(source.input);
	if (!around.ok)
		return {
			ok: false,
			fitting,
			messages: around.refusals.map(
				(refusal) => refusalView(refusal, reader).text,
			),
		};
	const conflicts = await openConflicts(fitting.id);
	return {
		ok: true,
		fitting,
		head: summaryHead(
			{
				playerName: fitting.player.name,
				fittingNumber: fitting.number,
				answeredAt: fitting.updatedAt,
				spec: spec && {
					number: spec.number,
					revision: spec.revision,
					savedAt: spec.createdAt,
				},
				modelVersion: source.modelVersion,
				workshop: header,
			},
			reader,
		),
		view: summaryView(
			{
				source,
				around: around.value,
				answers,
				disputed: [
					...new Set(conflicts.map(({ field }) => field).filter(isFieldName)),
				],
				spec,
				today: today(new Date()),
			},
			reader,
		),
	};
}
