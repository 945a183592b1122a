"use client";

import Link from "next/link";
import { usePathname } from "next/navigation";
import { useEffect, useRef, useState, useSyncExternalStore } from "react";
import { Button } from "@/app/_ui/button";
import { useReader } from "@/app/_ui/preferences/reader";
import { formatMoment } from "@/lib/present/moments";
import styles from "./offline-bar.module.css";
import { takeOver, useWorker, useWorkerState } from "./use-worker";

function onNetwork(listener: () => void): () => void {
	window.addEventListener("online", listener);
	window.addEventListener("offline", listener);
	return () => {
		window.removeEventListener("online", listener);
		window.removeEventListener("offline", listener);
	};
}

/** False where the device says that it has no network; true may still mean that nobody answers. */
const useOnline = (): boolean =>
	useSyncExternalStore(
		onNetwork,
		() => navigator.onLine,
		() => true,
	);

/** Says that there is no network and how old the page is, and that a newer build of the app waits. */
export function OfflineBar({
	build,
	manner,
}: {
	build: string | null;
	manner: string;
}) {
	const { say, language } = useReader();
	const isOnline = useOnline();
	const path = usePathname();
	const { waiting } = useWorkerState();
	const [asOf, setAsOf] = useState<Date | null>(null);
	const [isHeld, setHeld] = useState(false);
	const shown = useRef<string | null>(null);
	useWorker(build, manner);

	useEffect(() => {
		if (shown.current === path || !navigator.onLine) return;
		shown.current = path;
		setAsOf(new Date());
	}, [path]);

	// Units, language and theme are the server's to set: without it the form would only fail.
	useEffect(() => {
		if (isOnline) {
			setHeld(false);
			return;
		}
		const hold = (event: SubmitEvent) => {
			if (
				!(event.target instanceof Element) ||
				event.target.closest("header, footer") === null
			)
				return;
			event.preventDefault();
			event.stopPropagation();
			setHeld(true);
		};
		document.addEventListener("submit", hold, true);
		return () => document.removeEventListener("submit", hold, true);
	}, [isOnline]);

	if (isOnline && waiting === null) return null;
	return (
		<div className={styles.bar}>
			{!isOnline && (
				<p role="status">
					<strong>{say("offline.bar.title")}</strong>{" "}
					{asOf !== null && !path.startsWith("/coaching")
						? say("offline.bar.asOf", {
								moment: formatMoment(asOf, { language }, { now: new Date() }),
							})
						: say("offline.bar.session")}{" "}
					{isHeld && say("offline.bar.held")}{" "}
					{path !== "/coaching" && (
						<Link href="/coaching" prefetch={false}>
							{say("offline.bar.open")}
						</Link>
					)}
				</p>
			)}
			{waiting !== null && isOnline && (
				<p role="status">
					{say("offline.bar.newer")}{" "}
					<Button onClick={() => takeOver(waiting)}>
						{say("offline.bar.takeOver")}
					</Button>
				</p>
			)}
		</div>
	);
}
