import type { Metadata } from "next";
import { headers } from "next/headers";
import { LinkButton } from "@/app/_ui/button";
import { CuePlate } from "@/app/_ui/cue-picture/cue-plate";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PrintButton } from "@/app/_ui/print-button";
import { Actions } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { CodeFigure } from "@/app/specs/_parts/code-figure";
import { JobSheet } from "@/app/specs/_parts/job-sheet";
import styles from "@/app/specs/_parts/job-sheet.module.css";
import { publicAddress } from "@/app/specs/_parts/public-address";
import { JobFiles } from "@/app/workshop/_parts/job-files";
import { sheetFrame } from "@/app/workshop/_parts/job-sheet";
import { type JobParams, jobOf } from "@/app/workshop/_parts/loaders";
import { sheetView } from "@/lib/present/sheet-view";

export async function generateMetadata(props: JobParams): Promise<Metadata> {
	const job = await jobOf(props);
	const { head } = await sheetFrame(job, await readReader(), null);
	return { title: head.title };
}

/** What the bench builds from and checks against, on screen and on paper. */
export default async function JobSheetPage(props: JobParams) {
	const job = await jobOf(props);
	const reader = await readReader();
	const origin = await publicAddress(await headers());
	const { head, header, build, code } = await sheetFrame(job, reader, origin);
	return (
		<>
			{header.paper === "letter" && <style>{"@page { size: letter; }"}</style>}
			<div className={styles.screenOnly}>
				<Actions>
					<PrintButton />
					<LinkButton href={`/workshop/${job.number}`}>
						{reader.say("job.sheet.back")}
					</LinkButton>
				</Actions>
				<JobFiles number={job.number} reader={reader} />
			</div>
			<JobSheet
				title={
					<>
						{head.title} {job.isDemo && <Invented />}
					</>
				}
				lines={
					head.replaced === null ? head.lines : [...head.lines, head.replaced]
				}
				code={code !== null && <CodeFigure code={code} />}
				picture={
					<>
						<CuePlate
							design={build.design}
							reader={reader}
							balanceFromButtMm={build.targets.balance.value}
							ink="grey"
						/>
						<CuePlate
							design={build.design}
							reader={reader}
							part="butt"
							ink="grey"
						/>
					</>
				}
				view={sheetView(build, reader)}
			/>
		</>
	);
}
