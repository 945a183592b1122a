"use client";

import { usePathname, useSearchParams } from "next/navigation";
import { useEffect, useState } from "react";
import { useReader } from "../preferences/reader";
import styles from "./shell.module.css";

/** A page that comes sooner needs no word. */
const PATIENCE_MS = 400;
/** By then the browser itself has given up or gone there. */
const LONGEST_MS = 30_000;

/** Says that the page asked for is on its way, for links the browser itself shows nothing of. */
export function Opening() {
	const { say } = useReader();
	const place = `${usePathname()}?${useSearchParams()}`;
	const [from, setFrom] = useState<string | null>(null);
	useEffect(() => {
		let soon: ReturnType<typeof setTimeout>;
		let late: ReturnType<typeof setTimeout>;
		const begin = (event: MouseEvent) => {
			const link =
				event.target instanceof Element ? event.target.closest("a") : null;
			// A link that the router follows has its own going prevented.
			if (link === null || !event.defaultPrevented) return;
			const { pathname, searchParams } = new URL(link.href);
			if (`${pathname}?${searchParams}` === place) return;
			clearTimeout(soon);
			clearTimeout(late);
			soon = setTimeout(() => setFrom(place), PATIENCE_MS);
			late = setTimeout(() => setFrom(null), LONGEST_MS);
		};
		addEventListener("click", begin);
		return () => {
			removeEventListener("click", begin);
			clearTimeout(soon);
			clearTimeout(late);
		};
	}, [place]);
	return (
		<div role="status" className={styles.opening}>
			{from === place && (
				<>
					<span className={styles.openingTrack} aria-hidden="true" />
					<span className={styles.openingWord}>{say("shell.opening")}</span>
				</>
			)}
		</div>
	);
}
