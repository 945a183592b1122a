"use client";

import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { useOnDevice } from "@/app/_ui/use-on-device";
import { type Answer, sameAnswer } from "@/lib/forms/answer-changes";
import type { AnswerConflict, Origin } from "@/lib/forms/device-sync";
import type { FieldName } from "@/lib/forms/fields";
import { choiceLabel, fieldLabel } from "@/lib/present/labels";
import { formatMoment } from "@/lib/present/moments";
import { useDesk, useKeeping } from "./desk";
import styles from "./keeping.module.css";

interface Value {
	readonly answer: Answer;
	readonly from: Origin | null;
}

/** Each value that was given once, the one that stands first. */
function valuesOf(
	conflicts: readonly AnswerConflict[],
	stands: Answer,
): readonly Value[] {
	const given = conflicts.flatMap(({ came, stood }) => [came, stood]);
	const known = given.findLast(({ answer }) => sameAnswer(answer, stands));
	const values: Value[] = [{ answer: stands, from: known?.from ?? null }];
	for (const value of given)
		if (!values.some(({ answer }) => sameAnswer(answer, value.answer)))
			values.push(value);
	return values;
}

/** Answers that two devices gave differently, in ignorance of each other: one tap chooses, none is lost. */
export function Conflicts() {
	const { say } = useReader();
	const { conflicts } = useKeeping();
	if (conflicts.length === 0) return null;
	const fields = [...new Set(conflicts.map(({ field }) => field))];
	return (
		<Notice kind="caution" title={say("offline.conflict.title")} live>
			<p>{say("offline.conflict.about")}</p>
			{fields.map((field) => (
				<Choice
					key={field}
					field={field}
					conflicts={conflicts.filter((one) => one.field === field)}
				/>
			))}
		</Notice>
	);
}

function Choice({
	field,
	conflicts,
}: {
	field: FieldName;
	conflicts: readonly AnswerConflict[];
}) {
	const { keeper, reader } = useDesk();
	const { say } = reader;
	const { answers } = useKeeping();
	const stands = answers[field] ?? null;
	return (
		<fieldset className={styles.choice}>
			<legend>{fieldLabel(field, reader)}</legend>
			<div className={styles.values}>
				{valuesOf(conflicts, stands).map(({ answer, from }, i) => (
					<button
						key={JSON.stringify(answer)}
						type="button"
						className={styles.value}
						onClick={() => keeper.settle(field, answer)}
					>
						<strong>
							{[answer ?? []]
								.flat()
								.map((text) => choiceLabel(field, text, reader))
								.join(", ") || say("offline.conflict.leftOut")}
						</strong>
						<OriginWords from={from} />
						{i === 0 && <span>{say("offline.conflict.stands")}</span>}
					</button>
				))}
			</div>
		</fieldset>
	);
}

/** Whose word a value is and when it was given. */
export function OriginWords({ from }: { from: Origin | null }) {
	const { say, language } = useReader();
	const isOnDevice = useOnDevice();
	if (from === null) return <span>{say("offline.origin.server")}</span>;
	const device = from.deviceName || say("offline.origin.unnamed");
	const moment =
		from.at === null || !isOnDevice
			? say("offline.origin.someTime")
			: formatMoment(new Date(from.at), { language }, { now: new Date() });
	return (
		<span>
			{from.by === ""
				? say("offline.origin.device", { device, moment })
				: say("offline.origin.person", { by: from.by, device, moment })}
		</span>
	);
}
