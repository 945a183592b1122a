import type { Metadata } from "next";
import { DataTable } from "@/app/_ui/data-table";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section } from "@/app/_ui/section";
import { MODEL_VERSION } from "@/lib/advice/version";
import { constantGroups, sourceRows } from "@/lib/present/sources-view";

export async function generateMetadata(): Promise<Metadata> {
	return { title: (await readReader()).say("sources.name") };
}

const OF_PUBLICATION = ["title", "publisher", "year", "seen"] as const;
const OF_CONSTANT = [
	"name",
	"value",
	"spread",
	"standing",
	"source",
	"locator",
] as const;

export default async function SourcesPage() {
	const reader = await readReader();
	const { say } = reader;
	return (
		<>
			<PageHead
				title={say("sources.title")}
				lead={say("sources.lead", { version: MODEL_VERSION })}
				actions={<a href="/api/v1/openapi.json">{say("sources.openApi")}</a>}
			/>
			<Section title={say("sources.publications")}>
				<DataTable
					caption={say("sources.publications")}
					captionHidden
					columns={OF_PUBLICATION.map((key) => ({
						key,
						label: say(`sources.publication.${key}`),
					}))}
					rows={sourceRows(reader).map((row) => ({ ...row }))}
					rowKey="id"
				/>
			</Section>
			{constantGroups(reader).map(({ title, rows }) => (
				<Section key={title} title={title}>
					<DataTable
						caption={title}
						captionHidden
						columns={OF_CONSTANT.map((key) => ({
							key,
							label: say(`sources.constant.${key}`),
						}))}
						rows={rows.map((row) => ({ ...row }))}
					/>
				</Section>
			))}
		</>
	);
}
