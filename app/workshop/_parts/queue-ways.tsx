import Link from "next/link";
import type { ReactNode } from "react";
import { stateName } from "@/lib/present/job-view";
import { type JobCounts, MOST_COUNTED } from "@/lib/records/jobs/loaders";
import type { Reader } from "@/lib/words/reader";
import { DUE_FILTERS } from "@/lib/workshop/due-filter";
import { JOB_STATES, OPEN_STATES } from "@/lib/workshop/job-state";
import styles from "./queue.module.css";
import { type QueueFilter, queueHref } from "./queue-filter";

/** The states with how many jobs stand in each, and the due days: each an address of its own. */
export function QueueWays({
	counts,
	filter,
	reader,
}: {
	counts: JobCounts;
	filter: QueueFilter;
	reader: Reader;
}) {
	const { say } = reader;
	const counted = (count: number) =>
		count >= MOST_COUNTED
			? say("workshop.counted", { most: String(MOST_COUNTED) })
			: String(count);
	const open = OPEN_STATES.reduce(
		(sum, state) => sum + counts.byState[state],
		0,
	);
	return (
		<div className={styles.ways}>
			<Ways label={say("workshop.states")}>
				{(["open", ...JOB_STATES] as const).map((state) => (
					<Way
						key={state}
						filter={{ ...filter, state }}
						isHere={filter.state === state}
						name={
							state === "open" ? say("workshop.open") : stateName(state, reader)
						}
						count={counted(state === "open" ? open : counts.byState[state])}
					/>
				))}
			</Ways>
			<Ways label={say("workshop.dues")}>
				{([null, ...DUE_FILTERS] as const).map((due) => (
					<Way
						key={due ?? "all"}
						filter={{ ...filter, due }}
						isHere={filter.due === due}
						name={say(`workshop.due.${due ?? "all"}`)}
						count={due === "overdue" ? counted(counts.overdue) : null}
						isUrgent={due === "overdue" && counts.overdue > 0}
					/>
				))}
			</Ways>
		</div>
	);
}

const Ways = ({ label, children }: { label: string; children: ReactNode }) => (
	<nav aria-label={label}>
		<ul className={styles.row}>{children}</ul>
	</nav>
);

function Way({
	filter,
	isHere,
	name,
	count,
	isUrgent = false,
}: {
	filter: QueueFilter;
	isHere: boolean;
	name: string;
	count: string | null;
	isUrgent?: boolean;
}) {
	return (
		<li>
			<Link
				className={styles.way}
				href={queueHref(filter)}
				aria-current={isHere ? "true" : undefined}
				data-urgent={isUrgent || undefined}
			>
				{name} {count !== null && <span className={styles.count}>{count}</span>}
			</Link>
		</li>
	);
}
