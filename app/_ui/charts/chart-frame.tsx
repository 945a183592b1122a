"use client";

import { type ReactNode, useId } from "react";
import type { ChartModel } from "@/lib/present/chart-model";
import { DataTable } from "../data-table";
import { useReader } from "../preferences/reader";
import styles from "./chart.module.css";

/** What stands round a drawing: its title, the same in words, and the same as a table. */
export function ChartFrame({
	model,
	heading = "h3",
	children,
}: {
	model: ChartModel;
	heading?: "h2" | "h3" | "h4";
	children: ReactNode;
}) {
	const { say } = useReader();
	const id = useId();
	const Heading = heading;
	const columns = model.table.columns.map((label, index) => ({
		key: String(index),
		label,
		numeric: true,
	}));
	const rows = model.table.rows.map((row) =>
		Object.fromEntries(row.map((cell, index) => [String(index), cell])),
	);
	return (
		<figure className={styles.frame} aria-labelledby={`${id}-title`}>
			<Heading className={styles.title} id={`${id}-title`}>
				{model.title}
			</Heading>
			<div
				className={styles.drawing}
				role="img"
				aria-labelledby={`${id}-title`}
				aria-describedby={`${id}-summary`}
			>
				{children}
			</div>
			<figcaption className={styles.summary} id={`${id}-summary`}>
				{model.summary}
			</figcaption>
			<details className={styles.table}>
				<summary>{say("part.asTable")}</summary>
				<DataTable
					caption={model.title}
					captionHidden
					columns={columns}
					rows={rows}
				/>
			</details>
		</figure>
	);
}
