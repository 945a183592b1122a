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
	const { say } = await readReader();
	return {
		title: say("specs.title", {
			number: String(number),
			revision: String(revision),
		}),
	};
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
	const { say } = reader;
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
						{say("specs.title", {
							number: String(number),
							revision: String(revision),
						})}{" "}
						{fitting.isDemo && <Invented />}
					</>
				}
				lead={say("specs.lead", {
					name: fitting.player.name,
					date: formatDay(createdAt, reader),
				})}
				actions={
					<>
						<LinkButton look="main" href={`/specs/${number}/${revision}/sheet`}>
							{say("specs.sheet")}
						</LinkButton>
						{revision === latestRevision && (
							<LinkButton
								href={`/fittings/${fitting.number}/summary`}
								prefetch={false}
							>
								{reader.say("summary.open")}
							</LinkButton>
						)}
						<LinkButton href={`/fittings/${fitting.number}/recommendation`}>
							{say("specs.back")}
						</LinkButton>
					</>
				}
			/>
			{revision < latestRevision && (
				<Notice title={say("specs.later")}>
					{say.rich("specs.laterAbout", {
						revision: String(latestRevision),
						later: (words) => (
							<Link href={`/specs/${number}/${latestRevision}`}>{words}</Link>
						),
					})}
				</Notice>
			)}
			<Section title={say("specs.figures")}>
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
			<Section title={say("specs.picture")}>
				<CuePicture
					design={content.design}
					balanceFromButtMm={figures.balance.exact}
				/>
			</Section>
			{earlier !== null && (
				<Section
					title={say("specs.changed", { revision: String(revision - 1) })}
					lead={reason || undefined}
				>
					{changes.length === 0 ? (
						<p>{say("specs.nothing")}</p>
					) : (
						<DataTable
							caption={say("specs.changed", { revision: String(revision - 1) })}
							captionHidden
							columns={[
								{ key: "label", label: say("specs.what") },
								{
									key: "before",
									label: say("specs.revision", {
										revision: String(revision - 1),
									}),
								},
								{
									key: "after",
									label: say("specs.revision", { revision: String(revision) }),
								},
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
			<Section title={say("specs.revisions")} lead={say("specs.revisionsLead")}>
				<DataTable
					caption={say("specs.revisions")}
					captionHidden
					columns={[
						{ key: "revision", label: say("specs.column.revision") },
						{ key: "saved", label: say("specs.column.saved") },
						{ key: "reason", label: say("specs.column.reason") },
					]}
					rows={revisions.map((row) => ({
						revision:
							row.revision === revision ? (
								say("specs.shown", { revision: String(row.revision) })
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
	const { say } = reader;
	if (today.ok && today.value === null) return null;
	return (
		<Section title={say("specs.today.title")} lead={say("specs.today.lead")}>
			{!today.ok || today.value === null ? (
				<p>{say("specs.today.none")}</p>
			) : (
				<DataTable
					caption={say("specs.today.caption")}
					captionHidden
					columns={[
						{ key: "label", label: say("specs.what") },
						{ key: "before", label: say("specs.today.then") },
						{ key: "after", label: say("specs.today.now") },
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
