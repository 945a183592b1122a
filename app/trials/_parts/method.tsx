import { SourceNote } from "@/app/_ui/source-note";
import { methodLines, methodSources } from "@/lib/present/trial-method";
import type { Reader } from "@/lib/words/reader";
import styles from "./trial.module.css";

/** How the numbers come about, and what is a guess in them. */
export const Method = ({ reader }: { reader: Reader }) => (
	<details className={styles.more}>
		<summary>{reader.say("trials.method")}</summary>
		<ul className={styles.list}>
			{methodLines(reader).map((line) => (
				<li key={line}>{line}</li>
			))}
		</ul>
		<SourceNote sources={methodSources(reader)} />
	</details>
);
