"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { ChoiceField } from "@/app/_ui/fields/choice-field";
import { TextField } from "@/app/_ui/fields/text-field";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Columns, Stack } from "@/app/_ui/section";
import {
	BENCH_STAGES,
	type BenchStage,
	type BuildToHold,
	compareAsBuilt,
} from "@/lib/build/as-built";
import { type CheckTexts, FIELDS_AT, readCheck } from "@/lib/forms/check";
import { stageName } from "@/lib/present/check-view";
import type { WoodId } from "@/lib/reference/woods";
import { StepMessages, useStep } from "../../../_parts/job-desk";
import { write } from "../actions";
import { BilletFields } from "./billet-fields";
import { FigureField } from "./figure-field";
import { StationFields } from "./station-fields";

/** What the bench measured, typed in: held to the sheet while it is typed, saved as one check. */
export function CheckForm({
	after,
	firstStage,
	build,
	woods,
	plannedMetal,
}: {
	/** The latest check that the page shows. */
	after: string | null;
	firstStage: BenchStage;
	build: BuildToHold;
	woods: readonly WoodId[];
	/** In words; null where the sheet plans none. */
	plannedMetal: string | null;
}) {
	const reader = useReader();
	const { say, system } = reader;
	const { run, isBusy, messages, setMessages } = useStep();
	const [stage, setStage] = useState(firstStage);
	const [texts, setTexts] = useState<CheckTexts>({});
	const [note, setNote] = useState("");
	const [isAsked, setAsked] = useState(false);
	const [isSaved, setSaved] = useState(false);
	const read = readCheck({
		stage,
		texts,
		note,
		stationsMm: build.stations.map(({ stationMm }) => stationMm),
		woods,
		system,
	});
	const findings = compareAsBuilt(
		build,
		readable({ stage, texts, build, woods, system }),
		stage,
	).findings;
	const put = (key: string) => (text: string) => {
		setTexts((now) => ({ ...now, [key]: text }));
		setSaved(false);
	};
	const save = async () => {
		setAsked(true);
		setSaved(false);
		if (!read.ok) {
			setMessages([say("checks.form.wrong")]);
			return;
		}
		const asked = { after, stage, texts: read.content.typed, note };
		const saved = await run(asked, ({ number, by, requestKey }) =>
			write({ number, by, requestKey, ...asked }),
		);
		if (saved === null) return;
		setTexts({});
		setNote("");
		setAsked(false);
		setSaved(true);
	};
	const problems = read.ok || !isAsked ? [] : read.problems;

	return (
		<Stack>
			<ChoiceField
				label={say("checks.form.stage")}
				hint={say(`checks.stageHint.${stage}`)}
				value={stage}
				unsure={null}
				options={BENCH_STAGES.map((value) => ({
					value,
					label: stageName(value, reader),
				}))}
				onChange={(value) => {
					setStage(value as BenchStage);
					setAsked(false);
					setSaved(false);
				}}
			/>
			{stage === "billets" ? (
				<BilletFields
					woods={woods}
					texts={texts}
					put={put}
					problems={problems}
				/>
			) : (
				<>
					<Columns minRem={17}>
						{FIELDS_AT[stage]
							.filter((field) => field !== "metal" || plannedMetal !== null)
							.map((field) => (
								<FigureField
									key={field}
									field={field}
									stage={stage}
									build={build}
									plannedMetal={plannedMetal}
									text={texts[field] ?? ""}
									onChange={put(field)}
									finding={
										findings.find(({ figure }) => figure === field) ?? null
									}
								/>
							))}
					</Columns>
					<StationFields
						stage={stage}
						build={build}
						texts={texts}
						put={put}
						findings={findings}
					/>
				</>
			)}
			<TextField
				label={say("checks.form.note")}
				hint={say("checks.form.noteHint")}
				value={note}
				onChange={setNote}
				rows={2}
				maxLength={2000}
			/>
			<StepMessages messages={messages} />
			{isSaved && (
				<Notice kind="done" live>
					{say("checks.form.saved")}
				</Notice>
			)}
			<Actions>
				<Button look="main" wide busy={isBusy} onClick={save}>
					{say("checks.form.save")}
				</Button>
			</Actions>
		</Stack>
	);
}

/** The figures that can be read already, so that one slip hides no other finding. */
function readable({
	texts,
	...p
}: {
	stage: BenchStage;
	texts: CheckTexts;
	build: BuildToHold;
	woods: readonly WoodId[];
	system: Parameters<typeof readCheck>[0]["system"];
}) {
	const stationsMm = p.build.stations.map(({ stationMm }) => stationMm);
	const all = { ...p, stationsMm, note: "" };
	const first = readCheck({ ...all, texts });
	if (first.ok) return first.content.figures;
	const wrong = new Set(first.problems.map(({ field }) => field));
	const rest = readCheck({
		...all,
		texts: Object.fromEntries(
			Object.entries(texts).filter(([field]) => !wrong.has(field)),
		),
	});
	return rest.ok ? rest.content.figures : {};
}
