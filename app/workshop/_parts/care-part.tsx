import { careGroups } from "@/lib/present/care-view";
import type { Reader } from "@/lib/words/reader";
import type { JobContent } from "@/lib/workshop/job-content";
import styles from "./care.module.css";

/** How the cue is looked after, in the words of its own parts. Its place has the heading. */
export function CarePart({
	content,
	reader,
}: {
	content: Pick<JobContent, "build" | "extras">;
	reader: Reader;
}) {
	return (
		<>
			<div className={styles.groups}>
				{careGroups(content, reader).map(({ title, lines }) => (
					<section key={title} className={styles.group}>
						<h3>{title}</h3>
						<ul>
							{lines.map((line) => (
								<li key={line}>{line}</li>
							))}
						</ul>
					</section>
				))}
			</div>
			<p className={styles.soft}>{reader.say("care.about")}</p>
		</>
	);
}
