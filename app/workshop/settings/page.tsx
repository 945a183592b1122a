import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/button";
import { readReader } from "@/app/_ui/preferences/loaders";
import { Actions, Columns, PageHead, Section, Stack } from "@/app/_ui/section";
import { formatDay } from "@/lib/present/dates";
import { demoInventory, isDemoRemoved } from "@/lib/records/demo/loaders";
import type { SettingVersionSummary } from "@/lib/records/settings/data";
import { settingHistory, today } from "@/lib/records/settings/loaders";
import type { Reader } from "@/lib/words/reader";
import {
	inForce,
	SETTING_KINDS,
	type SettingKind,
} from "@/lib/workshop/settings";
import styles from "./_parts/settings.module.css";

export async function generateMetadata(): Promise<Metadata> {
	const { say } = await readReader();
	return { title: say("settings.title") };
}

/** Everything a workshop sets for itself, and where each setting stands. */
export default async function SettingsPage() {
	const reader = await readReader();
	const { say } = reader;
	const now = today();
	const histories = await Promise.all(
		SETTING_KINDS.map((kind) => settingHistory(kind)),
	);
	const { counts } = await demoInventory();
	const hasDemo = Object.values(counts).some((count) => count > 0);
	const isRemoved = await isDemoRemoved();
	return (
		<Stack>
			<PageHead title={say("settings.title")} lead={say("settings.lead")} />
			<Columns minRem={20}>
				{SETTING_KINDS.map((kind, i) => (
					<Kind
						key={kind}
						kind={kind}
						history={histories[i] ?? []}
						now={now}
						reader={reader}
					/>
				))}
				<Section
					title={say("settings.files.title")}
					lead={say("settings.files.lead")}
					card
				>
					<Actions>
						<LinkButton href="/workshop/settings/files">
							{say("settings.files.title")}
						</LinkButton>
					</Actions>
				</Section>
				<Section
					title={say("settings.demo.title")}
					lead={
						hasDemo
							? say("settings.demo.lead")
							: say(
									isRemoved
										? "settings.demo.noneRemoved"
										: "settings.demo.none",
								)
					}
					card
				>
					{hasDemo && (
						<Actions>
							<LinkButton href="/workshop/settings/demo">
								{say("settings.demo.remove")}
							</LinkButton>
						</Actions>
					)}
				</Section>
			</Columns>
		</Stack>
	);
}

function Kind({
	kind,
	history,
	now,
	reader,
}: {
	kind: SettingKind;
	history: readonly SettingVersionSummary[];
	now: string;
	reader: Reader;
}) {
	const { say } = reader;
	const current = inForce(history, now);
	const next = [...history]
		.filter(({ validFrom }) => validFrom > now)
		.sort((a, b) => (a.validFrom < b.validFrom ? -1 : 1))[0];
	return (
		<Section
			title={say(`settings.kind.${kind}`)}
			lead={say(`settings.about.${kind}`)}
			card
		>
			<p className={styles.standing}>
				{current === null
					? say("settings.notSet")
					: say("settings.inForce", {
							version: String(current.version),
							day: formatDay(current.validFrom, reader),
						})}
				{next &&
					` ${say("settings.scheduled", {
						version: String(next.version),
						day: formatDay(next.validFrom, reader),
					})}`}
			</p>
			<Actions>
				<LinkButton
					href={`/workshop/settings/${kind}`}
					aria-label={say("settings.open", {
						kind: say(`settings.kind.${kind}`),
					})}
				>
					{say("settings.change")}
				</LinkButton>
			</Actions>
		</Section>
	);
}
