import { DataTable } from "@/app/_ui/data-table";
import { Section } from "@/app/_ui/section";
import { formatDay } from "@/lib/present/dates";
import { differenceRows } from "@/lib/present/job-view";
import type { JobRecord, JobRevisionRecord } from "@/lib/records/jobs/data";
import type { Reader } from "@/lib/words/reader";
import { jobDifferences } from "@/lib/workshop/job-difference";
import styles from "./job.module.css";

/** Every revision of a job, latest first, with what it changed. */
export function Revisions({
	job: { revisions },
	reader,
}: {
	job: JobRecord;
	reader: Reader;
}) {
	const { say } = reader;
	return (
		<Section
			title={say("job.revisions.title")}
			lead={say("job.revisions.lead")}
		>
			<ol className={styles.revisions}>
				{revisions.map((revision, i) => (
					<li key={revision.id}>
						<Revision
							revision={revision}
							before={revisions[i + 1] ?? null}
							reader={reader}
						/>
					</li>
				))}
			</ol>
		</Section>
	);
}

function Revision({
	revision: {
		revision,
		createdAt,
		by,
		reason,
		content,
		agreement,
		contentSha256,
	},
	before,
	reader,
}: {
	revision: JobRevisionRecord;
	before: JobRevisionRecord | null;
	reader: Reader;
}) {
	const { say } = reader;
	return (
		<article className={styles.revision}>
			<h3>
				{say("job.revisions.one", { revision })}
				{agreement !== null && (
					<span className={styles.agreed}>{say("job.revisions.agreed")}</span>
				)}
			</h3>
			<p className={styles.soft}>
				{say("job.revisions.by", { date: formatDay(createdAt, reader), by })}
			</p>
			{reason !== "" && <p>{reason}</p>}
			{before === null ? (
				<p>{say("job.revisions.first")}</p>
			) : (
				<Changes
					before={before}
					after={{ revision, content }}
					reader={reader}
				/>
			)}
			<p className={styles.checksum}>
				{say("job.revisions.checksum", { sha: contentSha256.slice(0, 16) })}
			</p>
		</article>
	);
}

/** What one revision changes against another, in words. */
export function Changes({
	before,
	after,
	reader,
}: {
	before: Pick<JobRevisionRecord, "revision" | "content">;
	after: Pick<JobRevisionRecord, "revision" | "content">;
	reader: Reader;
}) {
	const { say } = reader;
	const rows = differenceRows(
		jobDifferences(before.content, after.content),
		reader,
	);
	if (rows.length === 0) return <p>{say("job.revisions.nothing")}</p>;
	return (
		<DataTable
			caption={say("job.revisions.changed", { revision: before.revision })}
			columns={[
				{ key: "label", label: say("job.change.what") },
				{
					key: "before",
					label: say("job.revisions.one", { revision: before.revision }),
				},
				{
					key: "after",
					label: say("job.revisions.one", { revision: after.revision }),
				},
			]}
			rows={rows.map((row) => ({ ...row }))}
		/>
	);
}
