import styles from "./states.module.css";

/** Something is on its way; announced once, still where motion is unwelcome. */
export function Busy({ label = "Working…" }: { label?: string }) {
	return (
		<div className={styles.busy} role="status">
			<span className={styles.track} aria-hidden="true" />
			<span>{label}</span>
		</div>
	);
}
