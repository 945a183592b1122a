import Link from "next/link";
import { type ReactNode, Suspense } from "react";
import type { Reader } from "@/lib/words/reader";
import type { Theme } from "../preferences/choices";
import { LanguageSwitch } from "./language-switch";
import { MainNav } from "./main-nav";
import { Opening } from "./opening";
import styles from "./shell.module.css";
import { DeviceTheme, ThemeSwitch } from "./theme-switch";
import { UnitSwitch } from "./unit-switch";

/** The frame of every page: skip link, header with the main ways, one `main`, footer. */
export function Shell({
	reader,
	theme,
	children,
}: {
	reader: Reader;
	theme: Theme | null;
	children: ReactNode;
}) {
	const { say } = reader;
	return (
		<div className={styles.shell}>
			<a className={styles.skip} href="#main">
				{say("shell.skip")}
			</a>
			<Suspense>
				<Opening />
			</Suspense>
			<header className={styles.header}>
				<div className={styles.bar}>
					<Link className={styles.name} href="/">
						{say("shell.name")}
					</Link>
					<MainNav />
					<div className={styles.switches}>
						<LanguageSwitch reader={reader} />
						<UnitSwitch reader={reader} />
						<ThemeSwitch reader={reader} />
					</div>
				</div>
				<div className={styles.cue} aria-hidden="true" />
			</header>
			<main className={styles.main} id="main" tabIndex={-1}>
				{children}
			</main>
			<footer className={styles.footer}>
				<p>{say("shell.promise")}</p>
				{theme !== null && <DeviceTheme reader={reader} />}
			</footer>
		</div>
	);
}
