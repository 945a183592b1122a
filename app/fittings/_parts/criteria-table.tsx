"use client";

import { DataTable } from "@/app/_ui/data-table";
import { useReader } from "@/app/_ui/preferences/reader";
import type { Criterion } from "@/lib/advice/criteria";
import { criterionRow } from "@/lib/present/criterion-words";
import styles from "./search.module.css";

/** What every cue is judged by, with where its marks come from. */
export function CriteriaTable({
	criteria,
}: {
	criteria: readonly Criterion[];
}) {
	const reader = useReader();
	const { say } = reader;
	return (
		<details className={styles.more}>
			<summary>{say("fitting.criteria.title")}</summary>
			<DataTable
				caption={say("fitting.criteria.title")}
				captionHidden
				rowKey="name"
				columns={[
					{ key: "name", label: say("fitting.criteria.name") },
					{ key: "about", label: say("fitting.criteria.about") },
					{ key: "ideal", label: say("fitting.criteria.ideal") },
					{ key: "acceptable", label: say("fitting.criteria.acceptable") },
					{ key: "unacceptable", label: say("fitting.criteria.unacceptable") },
					{ key: "weight", label: say("fitting.criteria.weight") },
					{ key: "basis", label: say("fitting.criteria.basis") },
					{ key: "sources", label: say("fitting.criteria.sources") },
				]}
				rows={criteria.map((criterion) => ({
					...criterionRow(criterion, reader),
				}))}
			/>
		</details>
	);
}
