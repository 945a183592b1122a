"use client";

import { useRouter } from "next/navigation";
import { useRef, useState, useTransition } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/fields/field";
import { TextField } from "@/app/_ui/fields/text-field";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { newRequestKey } from "@/app/_ui/request-key";
import { Actions, Section, Stack } from "@/app/_ui/section";
import { useWho } from "@/app/workshop/_parts/use-who";
import { formatDay } from "@/lib/present/dates";
import {
	type Preview,
	previewFile,
	type TakenOver,
	takeOver,
} from "../actions";
import { ChangesTable } from "./changes-table";
import styles from "./settings.module.css";

interface Chosen {
	readonly name: string;
	readonly text: string;
}

/** Reads a file, shows what it would change, and takes it over when told to. */
export function ImportFile() {
	const { say } = useReader();
	const router = useRouter();
	const [file, setFile] = useState<File | null>(null);
	const [chosen, setChosen] = useState<Chosen | null>(null);
	const [preview, setPreview] = useState<Preview | null>(null);
	const [taken, setTaken] = useState<TakenOver | null>(null);
	const [failure, setFailure] = useState<string | null>(null);
	const [isBusy, startTransition] = useTransition();
	const requestKey = useRef<string | null>(null);

	const look = () => {
		setTaken(null);
		setPreview(null);
		if (file === null) {
			setFailure(say("settings.files.noFile"));
			return;
		}
		setFailure(null);
		startTransition(async () => {
			try {
				const text = await file.text();
				setChosen({ name: file.name, text });
				requestKey.current = null;
				setPreview(await previewFile(text));
			} catch {
				setFailure(say("settings.save.noAnswer"));
			}
		});
	};
	const apply = (by: string) => {
		if (chosen === null || preview === null || !preview.ok) return;
		requestKey.current ??= newRequestKey();
		const request = {
			text: chosen.text,
			editedFrom: { ...preview.editedFrom },
			note: say("settings.files.note", { name: chosen.name.slice(0, 200) }),
			by,
			requestKey: requestKey.current,
		};
		setFailure(null);
		startTransition(async () => {
			try {
				const answer = await takeOver(request);
				setTaken(answer);
				if (answer.ok) setPreview(null);
				router.refresh();
			} catch {
				setFailure(say("settings.save.noAnswer"));
			}
		});
	};
	return (
		<Stack>
			<Field
				label={say("settings.files.choose")}
				hint={say("settings.files.chooseHint")}
				error={failure}
			>
				{(wiring) => (
					<input
						{...wiring}
						className={styles.file}
						type="file"
						accept=".json,.csv,application/json,text/csv"
						onChange={(event) => {
							setFile(event.target.files?.[0] ?? null);
							setPreview(null);
							setTaken(null);
						}}
					/>
				)}
			</Field>
			<Actions>
				<Button look="main" busy={isBusy} onClick={look}>
					{say("settings.files.read")}
				</Button>
			</Actions>
			{preview !== null && (
				<Previewed preview={preview} isBusy={isBusy} apply={apply} />
			)}
			{taken !== null && <Outcome taken={taken} />}
		</Stack>
	);
}

function Previewed({
	preview,
	isBusy,
	apply,
}: {
	preview: Preview;
	isBusy: boolean;
	apply: (by: string) => void;
}) {
	const reader = useReader();
	const { say } = reader;
	const [by, putBy] = useWho();
	const [isAsked, setAsked] = useState(false);
	if (!preview.ok)
		return (
			<Notice kind="error" title={say("settings.files.refused")} live>
				<ul className={styles.list}>
					{preview.problems.map((problem) => (
						<li key={problem}>{problem}</li>
					))}
				</ul>
				{preview.more > 0 && (
					<p>{say("settings.files.refusedMore", { count: preview.more })}</p>
				)}
			</Notice>
		);
	if (preview.steps.length === 0)
		return (
			<Notice title={say("settings.files.import")} live>
				{say("settings.files.unchanged")}
			</Notice>
		);
	return (
		<>
			{preview.steps.map(({ kind, validFrom, changes }) => {
				const title = say("settings.files.wouldChange", {
					kind: say(`settings.kind.${kind}`),
					day: formatDay(validFrom, reader),
				});
				return (
					<Section key={`${kind} ${validFrom}`} title={title}>
						<ChangesTable caption={title} changes={changes} reader={reader} />
					</Section>
				);
			})}
			<TextField
				label={say("settings.save.by")}
				hint={say("settings.save.byHint")}
				name="by"
				value={by}
				onChange={putBy}
				maxLength={120}
				error={
					isAsked && by.trim() === "" ? say("settings.save.byMissing") : null
				}
			/>
			<Actions>
				<Button
					look="main"
					busy={isBusy}
					onClick={() => {
						setAsked(true);
						if (by.trim() !== "") apply(by);
					}}
				>
					{say("settings.files.apply")}
				</Button>
			</Actions>
		</>
	);
}

function Outcome({ taken }: { taken: TakenOver }) {
	const { say } = useReader();
	if (!taken.ok)
		return (
			<Notice kind="error" title={say("settings.save.notSaved")} live>
				{say("settings.files.overtaken")}
			</Notice>
		);
	return (
		<Notice kind="done" title={say("settings.files.applied")} live>
			<ul className={styles.list}>
				{taken.saved.map(({ kind, version }) => (
					<li key={`${kind} ${version}`}>
						{say("settings.files.appliedText", {
							kind: say(`settings.kind.${kind}`),
							version: String(version),
						})}
					</li>
				))}
			</ul>
		</Notice>
	);
}
