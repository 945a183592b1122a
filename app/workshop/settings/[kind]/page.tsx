import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/button";
import { Listening } from "@/app/_ui/listening";
import { Notice } from "@/app/_ui/notice";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Stack } from "@/app/_ui/section";
import { formatDay } from "@/lib/present/dates";
import { currencyName } from "@/lib/present/money";
import { CURRENCIES } from "@/lib/price/currency";
import {
	currentSettings,
	settingHistory,
	today,
} from "@/lib/records/settings/loaders";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import { inForce, settingOf } from "@/lib/workshop/settings";
import { History } from "../_parts/history";
import { kindOf } from "../_parts/loaders";
import { SettingEditor } from "../_parts/setting-editor";
import { Unpriced } from "../_parts/unpriced";

interface Params {
	params: Promise<{ kind: string }>;
}

export async function generateMetadata({ params }: Params): Promise<Metadata> {
	const { say } = await readReader();
	return { title: say(`settings.kind.${kindOf((await params).kind)}`) };
}

/** One kind of setting: the newest version to change, and every version there was. */
export default async function SettingPage({ params }: Params) {
	const kind = kindOf((await params).kind);
	const [reader, history, current] = await Promise.all([
		readReader(),
		settingHistory(kind),
		currentSettings(),
	]);
	const { say } = reader;
	const now = today();
	const newest = history[0];
	const content = newest?.content ?? settingOf(DEFAULT_SETTINGS, kind);
	const standing = inForce(history, now);
	return (
		<Stack>
			<PageHead
				title={say(`settings.kind.${kind}`)}
				lead={say(`settings.about.${kind}`)}
				actions={
					<LinkButton href="/workshop/settings">
						{say("settings.back")}
					</LinkButton>
				}
			/>
			{content.basis === "invented" && (
				<Notice title={say("settings.isInvented")}>
					{say("settings.inventedNotice")}
				</Notice>
			)}
			{newest !== undefined && newest.version !== standing?.version && (
				<Notice title={say("settings.scheduledNotice")}>
					{say("settings.scheduledText", {
						version: String(newest.version),
						day: formatDay(newest.validFrom, reader),
						newest: String(newest.version),
					})}
				</Notice>
			)}
			{(kind === "catalogue" || kind === "prices") && (
				<Unpriced settings={current} reader={reader} />
			)}
			<Listening>
				<SettingEditor
					kind={kind}
					content={content}
					newest={newest?.version ?? 0}
					today={now}
					catalogue={current.catalogue}
					currencies={CURRENCIES.map((value) => ({
						value,
						label: currencyName(value, reader),
					}))}
				/>
			</Listening>
			<History
				kind={kind}
				history={history}
				inForce={standing?.version ?? null}
				today={now}
				reader={reader}
			/>
		</Stack>
	);
}
