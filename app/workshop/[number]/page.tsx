import type { Metadata } from "next";
import { cookies } from "next/headers";
import Link from "next/link";
import { LinkButton } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { Notice } from "@/app/_ui/notice";
import { readReader } from "@/app/_ui/preferences/loaders";
import { Actions, PageHead, Section, Stack } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { Exports } from "@/app/specs/_parts/exports";
import { formatDay } from "@/lib/present/dates";
import {
	dueView,
	eventText,
	stateName,
	waitingText,
} from "@/lib/present/job-view";
import { benchRevision } from "@/lib/records/jobs/data";
import { countAhead, neighbourJob } from "@/lib/records/jobs/loaders";
import { currentSettings, today } from "@/lib/records/settings/loaders";
import { listLinks } from "@/lib/records/share-links/loaders";
import { getSpecRevision } from "@/lib/records/specs/loaders";
import { cueOf } from "@/lib/workshop/job-change";
import { isClosed } from "@/lib/workshop/job-rules";
import { leadTime } from "@/lib/workshop/lead-time";
import { startingQuote } from "@/lib/workshop/quote";
import { addDays } from "@/lib/workshop/working-days";
import { AgreementPart } from "../_parts/agreement-part";
import {
	KEYS_COOKIE,
	NAME_COOKIE,
	recalled,
	SEARCH_HASH,
} from "../_parts/bench-choices";
import { ChangeEditor } from "../_parts/change-editor";
import { CuePart } from "../_parts/cue-part";
import { CustomerLink } from "../_parts/customer-link";
import styles from "../_parts/job.module.css";
import { ByField, JobDesk } from "../_parts/job-desk";
import { CustomerForm, DueForm, NoteForm } from "../_parts/job-details";
import { JobMoves } from "../_parts/job-moves";
import { PAPER_PARAM } from "../_parts/job-sheet";
import { type JobParams, jobOf, WHOLE } from "../_parts/loaders";
import {
	asked,
	jobHref,
	type queryOf,
	queueHref,
	readFilter,
	type SearchParams,
} from "../_parts/queue-filter";
import { QuotePart } from "../_parts/quote-part";
import { Revisions } from "../_parts/revisions";
import { SingleKeys } from "../_parts/single-keys";
import { TakeBack } from "../_parts/take-back";
import { AsBuiltPart } from "./checks/_parts/as-built-part";

export async function generateMetadata(props: JobParams): Promise<Metadata> {
	const { say } = await readReader();
	return { title: say("job.title", { number: (await jobOf(props)).number }) };
}

/** How long the customer's page opens unless the workshop says otherwise. */
const USUAL_LINK_DAYS = 365;

