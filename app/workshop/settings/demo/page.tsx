import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { Listening } from "@/app/_ui/listening";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section, Stack } from "@/app/_ui/section";
import { formatNumber } from "@/lib/present/figures";
import { DEMO_KINDS } from "@/lib/records/demo/data";
import { demoInventory, isDemoRemoved } from "@/lib/records/demo/loaders";
import { RemoveDemo } from "../_parts/remove-demo";
import styles from "../_parts/settings.module.css";

export async function generateMetadata(): Promise<Metadata> {
	const { say } = await readReader();
	return { title: say("settings.demo.title") };
}

/** What there is of invented demo data, what of it would go, and the step that takes it away. */
export default async function DemoPage() {
	const [reader, { counts, players, kept }, isRemoved] = await Promise.all([
		readReader(),
		demoInventory(),
		isDemoRemoved(),
	]);
	const { say } = reader;
	const going = DEMO_KINDS.filter((kind) => counts[kind] > 0);
	const total = going.reduce((sum, kind) => sum + counts[kind], 0);
	return (
		<Stack>
			<PageHead
				title={say("settings.demo.title")}
				lead={say("settings.demo.lead")}
				actions={
					<LinkButton href="/workshop/settings">
						{say("settings.back")}
					</LinkButton>
				}
			/>
			{total === 0 ? (
				<p>
					{say(isRemoved ? "settings.demo.noneRemoved" : "settings.demo.none")}
				</p>
			) : (
				<Section title={say("settings.demo.goes")}>
					<DataTable
						caption={say("settings.demo.goes")}
						captionHidden
						columns={[
							{ key: "kind", label: say("settings.demo.kind") },
							{
								key: "count",
								label: say("settings.demo.count"),
								numeric: true,
							},
						]}
						rows={going.map((kind) => ({
							kind: say(`settings.demo.kinds.${kind}`),
							count: formatNumber(counts[kind], reader),
						}))}
					/>
					{players.length > 0 && (
						<p>
							{say("settings.demo.playersNamed", { list: players.join(", ") })}
						</p>
					)}
				</Section>
			)}
			{kept.length > 0 && (
				<Section title={say("settings.demo.stays")}>
					<ul className={styles.list}>
						{kept.map(({ kind, name, because }) => (
							<li key={`${kind} ${name}`}>
								{say("settings.demo.keptLine", {
									what: say(`settings.demo.keptText.${kind}`, { name }),
									because: say(`settings.demo.because.${because}`),
								})}
							</li>
						))}
					</ul>
				</Section>
			)}
			<Listening>
				<RemoveDemo count={total} />
			</Listening>
		</Stack>
	);
}
