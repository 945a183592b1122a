import type { ReactNode } from "react";
import styles from "./states.module.css";

/** Nothing here yet: says so, and what to do about it. */
export function EmptyState({
	title,
	children,
	action,
}: {
	title: ReactNode;
	children?: ReactNode;
	action?: ReactNode;
}) {
	return (
		<div className={styles.empty}>
			<p className={styles.emptyTitle}>{title}</p>
			{children !== undefined && <p className={styles.soft}>{children}</p>}
			{action}
		</div>
	);
}
