import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { readReader } from "@/app/_ui/preferences/loaders";
import { Invented } from "@/app/_ui/source-note";
import { formatDay } from "@/lib/present/dates";
import type { TrialSummary } from "@/lib/records/trials/data";
import { shotsPlanned } from "@/lib/trial/order";

/** Trials as a table that leads to the table or to the results. */
export async function TrialList({
	trials,
}: {
	trials: readonly TrialSummary[];
}) {
	const reader = await readReader();
	const { say } = reader;
	return (
		<DataTable
			caption={say("trials.title")}
			captionHidden
			columns={[
				{ key: "player", label: say("trials.column.player") },
				{ key: "number", label: say("trials.column.number"), numeric: true },
				{ key: "cues", label: say("trials.column.cues") },
				{ key: "shots", label: say("trials.column.shots") },
				{ key: "begun", label: say("trials.column.begun") },
			]}
			rows={trials.map(
				({ number, player, isDemo, plan, shotCount, createdAt, endedAt }) => ({
					player: (
						<>
							<Link
								href={
									endedAt === null
										? `/trials/${number}`
										: `/trials/${number}/results`
								}
							>
								{player.name}
							</Link>{" "}
							{isDemo && <Invented />}
						</>
					),
					number,
					cues:
						plan.isHidden && endedAt === null
							? say("trials.hidden", { count: String(plan.cues.length) })
							: plan.cues.map(({ name }) => name).join("; "),
					shots: say(endedAt === null ? "trials.running" : "trials.shotsOf", {
						shots: String(shotCount),
						planned: String(shotsPlanned(plan)),
					}),
					begun: formatDay(createdAt, reader),
				}),
			)}
		/>
	);
}
