import type { Metadata } from "next";
import { headers } from "next/headers";
import { LinkButton } from "@/app/_ui/button";
import { CuePlate } from "@/app/_ui/cue-picture/cue-plate";
import { Notice } from "@/app/_ui/notice";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PrintButton } from "@/app/_ui/print-button";
import { Actions } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { jobCode } from "@/lib/documents/job-code";
import { sheetHead } from "@/lib/present/sheet-head";
import { sheetView } from "@/lib/present/sheet-view";
import { currentSettings } from "@/lib/records/settings/loaders";
import { buildFromSpec } from "@/lib/workshop/job-content";
import { CodeFigure } from "../../../_parts/code-figure";
import { ExportLinks } from "../../../_parts/exports";
import { isThisMachineOnly, jobAddress } from "../../../_parts/job-address";
import { JobSheet } from "../../../_parts/job-sheet";
import styles from "../../../_parts/job-sheet.module.css";
import { type SpecParams, specOf } from "../../../_parts/loaders";
import { publicAddress } from "../../../_parts/public-address";

export async function generateMetadata(props: SpecParams): Promise<Metadata> {
	const { number, revision } = await specOf(props);
	return { title: `Job sheet ${number}/${revision}` };
}

/** What the bench builds from and checks against, on screen and on A4. */
export default async function SheetPage(props: SpecParams) {
	const { number, revision, latestRevision, fitting, content, createdAt } =
		await specOf(props);
	const reader = await readReader();
	const { header } = await currentSettings();
	const head = sheetHead(
		{
			number,
			revision,
			latestRevision,
			fittingNumber: fitting.number,
			playerName: fitting.player.name,
			savedAt: createdAt,
			modelVersion: content.modelVersion,
			workshop: header,
		},
		reader,
	);
	const origin = await publicAddress(await headers());
	return (
		<>
			{header.paper === "letter" && <style>{"@page { size: letter; }"}</style>}
			<div className={styles.screenOnly}>
				<Actions>
					<PrintButton />
					<LinkButton href={`/specs/${number}/${revision}`}>
						Back to the spec
					</LinkButton>
				</Actions>
				<ExportLinks number={number} revision={revision} />
				{origin !== null && isThisMachineOnly(origin) && (
					<Notice title="The code on this sheet works on this machine only">
						It holds the address under which this page was opened. Open the page
						under an address that other devices reach before printing.
					</Notice>
				)}
			</div>
			<JobSheet
				title={
					<>
						{head.title} {fitting.isDemo && <Invented />}
					</>
				}
				lines={
					head.replaced === null ? head.lines : [...head.lines, head.replaced]
				}
				code={
					origin !== null && (
						<CodeFigure
							code={jobCode(jobAddress({ origin, number, revision }))}
						/>
					)
				}
				picture={
					<>
						<CuePlate
							design={content.design}
							reader={reader}
							balanceFromButtMm={content.figures.balance.exact}
							ink="grey"
						/>
						<CuePlate
							design={content.design}
							reader={reader}
							part="butt"
							ink="grey"
						/>
					</>
				}
				view={sheetView(buildFromSpec(content), reader)}
			/>
		</>
	);
}
