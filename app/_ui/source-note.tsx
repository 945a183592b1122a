"use client";

import Link from "next/link";
import { useReader } from "./preferences/reader";
import styles from "./source-note.module.css";

/** What a part of a page rests on, with the way to the full list. */
export function SourceNote({
	basis,
	sources,
}: {
	/** "Published figures", "Common practice, no published source". */
	basis?: string;
	sources: readonly string[];
}) {
	const { say } = useReader();
	return (
		<p className={styles.note}>
			{basis !== undefined && <strong>{basis}. </strong>}
			{sources.length > 0 && (
				<>
					{say("part.source", {
						count: sources.length,
						sources: sources.join("; "),
					})}{" "}
				</>
			)}
			<Link href="/sources">{say("part.allSources")}</Link>
		</p>
	);
}

/** Marks data that stands for nobody. */
export function Invented() {
	const { say } = useReader();
	return (
		<span className={styles.invented} title={say("part.inventedAbout")}>
			{say("part.invented")}
		</span>
	);
}
