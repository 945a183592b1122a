import { Section } from "@/app/_ui/section";
import { refusalView } from "@/lib/present/notices";
import { weightRows } from "@/lib/present/sheet-rows";
import type { CheckRecord } from "@/lib/records/checks/data";
import type { Reader } from "@/lib/words/reader";
import { billetsOf } from "@/lib/workshop/check";
import type { BuildContent } from "@/lib/workshop/job-content";
import { replanned } from "@/lib/workshop/replan";
import { weighedCue } from "@/lib/workshop/weighed-cue";
import styles from "./checks.module.css";

/** The metal for the cue as it was weighed before any; nothing where it was not, or is finished already. */
export function ReplanPart({
	checks,
	build,
	reader,
}: {
	/** Latest first. */
	checks: readonly CheckRecord[];
	build: BuildContent;
	reader: Reader;
}) {
	const { say } = reader;
	const from = checks.findIndex(
		({ stage }) => stage === "before-weighting" || stage === "finished",
	);
	const check = checks[from];
	if (check?.stage !== "before-weighting") return null;
	const weighed = weighedCue(build, check.stage, check.content.figures);
	const billets = billetsOf(checks.slice(from));
	if (!weighed.ok || !billets.ok) return null;
	const plan = replanned(build, weighed.value, billets.value);
	return (
		<Section
			title={say("checks.replan.title")}
			lead={say("checks.replan.lead")}
		>
			{plan.ok ? (
				<dl className={styles.rows}>
					{weightRows(plan.value, reader).map(({ label, value, note }) => (
						<div key={label}>
							<dt>{label}</dt>
							<dd>
								{value}
								{note !== undefined && <small>{note}</small>}
							</dd>
						</div>
					))}
				</dl>
			) : (
				<>
					<p>{say("checks.replan.fails")}</p>
					<ul>
						{plan.refusals.map((refusal) => (
							<li key={refusal.code}>{refusalView(refusal, reader).text}</li>
						))}
					</ul>
				</>
			)}
		</Section>
	);
}
