import type { Reader } from "@/lib/words/reader";
import { chooseTheme } from "../preferences/actions";
import { THEME_COOKIE } from "../preferences/choices";
import styles from "./shell.module.css";

/** Both ways are rendered; the style sheet shows the one that the theme in force leaves open. */
export function ThemeSwitch({ reader }: { reader: Reader }) {
	const [toDark, toLight] = [
		reader.say("shell.useDark"),
		reader.say("shell.useLight"),
	];
	return (
		<form action={chooseTheme}>
			<button
				className={styles.toDark}
				type="submit"
				name={THEME_COOKIE}
				value="dark"
				aria-label={toDark}
				title={toDark}
			>
				<Moon />
			</button>
			<button
				className={styles.toLight}
				type="submit"
				name={THEME_COOKIE}
				value="light"
				aria-label={toLight}
				title={toLight}
			>
				<Sun />
			</button>
		</form>
	);
}

/** Hands the choice of theme back to the device. */
export function DeviceTheme({ reader }: { reader: Reader }) {
	return (
		<form action={chooseTheme}>
			<button
				className={styles.quiet}
				type="submit"
				name={THEME_COOKIE}
				value="device"
			>
				{reader.say("shell.deviceTheme")}
			</button>
		</form>
	);
}

const Moon = () => (
	<svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
		<path
			d="M20 14.5A8.5 8.5 0 0 1 9.5 4a8.5 8.5 0 1 0 10.5 10.5Z"
			fill="currentColor"
		/>
	</svg>
);

const Sun = () => (
	<svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
		<circle cx="12" cy="12" r="4.5" fill="currentColor" />
		<path
			d="M12 2v3M12 19v3M2 12h3M19 12h3M4.9 4.9 7 7M17 17l2.1 2.1M19.1 4.9 17 7M7 17l-2.1 2.1"
			stroke="currentColor"
			strokeWidth="2"
			strokeLinecap="round"
		/>
	</svg>
);
