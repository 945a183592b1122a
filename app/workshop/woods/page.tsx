import type { Metadata } from "next";
import Link from "next/link";
import { LinkButton } from "@/app/_ui/button";
import { Chart } from "@/app/_ui/charts/chart";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section, Stack } from "@/app/_ui/section";
import { densityText } from "@/lib/present/check-view";
import { woodName } from "@/lib/present/labels";
import {
	predictionChart,
	type WoodRow,
	woodRows,
} from "@/lib/present/woods-view";
import type { WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import { evidenceState } from "../[number]/checks/_parts/woods-said";
import { EvidenceList } from "./_parts/evidence-list";
import { MOST_RESULTS, woodsOfWorkshop } from "./_parts/loaders";

export async function generateMetadata(): Promise<Metadata> {
	const { say } = await readReader();
	return { title: say("woods.title") };
}

/** The workshop's woods: what is held of each, on what results, and how predictions came out. */
export default async function WoodsPage({
	searchParams,
}: {
	searchParams: Promise<{ wood?: string | string[] }>;
}) {
	const { wood: asked } = await searchParams;
	const reader = await readReader();
	const { say } = reader;
	const { woods, evidence, withdrawn, results, chosen, rows } =
		await woodsOfWorkshop(asked);
	const chart = predictionChart(results, reader);
	return (
		<Stack>
			<PageHead
				title={say("woods.title")}
				lead={say("woods.lead")}
				actions={
					<LinkButton href="/workshop">{say("woods.empty.toQueue")}</LinkButton>
				}
			/>
			{rows.length === 0 && chart === null && (
				<EmptyState title={say("woods.empty.title")}>
					{say("woods.empty.about")}
				</EmptyState>
			)}
			<Section title={say("woods.bands.title")} lead={say("woods.bands.about")}>
				<Bands
					rows={woodRows({ woods, evidence, withdrawn, reader })}
					reader={reader}
				/>
			</Section>
			{rows.length > 0 && (
				<Section
					title={
						chosen === null
							? say("woods.evidence.title")
							: say("woods.evidence.titleOf", {
									wood: woodName(chosen, reader),
								})
					}
					lead={say("woods.evidence.lead")}
				>
					{chosen !== null && (
						<p>
							<Link href="/workshop/woods">{say("woods.evidence.all")}</Link>
						</p>
					)}
					<EvidenceList
						rows={rows.map((row) => ({
							id: row.id,
							wood: woodName(row.wood, reader),
							jobNumber: row.jobNumber,
							implied: densityText(row, reader),
							state: evidenceState(row, reader),
							isCounted: row.withdrawnAt === null,
						}))}
					/>
					{rows.length === MOST_RESULTS && chosen === null && (
						<p>{say("woods.evidence.most", { count: String(MOST_RESULTS) })}</p>
					)}
				</Section>
			)}
			{chart !== null && (
				<Section title={say("woods.results.section")}>
					<Chart model={chart} />
				</Section>
			)}
		</Stack>
	);
}

function Bands({ rows, reader }: { rows: WoodRow[]; reader: Reader }) {
	const { say } = reader;
	const both = (value: string, band: string) =>
		say("woods.bands.valueAndBand", { value, band });
	const hrefOf = (wood: WoodId) => ({
		pathname: "/workshop/woods" as const,
		query: { wood },
	});
	return (
		<DataTable
			caption={say("woods.bands.title")}
			captionHidden
			columns={[
				{ key: "wood", label: say("woods.bands.wood") },
				{ key: "tables", label: say("woods.bands.tables") },
				{ key: "own", label: say("woods.bands.own") },
				{ key: "count", label: say("woods.bands.count") },
			]}
			rows={rows.map((row) => ({
				wood:
					row.counting + row.withdrawn === 0 ? (
						row.wood
					) : (
						<Link href={hrefOf(row.id)}>{row.wood}</Link>
					),
				tables: both(row.tables, row.tablesBand),
				own:
					row.own === null || row.ownBand === null
						? say("woods.bands.same")
						: both(row.own, row.ownBand),
				count: say("woods.bands.counts", {
					counting: row.counting,
					withdrawn: row.withdrawn,
				}),
			}))}
		/>
	);
}
