import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { Notice } from "@/app/_ui/notice";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PrintButton } from "@/app/_ui/print-button";
import { Actions, PageHead, Section, Stack } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { asBuiltRows } from "@/lib/present/as-built-rows";
import { cueLine } from "@/lib/present/job-view";
import { checksOf } from "@/lib/records/checks/loaders";
import { benchRevision } from "@/lib/records/jobs/data";
import { currentSettings } from "@/lib/records/settings/loaders";
import type { Reader } from "@/lib/words/reader";
import { finishedFigures } from "@/lib/workshop/check";
import type { Header } from "@/lib/workshop/settings";
import careStyles from "../../_parts/care.module.css";
import { CarePart } from "../../_parts/care-part";
import { type JobParams, jobOf } from "../../_parts/loaders";
import { WorkshopContact } from "../../_parts/workshop-contact";

export async function generateMetadata(props: JobParams): Promise<Metadata> {
	const { say } = await readReader();
	return { title: say("care.title", { number: (await jobOf(props)).number }) };
}

/** What goes along with a cue that is handed over: how it came out, how it is kept, the warranty. */
export default async function CarePage(props: JobParams) {
	const job = await jobOf(props);
	const reader = await readReader();
	const { say } = reader;
	const { header } = await currentSettings();
	const { content } = benchRevision(job);
	const isHandedOver = job.state === "handed-over";
	const readings = finishedFigures(await checksOf(job.id));
	return (
		<>
			{header.paper === "letter" && <style>{"@page { size: letter; }"}</style>}
			<Stack>
				<PageHead
					title={
						<>
							{say("care.title", { number: job.number })}{" "}
							{job.isDemo && <Invented />}
						</>
					}
					lead={say("care.lead", {
						cue: cueLine(content.build, reader),
						customer: job.customerName || say("job.erased"),
					})}
				/>
				<div className={careStyles.screenOnly}>
					<Actions>
						<PrintButton />
						<LinkButton href={`/workshop/${job.number}`}>
							{say("care.toJob")}
						</LinkButton>
					</Actions>
				</div>
				{!isHandedOver && <Notice>{say("care.notYet")}</Notice>}
				<Section
					title={say(isHandedOver ? "care.figures" : "care.figuresBefore")}
				>
					<DataTable
						caption={say("care.figures")}
						captionHidden
						columns={[
							{ key: "figure", label: say("care.figure") },
							{ key: "value", label: say("care.value") },
							{ key: "source", label: say("care.source") },
						]}
						rows={asBuiltRows({ build: content.build, readings }, reader)}
					/>
				</Section>
				<Section title={say("care.titlePlain")}>
					<CarePart content={content} reader={reader} />
				</Section>
				<Warranty header={header} reader={reader} />
				<WorkshopContact header={header} reader={reader} />
			</Stack>
		</>
	);
}

/** In the workshop's own words, or none. */
function Warranty({
	header,
	reader: { say },
}: {
	header: Header;
	reader: Reader;
}) {
	if (header.warrantyText === "")
		return (
			<div className={careStyles.screenOnly}>
				<Notice>
					<p>{say("care.noWarranty")}</p>
					<LinkButton href="/workshop/settings/header">
						{say("care.setWarranty")}
					</LinkButton>
				</Notice>
			</div>
		);
	return (
		<Section title={say("care.warranty")}>
			<p className={careStyles.warranty}>{header.warrantyText}</p>
		</Section>
	);
}
