import type { Metadata } from "next";
import { cookies } from "next/headers";
import Link from "next/link";
import { LinkButton } from "@/app/_ui/button";
import { CuePicture } from "@/app/_ui/cue-picture/cue-picture";
import { DataTable } from "@/app/_ui/data-table";
import { FigureCard, Figures } from "@/app/_ui/figure-card";
import { Listening } from "@/app/_ui/listening";
import { Notice } from "@/app/_ui/notice";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section, Stack } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { NAME_COOKIE, recalled } from "@/app/workshop/_parts/bench-choices";
import type { SpecContent } from "@/lib/advice/spec";
import { specToday } from "@/lib/advice/today";
import type { Outcome } from "@/lib/numerics/outcome";
import { figureView } from "@/lib/present/advice-view";
import { formatDay } from "@/lib/present/dates";
import { stateName } from "@/lib/present/job-view";
import { specChanges } from "@/lib/present/spec-changes";
import { jobsOfSpec } from "@/lib/records/jobs/loaders";
import { currentSettings } from "@/lib/records/settings/loaders";
import { getSpecRevision, listRevisions } from "@/lib/records/specs/loaders";
import type { Reader } from "@/lib/words/reader";
import { Exports } from "../../_parts/exports";
import { InTodaysSettings } from "../../_parts/in-todays-settings";
import {
	contentOf,
	type SavedSpec,
	type SpecParams,
	specOf,
} from "../../_parts/loaders";
import { SendToWorkshop } from "../../_parts/send-to-workshop";

export async function generateMetadata(props: SpecParams): Promise<Metadata> {
	const { number, revision } = await specOf(props);
	return { title: `Spec ${number}, revision ${revision}` };
}

/** A saved spec as it was saved, what changed since the revision before, and the way to the bench. */
export default async function SpecPage(
	props: SpecParams & {
		searchParams: Promise<Record<string, string | string[] | undefined>>;
	},
) {
	const spec = await specOf(props);
	const {
		number,
		revision,
		latestRevision,
		fitting,
		content,
		createdAt,
		reason,
	} = spec;
	const reader = await readReader();
	const [revisions, earlier] = await Promise.all([
		listRevisions(number),
		revision > 1 ? getSpecRevision(number, revision - 1) : null,
	]);
	const changes =
		earlier === null
			? []
			: specChanges(contentOf(earlier.content), content, reader);
	const { figures, buttRangeMm } = content;
	const today = specToday(content);
	return (
		<Stack>
			<PageHead
				title={
					<>
						Spec {number}, revision {revision} {fitting.isDemo && <Invented />}
					</>
				}
				lead={`For ${fitting.player.name}, saved ${formatDay(createdAt, reader)}.`}
				actions={
					<>
						<LinkButton look="main" href={`/specs/${number}/${revision}/sheet`}>
							Open the job sheet
						</LinkButton>
						<LinkButton href={`/fittings/${fitting.number}/recommendation`}>
							Back to the fitting
						</LinkButton>
					</>
				}
			/>
			{revision < latestRevision && (
				<Notice title="There is a later revision">
					<Link href={`/specs/${number}/${latestRevision}`}>
						Revision {latestRevision}
					</Link>{" "}
					replaces this one.
				</Notice>
			)}
			<Section title="The figures">
				<Figures>
					<FigureCard
						{...figureView({ id: "length", figure: figures.length, reader })}
					/>
					<FigureCard
						{...figureView({ id: "mass", figure: figures.mass, reader })}
					/>
					<FigureCard
						{...figureView({
							id: "butt",
							figure: figures.butt,
							reader,
							rangeMm: buttRangeMm,
						})}
					/>
					<FigureCard
						{...figureView({ id: "tip", figure: figures.tip, reader })}
					/>
					<FigureCard
						{...figureView({ id: "balance", figure: figures.balance, reader })}
					/>
				</Figures>
			</Section>
			<Section title="The picture">
				<CuePicture
					design={content.design}
					balanceFromButtMm={figures.balance.exact}
				/>
			</Section>
			{earlier !== null && (
				<Section
					title={`Changed since revision ${revision - 1}`}
					lead={reason || undefined}
				>
					{changes.length === 0 ? (
						<p>Nothing that a reader would see.</p>
					) : (
						<DataTable
							caption={`Changed since revision ${revision - 1}`}
							captionHidden
							columns={[
								{ key: "label", label: "What" },
								{ key: "before", label: `Revision ${revision - 1}` },
								{ key: "after", label: `Revision ${revision}` },
							]}
							rows={changes.map((change) => ({ ...change }))}
						/>
					)}
				</Section>
			)}
			<Today today={today} stored={content} reader={reader} />
			<InTodaysSettings
				stored={content}
				address={`/specs/${number}/${revision}`}
				isAsked={(await props.searchParams).settings === "today"}
				reader={reader}
			/>
			<Exports
				address={`/specs/${number}/${revision}`}
				of="spec"
				reader={reader}
			/>
			<Workshop spec={spec} reader={reader} />
			<Section title="Revisions" lead="None of them ever changes.">
				<DataTable
					caption="Revisions"
					captionHidden
					columns={[
						{ key: "revision", label: "Revision" },
						{ key: "saved", label: "Saved" },
						{ key: "reason", label: "Why" },
					]}
					rows={revisions.map((row) => ({
						revision:
							row.revision === revision ? (
								`${row.revision} (shown)`
							) : (
								<Link href={`/specs/${number}/${row.revision}`}>
									{row.revision}
								</Link>
							),
						saved: formatDay(row.createdAt, reader),
						reason: row.reason,
					}))}
				/>
			</Section>
		</Stack>
	);
}

/** Where the models have changed since: what they would say now. The revision stays as it is. */
function Today({
	today,
	stored,
	reader,
}: {
	today: Outcome<SpecContent | null>;
	stored: SpecContent;
	reader: Reader;
}) {
	if (today.ok && today.value === null) return null;
	return (
		<Section
			title="What the models would say today"
			lead="They have changed since this revision was saved. It stays as it is."
		>
			{!today.ok || today.value === null ? (
				<p>They no longer offer a cue for these answers.</p>
			) : (
				<DataTable
					caption="Then and today"
					captionHidden
					columns={[
						{ key: "label", label: "What" },
						{ key: "before", label: "Then" },
						{ key: "after", label: "Today" },
					]}
					rows={specChanges(stored, today.value, reader).map((change) => ({
						...change,
					}))}
				/>
			)}
		</Section>
	);
}

/** Jobs opened from this spec, and the way to open one. */
async function Workshop({
	spec: { number, revision, fitting },
	reader,
}: {
	spec: SavedSpec;
	reader: Reader;
}) {
	const { say } = reader;
	const { catalogue } = await currentSettings();
	const jobs = await jobsOfSpec(number);
	const by = recalled((await cookies()).get(NAME_COOKIE)?.value);
	return (
		<Section title={say("job.send.title")} lead={say("job.send.lead")} card>
			{jobs.length > 0 && (
				<ul aria-label={say("job.send.jobs")}>
					{jobs.map((job) => (
						<li key={job.number}>
							<Link href={`/workshop/${job.number}`}>
								{say("job.send.job", {
									number: job.number,
									state: stateName(job.state, reader),
								})}
							</Link>
						</li>
					))}
				</ul>
			)}
			<Listening>
				<SendToWorkshop
					specNumber={number}
					specRevision={revision}
					playerName={fitting.player.name}
					offer={{
						tips: catalogue.tips.map(({ name }) => name),
						cases: catalogue.cases.map(({ name }) => name),
					}}
					by={by}
				/>
			</Listening>
		</Section>
	);
}
