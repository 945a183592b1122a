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
	const views = influences === null ? null : influenceViews(influences, reader);
	return (
		<Section
			title="What would change this"
			lead="Each open answer is taken as it may turn out, one standard deviation either side, and the cue worked out anew; strongest first."
		>
			{views === null && <p role="status">Being worked out…</p>}
			{views?.length === 0 && (
				<p>Nothing left open would move it by as much as a player notices.</p>
			)}
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
