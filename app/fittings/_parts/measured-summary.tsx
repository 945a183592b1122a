"use client";

import { useWatch } from "react-hook-form";
import { DataTable } from "@/app/_ui/data-table";
import { measuredRows } from "@/lib/present/measured-view";
import { useDesk } from "./desk";
import styles from "./fitting.module.css";

/** Every measure with its reading: read, could not be measured, or not asked. Stands inside a FittingDesk. */
export function MeasuredSummary() {
	const { control, reader } = useDesk();
	const { say } = reader;
	const rows = measuredRows(useWatch({ control }), reader);
	const hasNotes = rows.some(({ note }) => note !== "");
	return (
		<details className={styles.more}>
			<summary>{say("fitting.measured.summary")}</summary>
			<DataTable
				caption={say("fitting.measured.caption")}
				captionHidden
				columns={[
					{ key: "measure", label: say("fitting.measured.measure") },
					{ key: "reading", label: say("fitting.measured.reading") },
					...(hasNotes
						? [{ key: "note", label: say("fitting.measured.note") } as const]
						: []),
				]}
				rows={rows}
				narrow="stack"
			/>
		</details>
	);
}
