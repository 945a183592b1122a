import { SourceNote } from "@/app/_ui/source-note";
import { methodLines, methodSources } from "@/lib/present/trial-words";
import styles from "./trial.module.css";

/** How the numbers come about, and what is a guess in them. */
export const Method = () => (
	<details className={styles.more}>
		<summary>How this is computed, and what is assumed</summary>
		<ul className={styles.list}>
			{methodLines().map((line) => (
				<li key={line}>{line}</li>
			))}
		</ul>
		<SourceNote sources={methodSources()} />
	</details>
);
