"use client";

import type { ReactNode } from "react";
import { Button } from "@/app/_ui/button";
import { useReader } from "@/app/_ui/preferences/reader";
import styles from "./settings.module.css";

/** Rows of fields that can be taken out one by one. */
export function RowList({
	rows,
	remove,
	nameOf,
	children,
}: {
	/** A key for each row. */
	rows: readonly string[];
	remove: (place: number) => void;
	/** What is removed, for its button. */
	nameOf: (place: number) => string;
	children: (place: number) => ReactNode;
}) {
	const { say } = useReader();
	if (rows.length === 0) return null;
	return (
		<ul className={styles.rows}>
			{rows.map((key, i) => (
				<li className={styles.row} key={key}>
					<div className={styles.rowFields}>{children(i)}</div>
					<Button
						look="quiet"
						aria-label={say("settings.catalogue.removeNamed", {
							what: nameOf(i),
						})}
						onClick={() => remove(i)}
					>
						{say("settings.catalogue.remove")}
					</Button>
				</li>
			))}
		</ul>
	);
}
