import Link from "next/link";
import type { ReactNode } from "react";
import type { Preferences } from "../preferences/choices";
import { MainNav } from "./main-nav";
import styles from "./shell.module.css";
import { DeviceTheme, ThemeSwitch } from "./theme-switch";
import { UnitSwitch } from "./unit-switch";

/** The frame of every page: skip link, header with the main ways, one `main`, footer. */
export function Shell({
	preferences,
	children,
}: {
	preferences: Preferences;
	children: ReactNode;
}) {
	return (
		<div className={styles.shell}>
			<a className={styles.skip} href="#main">
				Skip to the content
			</a>
			<header className={styles.header}>
				<div className={styles.bar}>
					<Link className={styles.name} href="/">
						Cue fitting advisor
					</Link>
					<MainNav />
					<div className={styles.switches}>
						<UnitSwitch system={preferences.system} />
						<ThemeSwitch />
					</div>
				</div>
				<div className={styles.cue} aria-hidden="true" />
			</header>
			<main className={styles.main} id="main" tabIndex={-1}>
				{children}
			</main>
			<footer className={styles.footer}>
				<p>
					Estimates to try at the table, with their spread. They replace neither
					a maker’s eye nor a trial.
				</p>
				{preferences.theme !== null && <DeviceTheme />}
			</footer>
		</div>
	);
}
