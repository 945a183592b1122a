import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/button";
import { Listening } from "@/app/_ui/listening";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section, Stack } from "@/app/_ui/section";
import { SETTINGS_SCHEMA_PATH } from "@/lib/documents/settings-files";
import { ImportFile } from "../_parts/import-file";
import styles from "../_parts/settings.module.css";

export async function generateMetadata(): Promise<Metadata> {
	const { say } = await readReader();
	return { title: say("settings.files.title") };
}

/** All settings to take away as files, and files to bring in. */
export default async function FilesPage() {
	const { say } = await readReader();
	return (
		<Stack>
			<PageHead
				title={say("settings.files.title")}
				lead={say("settings.files.lead")}
				actions={
					<LinkButton href="/workshop/settings">
						{say("settings.back")}
					</LinkButton>
				}
			/>
			<Section title={say("settings.files.export")} card>
				{/* Plain links: a file is fetched when it is asked for, not before. */}
				<ul className={styles.list}>
					<li>
						<a href="/workshop/settings/files/settings.json" download>
							{say("settings.files.json")}
						</a>
					</li>
					<li>
						<a href="/workshop/settings/files/prices.csv" download>
							{say("settings.files.pricesCsv")}
						</a>
					</li>
					<li>
						<a href="/workshop/settings/files/stock.csv" download>
							{say("settings.files.stockCsv")}
						</a>
					</li>
					<li>
						<a href={SETTINGS_SCHEMA_PATH}>{say("settings.files.schema")}</a>
					</li>
				</ul>
			</Section>
			<Section
				title={say("settings.files.import")}
				lead={say("settings.files.importLead")}
				card
			>
				<Listening>
					<ImportFile />
				</Listening>
			</Section>
		</Stack>
	);
}
