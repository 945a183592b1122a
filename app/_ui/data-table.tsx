import type { ReactNode } from "react";
import styles from "./data-table.module.css";

export interface Column {
	readonly key: string;
	readonly label: ReactNode;
	/** Numbers align at the end. */
	readonly numeric?: boolean;
}

/**
 * A table with a caption; the first column names its row. On a phone a table of numbers scrolls
 * within itself, and one with words sets each row as a small block; `narrow` says otherwise.
 */
export function DataTable({
	caption,
	captionHidden = false,
	columns,
	rows,
	rowKey,
	narrow = columns.slice(1).every(({ numeric }) => numeric)
		? "scroll"
		: "stack",
}: {
	caption: string;
	captionHidden?: boolean;
	columns: readonly Column[];
	rows: readonly Readonly<Record<string, ReactNode>>[];
	/** The column whose plain text tells rows apart; by place otherwise. */
	rowKey?: string;
	narrow?: "scroll" | "stack";
}) {
	return (
		// A group, not a landmark: its section has the same name.
		// biome-ignore lint/a11y/useSemanticElements: a fieldset is for controls
		<div
			className={styles.scroll}
			role="group"
			aria-label={caption}
			// biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reachable by keyboard
			tabIndex={0}
		>
			<table
				className={
					narrow === "stack" ? `${styles.table} ${styles.stack}` : styles.table
				}
			>
				<caption className={captionHidden ? styles.unseen : styles.caption}>
					{caption}
				</caption>
				<thead>
					<tr>
						{columns.map(({ key, label, numeric }) => (
							<th key={key} scope="col" data-numeric={numeric || undefined}>
								{label}
							</th>
						))}
					</tr>
				</thead>
				<tbody>
					{rows.map((row, index) => (
						<tr key={rowKey === undefined ? index : String(row[rowKey])}>
							{columns.map(({ key, label, numeric }, column) =>
								column === 0 ? (
									<th key={key} scope="row" data-numeric={numeric || undefined}>
										{row[key]}
									</th>
								) : (
									<td
										key={key}
										data-numeric={numeric || undefined}
										data-label={typeof label === "string" ? label : undefined}
									>
										{row[key]}
									</td>
								),
							)}
						</tr>
					))}
				</tbody>
			</table>
		</div>
	);
}
