"use client";

import { useReader } from "./preferences/reader";
import styles from "./states.module.css";

/** Something is on its way; announced once, still where motion is unwelcome. */
export function Busy({ label }: { label?: string }) {
	const { say } = useReader();
	return (
		<div className={styles.busy} role="status">
			<span className={styles.track} aria-hidden="true" />
			<span>{label ?? say("part.working")}</span>
		</div>
	);
}
