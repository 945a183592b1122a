import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { Invented } from "@/app/_ui/source-note";
import { type TrialParams, trialOf } from "../_parts/loaders";
import { Logger } from "../_parts/logger";
import styles from "../_parts/trial.module.css";

export async function generateMetadata(props: TrialParams): Promise<Metadata> {
	return { title: `Trial ${(await trialOf(props)).number}` };
}

/** At the table: one shot after another. An ended trial shows what it says instead. */
export default async function TrialPage(props: TrialParams) {
	const { id, number, player, isDemo, plan, shots, endedAt } =
		await trialOf(props);
	if (endedAt !== null) redirect(`/trials/${number}/results`);
	return (
		<>
			<h1 className={styles.tableHead}>
				Trial {number}:{" "}
				<Link href={`/players/${player.id}`}>{player.name}</Link>{" "}
				{isDemo && <Invented />}
			</h1>
			<Logger
				key={id}
				trialId={id}
				trialNumber={number}
				plan={plan}
				server={shots}
			/>
		</>
	);
}
