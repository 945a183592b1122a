import type { ReactNode } from "react";
import styles from "./notice.module.css";

export type NoticeKind = "notice" | "caution" | "error" | "done";

const WORDS: Readonly<Record<NoticeKind, string>> = {
	notice: "Note",
	caution: "Caution",
	error: "Not possible",
	done: "Done",
};

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
	const role = !live ? undefined : kind === "error" ? "alert" : "status";
	return (
		<div className={`${styles.notice} ${styles[kind]}`} role={role}>
			<p className={styles.title}>{title ?? WORDS[kind]}</p>
			{children !== undefined && <div className={styles.body}>{children}</div>}
		</div>
	);
}
