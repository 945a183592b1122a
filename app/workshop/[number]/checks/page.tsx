import type { Metadata } from "next";
import { cookies } from "next/headers";
import { LinkButton } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section, Stack } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { BENCH_STAGES, type BenchStage } from "@/lib/build/as-built";
import { formatMass } from "@/lib/present/figures";
import { stateName } from "@/lib/present/job-view";
import type { CheckRecord } from "@/lib/records/checks/data";
import { MEASURED_IN, woodsOf } from "@/lib/workshop/check-rules";
import { NAME_COOKIE, recalled } from "../../_parts/bench-choices";
import { ByField, JobDesk } from "../../_parts/job-desk";
import { type JobParams, jobOf } from "../../_parts/loaders";
import { CheckForm } from "./_parts/check-form";
import { CheckList } from "./_parts/check-list";
import { asBuiltOf, holdOf, woodsSaidBy } from "./_parts/loaders";
import { OpenFindings } from "./_parts/open-findings";
import { ReplanPart } from "./_parts/replan-part";
import { WoodsSaid } from "./_parts/woods-said";

export async function generateMetadata(props: JobParams): Promise<Metadata> {
	const { say } = await readReader();
	return {
		title: say("checks.title", { number: (await jobOf(props)).number }),
	};
}

/** Everything the bench measured of one cue, and the form for more. */
export default async function ChecksPage(props: JobParams) {
	const job = await jobOf(props);
	const reader = await readReader();
	const { say } = reader;
	const { build, checks, open } = await asBuiltOf(job);
	const told = await woodsSaidBy(job, checks);
	const canMeasure = MEASURED_IN.includes(job.state);
	const { metalMassG } = build.addedWeight;
	return (
		<JobDesk
			number={job.number}
			revision={job.revision}
			by={recalled((await cookies()).get(NAME_COOKIE)?.value)}
		>
			<Stack>
				<PageHead
					title={
						<>
							{say("checks.title", { number: job.number })}{" "}
							{job.isDemo && <Invented />}
						</>
					}
					lead={say("checks.lead")}
					actions={
						<>
							<LinkButton href={`/workshop/${job.number}`}>
								{say("checks.toJob")}
							</LinkButton>
							<LinkButton href={`/workshop/${job.number}/checks/form`}>
								{say("checks.toForm")}
							</LinkButton>
						</>
					}
				/>
				{canMeasure && (
					<>
						<OpenFindings open={open} checks={checks} reader={reader} />
						<div id="measure">
							<Section title={say("checks.form.title")} card>
								<ByField />
								<CheckForm
									after={checks[0]?.id ?? null}
									firstStage={nextStage(checks)}
									build={holdOf(build)}
									woods={woodsOf(build)}
									plannedMetal={
										metalMassG > 0
											? formatMass(metalMassG, reader, "added")
											: null
									}
								/>
							</Section>
						</div>
						<ReplanPart checks={checks} build={build} reader={reader} />
					</>
				)}
				{!canMeasure && (
					<Notice>
						{say("checks.form.closed", { state: stateName(job.state, reader) })}
					</Notice>
				)}
				{told !== null && <WoodsSaid told={told} reader={reader} />}
				<CheckList checks={checks} build={build} reader={reader} />
			</Stack>
		</JobDesk>
	);
}

/** The stage after the furthest that was measured; the last one stays. */
function nextStage(checks: readonly CheckRecord[]): BenchStage {
	const furthest = Math.max(
		-1,
		...checks.map(({ stage }) => BENCH_STAGES.indexOf(stage)),
	);
	return BENCH_STAGES[furthest + 1] ?? "finished";
}
