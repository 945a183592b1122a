import { LinkButton } from "@/app/_ui/button";
import { Section } from "@/app/_ui/section";
import { proposalWords } from "@/lib/present/trial-offers";
import type { TrialAnswer } from "@/lib/trial/answer";
import type { RackCue } from "@/lib/trial/preference";
import type { Reader } from "@/lib/words/reader";
import styles from "./trial.module.css";

/** The two cues whose trial would teach most now. */
export function NextPair({
	answer,
	cues,
	playerId,
	reader,
}: {
	answer: TrialAnswer;
	cues: readonly RackCue[];
	playerId: string;
	reader: Reader;
}) {
	const [first] = answer.proposals;
	if (first === undefined) return null;
	const { title, lines } = proposalWords(
		first,
		(id) => cues.find((cue) => cue.id === id)?.name ?? id,
		reader,
		true,
	);
	return (
		<Section
			title={reader.say("trials.next")}
			lead={title}
			actions={
				<LinkButton href={`/trials/new?player=${playerId}`}>
					{reader.say("trials.startThat")}
				</LinkButton>
			}
		>
			<ul className={styles.list}>
				{lines.map((line) => (
					<li key={line}>{line}</li>
				))}
			</ul>
		</Section>
	);
}
