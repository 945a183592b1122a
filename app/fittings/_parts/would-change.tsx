"use client";

import { useReader } from "@/app/_ui/preferences/reader";
import { Section } from "@/app/_ui/section";
import type { Influence } from "@/lib/advice/sensitivity";
import { influenceViews } from "@/lib/present/change-words";
import styles from "./search.module.css";

/** Which open answer would move the recommendation most, by the models. */
export function WouldChange({
	influences,
}: {
	influences: readonly Influence[] | null;
}) {
	const reader = useReader();
	const { say } = reader;
	const views = influences === null ? null : influenceViews(influences, reader);
	return (
		<Section
			title={say("fitting.change.title")}
			lead={say("fitting.change.lead")}
		>
			{views === null && <p role="status">{say("fitting.change.working")}</p>}
			{views?.length === 0 && <p>{say("fitting.change.nothing")}</p>}
			{views !== null && views.length > 0 && (
				<ol className={styles.list}>
					{views.map(({ answer, text }) => (
						<li key={answer}>{text}</li>
					))}
				</ol>
			)}
		</Section>
	);
}
