import type { Metadata } from "next";
import { DataTable } from "@/app/_ui/data-table";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section } from "@/app/_ui/section";
import { MODEL_VERSION } from "@/lib/advice/version";
import { constantGroups, sourceRows } from "@/lib/present/sources-view";

export const metadata: Metadata = { title: "Sources" };

export default async function SourcesPage() {
	const reader = await readReader();
	return (
		<>
			<PageHead
				title="Sources and assumptions"
				lead={`What the figures rest on, generated from the tables the models read (models ${MODEL_VERSION}). The computations are open: see the OpenAPI document.`}
				actions={<a href="/api/v1/openapi.json">OpenAPI document</a>}
			/>
			<Section title="Publications">
				<DataTable
					caption="Publications"
					captionHidden
					columns={[
						{ key: "title", label: "Title" },
						{ key: "publisher", label: "Publisher" },
						{ key: "year", label: "Year" },
						{ key: "seen", label: "How it was seen" },
					]}
					rows={sourceRows().map((row) => ({ ...row }))}
					rowKey="id"
				/>
			</Section>
			{constantGroups(reader).map(({ title, rows }) => (
				<Section key={title} title={title}>
					<DataTable
						caption={title}
						captionHidden
						columns={[
							{ key: "name", label: "What" },
							{ key: "value", label: "Value" },
							{ key: "spread", label: "Spread (1 SD)" },
							{ key: "standing", label: "Standing" },
							{ key: "source", label: "Source" },
							{ key: "locator", label: "Where" },
						]}
						rows={rows.map((row) => ({ ...row }))}
					/>
				</Section>
			))}
		</>
	);
}
