"use client";

import Link from "next/link";
import { usePathname } from "next/navigation";
import { useReader } from "../preferences/reader";
import styles from "./shell.module.css";

const WAYS = ["fittings", "players", "cues", "workshop", "sources"] as const;

export function MainNav() {
	const { say } = useReader();
	const path = usePathname();
	// Who was sent an address or puts a cue together is a customer: the workshop's books are not theirs.
	if (path.startsWith("/agree/") || /^\/build(\/|$)/.test(path)) return null;
	return (
		<nav className={styles.nav} aria-label={say("shell.ways")}>
			<ul>
				{WAYS.map((way) => {
					const href = `/${way}`;
					const within = path === href || path.startsWith(`${href}/`);
					return (
						<li key={href}>
							<Link
								className={styles.way}
								href={href}
								aria-current={
									path === href ? "page" : within ? "true" : undefined
								}
							>
								{say(`shell.${way}`)}
							</Link>
						</li>
					);
				})}
			</ul>
		</nav>
	);
}
