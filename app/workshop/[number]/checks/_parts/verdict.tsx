import type { Verdict } from "@/lib/present/check-view";
import styles from "./checks.module.css";

/** A finding in words; the colour only repeats them. */
export function VerdictText({
	verdict,
	children,
}: {
	verdict: Verdict;
	children: string;
}) {
	return (
		<span className={`${styles.verdict} ${styles[verdict]}`}>{children}</span>
	);
}
