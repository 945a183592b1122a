import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/button";
import { CuePlate } from "@/app/_ui/cue-picture/cue-plate";
import { readPreferences } from "@/app/_ui/preferences/loaders";
import { PrintButton } from "@/app/_ui/print-button";
import { Actions } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { formatDate } from "@/lib/present/dates";
import { sheetView } from "@/lib/present/sheet-view";
import { JobSheet } from "../../../_parts/job-sheet";
import styles from "../../../_parts/job-sheet.module.css";
import { type SpecParams, specOf } from "../../../_parts/loaders";

export async function generateMetadata(props: SpecParams): Promise<Metadata> {
	const { number, revision } = await specOf(props);
	return { title: `Job sheet ${number}/${revision}` };
}

/** What the bench builds from and checks against, on screen and on A4. */
export default async function SheetPage(props: SpecParams) {
	const { number, revision, latestRevision, fitting, content, createdAt } =
		await specOf(props);
	const { system } = await readPreferences();
	return (
		<>
			<div className={styles.screenOnly}>
				<Actions>
					<PrintButton />
					<LinkButton href={`/specs/${number}/${revision}`}>
						Back to the spec
					</LinkButton>
				</Actions>
			</div>
			<JobSheet
				title={
					<>
						Job sheet {number}/{revision} {fitting.isDemo && <Invented />}
					</>
				}
				lines={[
					`For ${fitting.player.name}, fitting ${fitting.number}`,
					`Saved ${formatDate(createdAt)}, models ${content.modelVersion}`,
					...(revision < latestRevision
						? [
								`REPLACED by revision ${latestRevision}: do not build from this sheet`,
							]
						: []),
				]}
				picture={
					<>
						<CuePlate
							design={content.design}
							system={system}
							balanceFromButtMm={content.figures.balance.exact}
							ink="grey"
						/>
						<CuePlate
							design={content.design}
							system={system}
							part="butt"
							ink="grey"
						/>
					</>
				}
				view={sheetView(content, system)}
			/>
		</>
	);
}
