"use client";

import type { ReactNode } from "react";
import styles from "./listening.module.css";
import { useOnDevice } from "./use-on-device";

/**
 * Fields and buttons that take nothing until the page's script listens: what is typed or pressed
 * before would be lost without a word.
 */
export function Listening({ children }: { children: ReactNode }) {
	const isListening = useOnDevice();
	return (
		<fieldset
			className={styles.listening}
			disabled={!isListening}
			data-waits={isListening ? undefined : ""}
			role="presentation"
		>
			{children}
		</fieldset>
	);
}
