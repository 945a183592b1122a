import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { readReader } from "@/app/_ui/preferences/loaders";
import { Invented } from "@/app/_ui/source-note";
import { type TrialParams, trialOf } from "../_parts/loaders";
import { Logger } from "../_parts/logger";
import styles from "../_parts/trial.module.css";

export async function generateMetadata(props: TrialParams): Promise<Metadata> {
	const { number } = await trialOf(props);
	const { say } = await readReader();
	return { title: say("trials.trial", { number: String(number) }) };
}

/** At the table: one shot after another. An ended trial shows what it says instead. */
export default async function TrialPage(props: TrialParams) {
	const { id, number, player, isDemo, plan, shots, endedAt } =
		await trialOf(props);
	const { say } = await readReader();
	if (endedAt !== null) redirect(`/trials/${number}/results`);
	return (
		<>
			<h1 className={styles.tableHead}>
				{say.rich("trials.heading", {
					number: String(number),
					player: () => (
						<Link href={`/players/${player.id}`}>{player.name}</Link>
					),
				})}{" "}
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
