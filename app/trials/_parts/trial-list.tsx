import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { readReader } from "@/app/_ui/preferences/loaders";
import { Invented } from "@/app/_ui/source-note";
import { formatDay } from "@/lib/present/dates";
import type { TrialSummary } from "@/lib/records/trials/data";
import { shotsPlanned } from "@/lib/trial/order";

const COLUMNS = [
	{ key: "player", label: "Player" },
	{ key: "number", label: "Trial", numeric: true },
	{ key: "cues", label: "Cues" },
	{ key: "shots", label: "Shots" },
	{ key: "begun", label: "Begun" },
] as const;

/** Trials as a table that leads to the table or to the results. */
export async function TrialList({
	trials,
}: {
	trials: readonly TrialSummary[];
}) {
	const reader = await readReader();
	return (
		<DataTable
			caption="Trials"
			captionHidden
			columns={COLUMNS}
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
							? `${plan.cues.length} cues, hidden`
							: plan.cues.map(({ name }) => name).join("; "),
					shots: `${shotCount} of ${shotsPlanned(plan)}${endedAt === null ? ", running" : ""}`,
					begun: formatDay(createdAt, reader),
				}),
			)}
		/>
	);
}
