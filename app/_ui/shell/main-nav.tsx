"use client";

import Link from "next/link";
import { usePathname } from "next/navigation";
import styles from "./shell.module.css";

const WAYS = [
	{ href: "/fittings", label: "Fittings" },
	{ href: "/players", label: "Players" },
	{ href: "/cues", label: "Cue" },
	{ href: "/sources", label: "Sources" },
] as const;

export function MainNav() {
	const path = usePathname();
	return (
		<nav className={styles.nav} aria-label="Main">
			<ul>
				{WAYS.map(({ href, label }) => {
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
								{label}
							</Link>
						</li>
					);
				})}
			</ul>
		</nav>
	);
}
