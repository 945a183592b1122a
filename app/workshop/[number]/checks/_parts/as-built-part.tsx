import { LinkButton } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { Actions, Section } from "@/app/_ui/section";
import { stageName } from "@/lib/present/check-view";
import { formatDay } from "@/lib/present/dates";
import type { JobRecord } from "@/lib/records/jobs/data";
import type { Reader } from "@/lib/words/reader";
import { MEASURED_IN } from "@/lib/workshop/check-rules";
import { asBuiltOf } from "./loaders";
import { OpenFindings } from "./open-findings";

/** The measuring of a job on its own page: what is open, what was measured last, and the way to all of it. */
export async function AsBuiltPart({
	job,
	reader,
}: {
	job: JobRecord;
	reader: Reader;
}) {
	const { checks, open } = await asBuiltOf(job);
	const canMeasure = MEASURED_IN.includes(job.state);
	if (checks.length === 0 && !canMeasure) return null;
	const { say } = reader;
	const [latest] = checks;
	const href = `/workshop/${job.number}/checks`;
	const isFinishedRead = checks.some(({ stage }) => stage === "finished");
	return (
		<>
			{canMeasure && (
				<OpenFindings open={open} checks={checks} reader={reader} />
			)}
			<Section
				title={say("checks.section")}
				lead={say("checks.sectionLead")}
				card
			>
				{latest === undefined ? (
					<p>{say("checks.none")}</p>
				) : (
					<p>
						{say("checks.last", {
							stage: stageName(latest.stage, reader),
							by: latest.by,
							when: formatDay(latest.createdAt, reader),
						})}
						{open.length === 0 && ` ${say("checks.within")}`}
					</p>
				)}
				{job.state === "checked" && !isFinishedRead && (
					<Notice>{say("checks.notFinished")}</Notice>
				)}
				<Actions>
					{canMeasure && (
						<LinkButton href={`${href}#measure`}>
							{say("checks.measure")}
						</LinkButton>
					)}
					{checks.length > 0 && (
						<LinkButton href={href}>
							{say("checks.all", { count: checks.length })}
						</LinkButton>
					)}
					<LinkButton look="quiet" href={`${href}/form`}>
						{say("checks.toForm")}
					</LinkButton>
				</Actions>
			</Section>
		</>
	);
}
