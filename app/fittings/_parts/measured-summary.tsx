"use client";

import { useWatch } from "react-hook-form";
import { DataTable } from "@/app/_ui/data-table";
import { measuredRows } from "@/lib/present/measured-view";
import { useDesk } from "./desk";
import styles from "./fitting.module.css";

const COLUMNS = [
	{ key: "measure", label: "Measure" },
	{ key: "reading", label: "Reading" },
] as const;
const NOTE = { key: "note", label: "Note" } as const;

/** Every measure with its reading: read, could not be measured, or not asked. Stands inside a FittingDesk. */
export function MeasuredSummary() {
	const { control, reader } = useDesk();
	const rows = measuredRows(useWatch({ control }), reader);
	const hasNotes = rows.some(({ note }) => note !== "");
	return (
		<details className={styles.more}>
			<summary>What was measured, and what could not be</summary>
			<DataTable
				caption="Measures of this fitting"
				captionHidden
				columns={hasNotes ? [...COLUMNS, NOTE] : COLUMNS}
				rows={rows}
				narrow="stack"
			/>
		</details>
	);
}
