import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { LinkButton } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { Listening } from "@/app/_ui/listening";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section, Stack } from "@/app/_ui/section";
import { formatDay } from "@/lib/present/dates";
import { settingChanges, settingRows } from "@/lib/present/setting-changes";
import { settingHistory } from "@/lib/records/settings/loaders";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import { settingOf } from "@/lib/workshop/settings";
import { ChangesTable } from "../../_parts/changes-table";
import { kindOf, versionOf } from "../../_parts/loaders";
import { RestoreVersion } from "../../_parts/restore-version";

interface Params {
	params: Promise<{ kind: string; version: string }>;
}

const titleOf = async ({ params }: Params) => {
	const { kind, version } = await params;
	const { say } = await readReader();
	return say("settings.version.title", {
		kind: say(`settings.kind.${kindOf(kind)}`),
		version: String(versionOf(version)),
	});
};

export async function generateMetadata(props: Params): Promise<Metadata> {
	return { title: await titleOf(props) };
}

/** One version as it was saved, what it changed, and the way back to it. */
export default async function VersionPage(props: Params) {
	const params = await props.params;
	const kind = kindOf(params.kind);
	const number = versionOf(params.version);
	const reader = await readReader();
	const { say } = reader;
	const history = await settingHistory(kind);
	const place = history.findIndex(({ version }) => version === number);
	const version = history[place];
	const newest = history[0];
	if (version === undefined || newest === undefined) notFound();
	const earlier = history[place + 1];
	const changes = settingChanges(
		kind,
		{
			before: earlier?.content ?? settingOf(DEFAULT_SETTINGS, kind),
			after: version.content,
		},
		reader,
	);
	return (
		<Stack>
			<PageHead
				title={await titleOf(props)}
				lead={
					<>
						{say("settings.version.lead", {
							day: formatDay(version.validFrom, reader),
							by: version.by,
							savedOn: formatDay(version.createdAt, reader),
						})}
						{version.note && ` ${version.note}`}
					</>
				}
				actions={
					<LinkButton href={`/workshop/settings/${kind}`}>
						{say(`settings.kind.${kind}`)}
					</LinkButton>
				}
			/>
			<Section
				title={
					earlier === undefined
						? say("settings.version.changedSinceInvented")
						: say("settings.version.changedSince", {
								version: String(earlier.version),
							})
				}
			>
				<ChangesTable
					caption={say("settings.history.changes")}
					changes={changes}
					reader={reader}
				/>
			</Section>
			{number === newest.version ? (
				<p>{say("settings.version.isNewest")}</p>
			) : (
				<Listening>
					<RestoreVersion
						kind={kind}
						version={number}
						newest={newest.version}
					/>
				</Listening>
			)}
			<Section title={say("settings.version.all")}>
				<DataTable
					caption={say("settings.version.all")}
					captionHidden
					columns={[
						{ key: "label", label: say("settings.row.what") },
						{ key: "value", label: say("settings.row.value") },
					]}
					rows={settingRows(kind, version.content, reader).map(
						({ label, value }) => ({ label, value }),
					)}
				/>
			</Section>
		</Stack>
	);
}