/** Everything about one job. */
export default async function JobPage(
	props: JobParams & { searchParams: Promise<SearchParams> },
) {
	const job = await jobOf(props);
	const reader = await readReader();
	const { say } = reader;
	const params = await props.searchParams;
	const filter = readFilter(params);
	const paper = WHOLE.exec(String(params[PAPER_PARAM] ?? ""))?.[0];
	const bench = benchRevision(job).revision;
	const day = today();
	const settings = await currentSettings();
	const jar = await cookies();
	const { number, state, latest, agreed, isAgreed } = job;
	const { content } = latest;
	const neighbour = (direction: "next" | "previous") =>
		neighbourJob(number, { ...asked(filter), today: day, direction });
	const [next, previous, links, ahead, spec] = [
		await neighbour("next"),
		await neighbour("previous"),
		await listLinks({ jobId: job.id }),
		await countAhead(),
		job.spec === null ? null : await getSpecRevision(job.spec.number),
	];
	const due = dueView({
		dueOn: job.dueOn,
		isOpen: !isClosed(state),
		today: day,
		reader,
	});
	const usual = leadTime({
		leadTimes: settings.leadTimes,
		request: content.build.request,
		hasAddedWeight: content.build.addedWeight.metalMassG > 0,
		cuesAhead: ahead,
		from: day,
	});
	const customer = job.customerName || say("job.erased");
	const hrefOf = (to: number | null) =>
		to === null ? null : address(jobHref(to, filter));
	return (
		<JobDesk
			number={number}
			revision={job.revision}
			by={recalled(jar.get(NAME_COOKIE)?.value)}
		>
			<Stack>
				<PageHead
					title={
						<>
							{say("job.titleFor", { number, customer })}{" "}
							{job.isDemo && <Invented />}
						</>
					}
					lead={say("job.lead", {
						state: stateName(state, reader),
						since: formatDay(job.stateSince, reader),
						due: due.text,
					})}
					actions={
						<>
							<LinkButton look="main" href={`/workshop/${number}/sheet`}>
								{say("job.openSheet")}
							</LinkButton>
							<LinkButton href={queueHref(filter)}>
								{say("job.toQueue")}
							</LinkButton>
						</>
					}
				/>
				<nav className={styles.around} aria-label={say("job.around")}>
					{previous !== null && (
						<Link
							href={jobHref(previous, filter)}
							rel="prev"
							aria-keyshortcuts="p k"
						>
							{say("job.previous")}
						</Link>
					)}
					{next !== null && (
						<Link
							href={jobHref(next, filter)}
							rel="next"
							aria-keyshortcuts="n j"
						>
							{say("job.next")}
						</Link>
					)}
				</nav>
				{paper !== undefined && Number(paper) !== bench && (
					<Notice kind="caution" title={say("sheet.oldPaper")}>
						{say("sheet.oldPaperAbout", { paper, bench })}
					</Notice>
				)}
				{due.standing === "overdue" && (
					<Notice kind="caution" title={say("job.overdue")}>
						{due.text}
					</Notice>
				)}
				<Section title={say("job.moves.title")} card>
					<p className={styles.state}>
						{stateName(state, reader)}
						{job.waiting !== null && (
							<span> ({waitingText(job.waiting, reader)})</span>
						)}
					</p>
					{state === "asked" && <p>{say("job.moves.waitsForQuote")}</p>}
					{state === "quoted" && <p>{say("job.moves.waitsForYes")}</p>}
					{agreed !== null && !isAgreed && !isClosed(state) && (
						<Notice kind="caution">
							{say("job.moves.notAgreed", {
								revision: latest.revision,
								agreed: agreed.revision,
							})}
						</Notice>
					)}
					<ByField />
					<JobMoves key={job.revision} state={state} />
					{agreed !== null && !isAgreed && !isClosed(state) && (
						<TakeBack revision={agreed.revision} />
					)}
					{(state === "checked" || state === "handed-over") && (
						<>
							<p>{say("care.openLead")}</p>
							<Actions>
								<LinkButton href={`/workshop/${number}/care`}>
									{say("care.open")}
								</LinkButton>
							</Actions>
						</>
					)}
				</Section>
				<AsBuiltPart job={job} reader={reader} />
				<Section
					title={say("job.cue.title")}
					lead={say("job.cue.asOf", { revision: latest.revision })}
				>
					<CuePart content={content} reader={reader} />
					{!isClosed(state) && (
						<ChangeEditor
							key={latest.revision}
							cue={cueOf(content.build)}
							extras={content.extras}
							offer={{
								tips: settings.catalogue.tips.map(({ name }) => name),
								cases: settings.catalogue.cases.map(({ name }) => name),
							}}
							latestRevision={latest.revision}
							laterSpec={
								spec !== null &&
								job.spec !== null &&
								spec.latestRevision > job.spec.revision
									? { number: spec.number, revision: spec.latestRevision }
									: null
							}
							money={content.quote ?? settings.prices}
							quotedMinor={content.quote?.priceMinor ?? null}
						/>
					)}
				</Section>
				<QuotePart
					job={job}
					start={startingQuote({
						price: content.price,
						prices: settings.prices,
						today: day,
					})}
					today={day}
					reader={reader}
				/>
				<AgreementPart job={job} today={day} reader={reader} />
				<Section title={say("job.link.title")} lead={say("job.link.lead")}>
					<CustomerLink
						openCount={
							links.filter(
								({ revokedAt, expiresAt }) =>
									revokedAt === null &&
									(expiresAt === null || expiresAt > new Date()),
							).length
						}
						allCount={links.length}
						usualLastDay={addDays(day, USUAL_LINK_DAYS)}
					/>
				</Section>
				<Revisions job={job} reader={reader} />
				<Section title={say("job.details.title")}>
					<DueForm
						key={job.dueOn}
						dueOn={job.dueOn}
						hint={
							usual.ok
								? say("job.details.usualDue", {
										ahead,
										date: formatDay(usual.value.dueOn, reader),
									})
								: say("job.details.dueHint")
						}
					/>
					<CustomerForm
						name={job.customerName}
						contact={job.customerContact}
						notes={job.notes}
					/>
					{job.consentAt !== null && (
						<p>
							{say("job.details.consent", {
								date: formatDay(job.consentAt, reader),
							})}
						</p>
					)}
					<dl className={styles.facts}>
						{job.player !== null && (
							<div>
								<dt>{say("job.details.player")}</dt>
								<dd>
									<Link href={`/players/${job.player.id}`}>
										{job.player.name}
									</Link>
								</dd>
							</div>
						)}
						<div>
							<dt>{say("job.details.from")}</dt>
							<dd>
								{job.spec === null ? (
									say("job.details.online")
								) : (
									<Link href={`/specs/${job.spec.number}/${job.spec.revision}`}>
										{say("job.details.spec", {
											number: job.spec.number,
											revision: job.spec.revision,
										})}
									</Link>
								)}
							</dd>
						</div>
					</dl>
				</Section>
				<Exports address={`/workshop/${number}`} of="job" reader={reader} />
				<Section title={say("job.history.title")}>
					<NoteForm />
					<DataTable
						caption={say("job.history.title")}
						captionHidden
						columns={[
							{ key: "when", label: say("job.history.when") },
							{ key: "who", label: say("job.history.who") },
							{ key: "what", label: say("job.history.what") },
						]}
						rows={job.events.map((event) => ({
							when: formatDay(event.createdAt, reader),
							who: event.by,
							what: `${eventText(event, reader)} ${event.note}`.trim(),
						}))}
					/>
				</Section>
				<SingleKeys
					isOn={jar.get(KEYS_COOKIE)?.value !== "off"}
					around={{
						next: hrefOf(next),
						previous: hrefOf(previous),
						search: `${address(queueHref(filter))}${SEARCH_HASH}`,
					}}
				/>
			</Stack>
		</JobDesk>
	);
}

const address = ({
	pathname,
	query,
}: {
	pathname: string;
	query: ReturnType<typeof queryOf>;
}): string => {
	const text = new URLSearchParams(query).toString();
	return text === "" ? pathname : `${pathname}?${text}`;
};
