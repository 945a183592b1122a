import { Section } from "@/app/_ui/section";
import { compareAsBuilt } from "@/lib/build/as-built";
import {
	billetLines,
	decisionText,
	plainReadings,
	stageName,
} from "@/lib/present/check-view";
import { formatDay } from "@/lib/present/dates";
import type { CheckRecord } from "@/lib/records/checks/data";
import type { Reader } from "@/lib/words/reader";
import type { BuildContent } from "@/lib/workshop/job-content";
import styles from "./checks.module.css";
import { Findings } from "./findings";

/** Every check of the job, as it was read. */
export function CheckList({
	checks,
	build,
	reader,
}: {
	checks: readonly CheckRecord[];
	build: BuildContent;
	reader: Reader;
}) {
	const { say } = reader;
	if (checks.length === 0)
		return (
			<Section title={say("checks.list.title")}>
				<p>{say("checks.none")}</p>
			</Section>
		);
	return (
		<Section title={say("checks.list.title")} lead={say("checks.list.lead")}>
			<ol className={styles.checks}>
				{checks.map((check) => (
					<OneCheck
						key={check.id}
						check={check}
						build={build}
						reader={reader}
					/>
				))}
			</ol>
		</Section>
	);
}

function OneCheck({
	check: { stage, content, by, createdAt, decided },
	build,
	reader,
}: {
	check: CheckRecord;
	build: BuildContent;
	reader: Reader;
}) {
	const { say } = reader;
	const when = formatDay(createdAt, reader);
	const { findings, unplacedStationsMm } = compareAsBuilt(
		build,
		content.figures,
		stage,
	);
	const plain = plainReadings(content, findings, reader);
	return (
		<li className={styles.check}>
			<h3>{stageName(stage, reader)}</h3>
			<p className={styles.soft}>{say("checks.list.by", { by, when })}</p>
			{findings.length > 0 && (
				<Findings
					caption={say("checks.list.caption", {
						stage: stageName(stage, reader),
						when,
					})}
					findings={findings}
					reader={reader}
				/>
			)}
			{billetLines(content, reader).map((line) => (
				<p key={line}>{line}</p>
			))}
			{plain.length > 0 && (
				<p>{say("checks.list.blank", { figures: plain.join(", ") })}</p>
			)}
			{unplacedStationsMm.length > 0 && (
				<p>
					{say("checks.list.unplaced", { count: unplacedStationsMm.length })}
				</p>
			)}
			{content.note !== "" && <p>{content.note}</p>}
			{decided !== null && <p>{decisionText(decided, reader)}</p>}
		</li>
	);
}
