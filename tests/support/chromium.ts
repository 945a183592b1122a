import { existsSync } from "node:fs";

const PLACES = [
	"/usr/bin/chromium",
	"/usr/bin/chromium-browser",
	"/usr/bin/google-chrome",
	"/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/** Where the browser is: CHROMIUM, or a usual place. Throws where there is none: a run without it has not tested the app. */
export function chromiumPath(env: NodeJS.ProcessEnv): string {
	if (env.CHROMIUM) {
		if (existsSync(env.CHROMIUM)) return env.CHROMIUM;
		throw new Error(`CHROMIUM names no file: ${env.CHROMIUM}`);
	}
	const found = PLACES.find((place) => existsSync(place));
	if (found) return found;
	throw new Error(
		`the browser tests need Chromium: install it (Debian: apt-get install chromium) or set CHROMIUM to its path. Looked at ${PLACES.join(", ")}`,
	);
}
