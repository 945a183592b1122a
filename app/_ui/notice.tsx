"use client";

import type { ReactNode } from "react";
import styles from "./notice.module.css";
import { useReader } from "./preferences/reader";

export type NoticeKind = "notice" | "caution" | "error" | "done";

/**
 * A message beside what it is about. The kind is a word as well as a colour. `live` announces it to
 * a screen reader when it appears after an action.
 */
export function Notice({
	kind = "notice",
	title,
	live = false,
	children,
}: {
	kind?: NoticeKind;
	title?: ReactNode;
	live?: boolean;
	children?: ReactNode;
}) {
	const { say } = useReader();
	const role = !live ? undefined : kind === "error" ? "alert" : "status";
	return (
		<div className={`${styles.notice} ${styles[kind]}`} role={role}>
			<p className={styles.title}>{title ?? say(`part.notice.${kind}`)}</p>
			{children !== undefined && <div className={styles.body}>{children}</div>}
		</div>
	);
}
