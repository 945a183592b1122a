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
	return (
		<details className={styles.more}>
			<summary>What a cue is judged by</summary>
			<DataTable
				caption="What a cue is judged by"
				captionHidden
				rowKey="name"
				columns={[
					{ key: "name", label: "Quantity" },
					{ key: "about", label: "What it is" },
					{ key: "ideal", label: "Ideal" },
					{ key: "acceptable", label: "Acceptable between" },
					{ key: "unacceptable", label: "Unacceptable" },
					{ key: "weight", label: "Weight" },
					{ key: "basis", label: "Rests on" },
					{ key: "sources", label: "Sources" },
				]}
				rows={criteria.map((criterion) => ({
					...criterionRow(criterion, reader),
				}))}
			/>
		</details>
	);
}
