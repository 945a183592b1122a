"use client";

import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { DayField } from "@/app/_ui/fields/day-field";
import { TextField } from "@/app/_ui/fields/text-field";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Columns, Section } from "@/app/_ui/section";
import { formatDay } from "@/lib/present/dates";
import type { SettingKind } from "@/lib/workshop/settings";
import styles from "./settings.module.css";
import type { SettingSave } from "./use-setting-form";

/** From when, why and by whom; and what came of saving. */
export function SavePanel({
	kind,
	today,
	saving,
}: {
	kind: SettingKind;
	today: string;
	saving: SettingSave;
}) {
	const { say } = useReader();
	return (
		<Section title={say("settings.save.title")} card>
			<Columns minRem={16}>
				<DayField
					label={say("settings.save.validFrom")}
					hint={say("settings.save.validFromHint")}
					name="validFrom"
					min={today}
					value={saving.validFrom}
					onChange={saving.putValidFrom}
				/>
				<TextField
					label={say("settings.save.note")}
					hint={say("settings.save.noteHint")}
					name="note"
					value={saving.note}
					onChange={saving.putNote}
					maxLength={500}
				/>
				<TextField
					label={say("settings.save.by")}
					hint={say("settings.save.byHint")}
					name="by"
					value={saving.by}
					onChange={saving.putBy}
					maxLength={120}
					error={saving.isByMissing ? say("settings.save.byMissing") : null}
				/>
			</Columns>
			<SaveState kind={kind} saving={saving} />
			<Actions>
				<Button look="main" wide busy={saving.isBusy} onClick={saving.submit}>
					{say("settings.save.button")}
				</Button>
			</Actions>
		</Section>
	);
}

function SaveState({
	kind,
	saving: { state, saveOver },
}: {
	kind: SettingKind;
	saving: SettingSave;
}) {
	const reader = useReader();
	const { say } = reader;
	switch (state.status) {
		case "none":
			return null;
		case "saved":
			return (
				<Notice kind="done" live>
					{say("settings.save.saved", {
						version: String(state.version),
						day: formatDay(state.validFrom, reader),
					})}
				</Notice>
			);
		case "conflict":
			return (
				<Notice
					kind="error"
					title={say("settings.save.conflict", {
						version: String(state.version),
					})}
					live
				>
					<p>{say("settings.save.conflictText")}</p>
					<Actions>
						<Link
							href={`/workshop/settings/${kind}/${state.version}`}
							target="_blank"
						>
							{say("settings.save.look", { version: String(state.version) })}
						</Link>
						<Button onClick={() => saveOver(state.version)}>
							{say("settings.save.saveOver", {
								version: String(state.version),
							})}
						</Button>
					</Actions>
				</Notice>
			);
		case "no-answer":
			return (
				<Notice kind="error" title={say("settings.save.notSaved")} live>
					{say("settings.save.noAnswer")}
				</Notice>
			);
		default:
			return (
				<Notice kind="error" title={say("settings.save.notSaved")} live>
					<p>
						{say("settings.save.problems", { count: state.messages.length })}
					</p>
					<ul className={styles.list}>
						{state.messages.map((message) => (
							<li key={message}>{message}</li>
						))}
					</ul>
				</Notice>
			);
	}
}
