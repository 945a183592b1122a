import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { stageName } from "@/lib/present/check-view";
import { formatDay } from "@/lib/present/dates";
import type { CheckRecord } from "@/lib/records/checks/data";
import type { Reader } from "@/lib/words/reader";
import type { OpenFinding } from "@/lib/workshop/check";
import { DecideForm } from "./decide-form";
import { Findings } from "./findings";

/** What stands out of tolerance, check by check, and what was or can be decided of it. */
export function OpenFindings({
	open,
	checks,
	reader,
}: {
	open: readonly OpenFinding[];
	checks: readonly CheckRecord[];
	reader: Reader;
}) {
	const { say } = reader;
	const concerned = checks.filter(({ id }) =>
		open.some(({ check }) => check.id === id),
	);
	if (concerned.length === 0) return null;
	return (
		<Section
			title={say("checks.open.title")}
			lead={say("checks.open.lead")}
			card
		>
			{concerned.map(({ id, stage, by, createdAt, decided }) => {
				const from = say("checks.open.from", {
					stage: stageName(stage, reader),
					by,
					when: formatDay(createdAt, reader),
				});
				return (
					<section key={id} aria-label={from}>
						<p>{from}</p>
						<Findings
							caption={from}
							findings={open.filter(({ check }) => check.id === id)}
							reader={reader}
						/>
						{decided !== null && decided.decision !== "accept" && (
							<Notice kind="caution">
								{say(`checks.open.${decided.decision}`, { by: decided.by })}
								{decided.note !== "" && ` ${decided.note}`}
							</Notice>
						)}
						<DecideForm checkId={id} isFinished={stage === "finished"} />
					</section>
				);
			})}
		</Section>
	);
}
