import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/button";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PrintButton } from "@/app/_ui/print-button";
import { Actions } from "@/app/_ui/section";
import {
	BENCH_STAGES,
	type BenchStage,
	compareAsBuilt,
} from "@/lib/build/as-built";
import { CHECK_FIELDS, FIELDS_AT } from "@/lib/forms/check";
import { findingRow, stageName } from "@/lib/present/check-view";
import { cueLine } from "@/lib/present/job-view";
import { woodName } from "@/lib/present/labels";
import { benchBuild } from "@/lib/records/jobs/data";
import { currentSettings } from "@/lib/records/settings/loaders";
import type { Reader } from "@/lib/words/reader";
import { woodsOf } from "@/lib/workshop/check-rules";
import type { BuildContent } from "@/lib/workshop/job-content";
import { type JobParams, jobOf } from "../../../_parts/loaders";
import styles from "./form.module.css";

export async function generateMetadata(props: JobParams): Promise<Metadata> {
	const { say } = await readReader();
	return {
		title: say("checks.blankForm.title", {
			number: (await jobOf(props)).number,
		}),
	};
}

/** A sheet of paper for the bench: every stage with what is wanted, and room to write. */
export default async function CheckFormPage(props: JobParams) {
	const job = await jobOf(props);
	const reader = await readReader();
	const { say } = reader;
	const { header } = await currentSettings();
	const build = benchBuild(job);
	return (
		<>
			{header.paper === "letter" && <style>{"@page { size: letter; }"}</style>}
			<div className={styles.screenOnly}>
				<Actions>
					<PrintButton />
					<LinkButton href={`/workshop/${job.number}/checks`}>
						{say("checks.measure")}
					</LinkButton>
					<LinkButton href={`/workshop/${job.number}`}>
						{say("checks.toJob")}
					</LinkButton>
				</Actions>
			</div>
			<article className={styles.paper}>
				<h1>{say("checks.blankForm.title", { number: job.number })}</h1>
				<p>
					{say("checks.blankForm.cue", {
						cue: cueLine(build, reader),
						customer: job.customerName || say("job.erased"),
					})}
				</p>
				<p className={styles.screenOnly}>{say("checks.blankForm.lead")}</p>
				{BENCH_STAGES.map((stage) => (
					<Stage key={stage} stage={stage} build={build} reader={reader} />
				))}
			</article>
		</>
	);
}

interface Line {
	readonly label: string;
	readonly wanted: string;
	readonly allowed: string;
}

/** The readings of one stage; diameters where the cue is turned. */
function linesOf(
	stage: BenchStage,
	build: BuildContent,
	reader: Reader,
): Line[] {
	const { say } = reader;
	if (stage === "billets")
		return woodsOf(build).map((wood) => ({
			label: woodName(wood, reader),
			wanted: say("checks.blankForm.billetLine"),
			allowed: "",
		}));
	const fields = FIELDS_AT[stage]
		.filter((field) => field !== "metal" || build.addedWeight.metalMassG > 0)
		.map((field): Line => {
			const [finding] = compareAsBuilt(
				build,
				{ [CHECK_FIELDS[field].name]: 0 },
				stage,
			).findings;
			const row = finding && findingRow(finding, reader);
			return {
				label: say(`checks.figure.${field}`),
				wanted: row?.wanted ?? "",
				allowed: row?.allowed ?? "",
			};
		});
	if (stage !== "turned") return fields;
	const diameters = compareAsBuilt(
		build,
		{
			stations: build.stations
				.toReversed()
				.map(({ stationMm }) => ({ stationMm, diameterMm: 0 })),
		},
		stage,
	).findings.map((finding): Line => {
		const { figure, wanted, allowed } = findingRow(finding, reader);
		return { label: figure, wanted, allowed };
	});
	return [...fields, ...diameters];
}

function Stage({
	stage,
	build,
	reader,
}: {
	stage: BenchStage;
	build: BuildContent;
	reader: Reader;
}) {
	const { say } = reader;
	const name = stageName(stage, reader);
	return (
		<section className={styles.stage} aria-label={name}>
			<h2>{name}</h2>
			<p className={styles.hint}>{say(`checks.stageHint.${stage}`)}</p>
			<table>
				<thead>
					<tr>
						<th scope="col">{say("checks.list.figure")}</th>
						<th scope="col">{say("checks.list.wanted")}</th>
						<th scope="col">{say("checks.list.allowed")}</th>
						<th scope="col" className={styles.room}>
							{say("checks.blankForm.measured")}
						</th>
					</tr>
				</thead>
				<tbody>
					{linesOf(stage, build, reader).map(({ label, wanted, allowed }) => (
						<tr key={label}>
							<th scope="row">{label}</th>
							<td>{wanted}</td>
							<td>{allowed}</td>
							<td className={styles.room} />
						</tr>
					))}
				</tbody>
			</table>
			<p className={styles.signed}>
				<span>{say("checks.blankForm.by")}</span>
				<span>{say("checks.blankForm.date")}</span>
				<span>{say("checks.blankForm.note")}</span>
			</p>
		</section>
	);
}
