"use client";

import { Button, LinkButton } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { Section } from "@/app/_ui/section";
import { type Answer, sameAnswer } from "@/lib/forms/answer-changes";
import type { Origin } from "@/lib/forms/device-sync";
import type { FieldName } from "@/lib/forms/fields";
import { choiceLabel, fieldLabel } from "@/lib/present/labels";
import { OriginWords } from "./conflicts";
import { useDesk, useKeeping } from "./desk";
import { QUESTION_STEPS } from "./steps";
import { useWay } from "./way";

export interface ListedChange {
	readonly id: string;
	readonly field: FieldName;
	readonly after: Answer;
	/** It took the place of a value its device had not seen. */
	readonly hasOverridden: boolean;
	readonly from: Origin;
}

/** Typing leaves one change a pause behind; what the same device typed on with within this is one. */
const SAME_TYPING_MS = 60_000;

/** Newest first: what was typed on with at once is left out, unless it is in dispute. */
function worthTelling(changes: readonly ListedChange[]): ListedChange[] {
	return changes.filter((change, i) => {
		const next = changes
			.slice(0, i)
			.findLast(({ field }) => field === change.field);
		return (
			next === undefined ||
			next.hasOverridden ||
			next.from.deviceId !== change.from.deviceId ||
			Date.parse(next.from.at ?? "") - Date.parse(change.from.at ?? "") >
				SAME_TYPING_MS
		);
	});
}

/** The values answers had, with a button to use one again. */
export function ChangeList({ changes }: { changes: readonly ListedChange[] }) {
	const { keeper, reader } = useDesk();
	const { say } = reader;
	const { answers } = useKeeping();
	const { hrefOf } = useWay();
	const textOf = (field: FieldName, answer: Answer) =>
		[answer ?? []]
			.flat()
			.map((text) => choiceLabel(field, text, reader))
			.join(", ") || say("offline.conflict.leftOut");
	const rows = worthTelling(changes).map(({ id, field, after, from }) => ({
		id,
		question: fieldLabel(field, reader),
		answer: textOf(field, after),
		from: <OriginWords from={from} />,
		again: sameAnswer(answers[field], after) ? (
			say("offline.conflict.stands")
		) : (
			<Button onClick={() => keeper.type([[field, after]])}>
				{say("offline.changes.again")}
			</Button>
		),
	}));
	return (
		<Section
			title={say("offline.changes.title")}
			lead={say("offline.changes.lead")}
			actions={
				<LinkButton href={hrefOf(QUESTION_STEPS[0]?.id ?? "")}>
					{say("offline.changes.back")}
				</LinkButton>
			}
		>
			{rows.length === 0 ? (
				<p>{say("offline.changes.none")}</p>
			) : (
				<DataTable
					caption={say("offline.changes.title")}
					captionHidden
					columns={[
						{ key: "question", label: say("offline.changes.question") },
						{ key: "answer", label: say("offline.changes.answer") },
						{ key: "from", label: say("offline.changes.from") },
						{ key: "again", label: say("offline.changes.use") },
					]}
					rows={rows}
					rowKey="id"
				/>
			)}
		</Section>
	);
}
