import Link from "next/link";
import { LinkButton } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { Invented } from "@/app/_ui/source-note";
import { formatDay } from "@/lib/present/dates";
import {
	cueLine,
	dueView,
	stateName,
	waitingText,
} from "@/lib/present/job-view";
import { formatAmount } from "@/lib/present/money";
import type { JobSummary } from "@/lib/records/jobs/data";
import type { Reader } from "@/lib/words/reader";
import { isClosed } from "@/lib/workshop/job-rules";
import styles from "./queue.module.css";
import { jobHref, type QueueFilter, queueHref } from "./queue-filter";

const COLUMNS = ["number", "customer", "cue", "state", "due", "price"] as const;

/** The queue as a table that leads into each job. */
export function QueueList({
	jobs,
	filter,
	today,
	reader,
}: {
	jobs: readonly JobSummary[];
	filter: QueueFilter;
	today: string;
	reader: Reader;
}) {
	const { say } = reader;
	if (jobs.length === 0) return <NoJobs filter={filter} reader={reader} />;
	return (
		<div data-queue>
			<DataTable
				caption={say("workshop.list")}
				captionHidden
				columns={COLUMNS.map((key) => ({
					key,
					label: say(`workshop.columns.${key}`),
					numeric: key === "price",
				}))}
				rows={jobs.map((job) => ({
					number: (
						<Link
							className={styles.job}
							href={jobHref(job.number, filter)}
							data-job
						>
							{say("job.title", { number: job.number })}
						</Link>
					),
					customer: (
						<span>
							{job.customerName || say("job.erased")}{" "}
							{job.isDemo && <Invented />}
						</span>
					),
					cue: cueLine(job.latest.content.build, reader),
					state: <State job={job} reader={reader} />,
					due: <Due job={job} today={today} reader={reader} />,
					price: priceOf(job, reader),
				}))}
			/>
		</div>
	);
}

function State({ job, reader }: { job: JobSummary; reader: Reader }) {
	const { state, waiting, stateSince, isAgreed } = job;
	const hasOpenChange =
		!isAgreed && !isClosed(state) && state !== "asked" && state !== "quoted";
	return (
		<span className={styles.state}>
			<strong>{stateName(state, reader)}</strong>
			<span>
				{waiting === null
					? reader.say("workshop.since", {
							date: formatDay(stateSince, reader),
						})
					: waitingText(waiting, reader)}
			</span>
			{hasOpenChange && <span>{reader.say("workshop.notAgreed")}</span>}
		</span>
	);
}

function Due({
	job,
	today,
	reader,
}: {
	job: JobSummary;
	today: string;
	reader: Reader;
}) {
	const { text, standing } = dueView({
		dueOn: job.dueOn,
		isOpen: !isClosed(job.state),
		today,
		reader,
	});
	return (
		<span className={styles.due} data-standing={standing}>
			{standing === "overdue"
				? reader.say("workshop.overdue", { date: text })
				: text}
		</span>
	);
}

function priceOf(job: JobSummary, reader: Reader): string {
	const { quote } = job.latest.content;
	return quote === null
		? reader.say("workshop.notQuoted")
		: formatAmount(quote.priceMinor, quote, reader);
}

function NoJobs({ filter, reader }: { filter: QueueFilter; reader: Reader }) {
	const { say } = reader;
	const isFiltered =
		filter.state !== "open" || filter.due !== null || filter.search !== "";
	return isFiltered ? (
		<EmptyState
			title={say("workshop.noneFound")}
			action={
				<LinkButton href={queueHref({ state: "open", due: null, search: "" })}>
					{say("workshop.showOpen")}
				</LinkButton>
			}
		>
			{say("workshop.noneFoundAbout")}
		</EmptyState>
	) : (
		<EmptyState
			title={say("workshop.empty")}
			action={
				<LinkButton look="main" href="/fittings">
					{say("workshop.toFittings")}
				</LinkButton>
			}
		>
			{say("workshop.emptyAbout")}
		</EmptyState>
	);
}
