import { CuePicture } from "@/app/_ui/cue-picture/cue-picture";
import { DataTable } from "@/app/_ui/data-table";
import { jobWoods } from "@/lib/present/job-facts";
import { sheetView } from "@/lib/present/sheet-view";
import type { Reader } from "@/lib/words/reader";
import type { JobContent } from "@/lib/workshop/job-content";
import styles from "./job.module.css";

/** The cue of a revision: picture, figures with what is allowed, woods and parts. */
export function CuePart({
	content: { build, extras },
	reader,
}: {
	content: JobContent;
	reader: Reader;
}) {
	const { say } = reader;
	const { summary } = sheetView(build, reader);
	return (
		<>
			<CuePicture
				design={build.design}
				balanceFromButtMm={build.targets.balance.value}
			/>
			<DataTable
				caption={say("job.cue.figures")}
				columns={[
					{ key: "figure", label: say("job.cue.figure") },
					{ key: "value", label: say("job.cue.value") },
					{ key: "allowed", label: say("job.cue.allowed") },
				]}
				rows={summary.map(({ label, value, allowed }) => ({
					figure: label,
					value: `${value.main} · ${value.other}`,
					allowed,
				}))}
			/>
			<dl className={styles.facts} aria-label={say("job.cue.woods")}>
				{jobWoods({ build, extras }, reader).map(({ label, value }) => (
					<div key={label}>
						<dt>{label}</dt>
						<dd>{value}</dd>
					</div>
				))}
			</dl>
		</>
	);
}
