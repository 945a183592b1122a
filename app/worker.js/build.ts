import "server-only";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { ICON_NAMES } from "@/lib/documents/app-icon";

const folder = (): string =>
	join(
		/* turbopackIgnore: true */ process.cwd(),
		process.env.NEXT_DIST_DIR || ".next",
	);

/** The id of the build that is served; null while developing, where files change under their names. */
export function buildId(): string | null {
	if (process.env.NODE_ENV !== "production") return null;
	const file = join(folder(), "BUILD_ID");
	return existsSync(file) ? readFileSync(file, "utf8").trim() : null;
}

/** Addresses of all files a page of this build may ask for. */
export function buildFiles(): string[] {
	const files = readdirSync(join(folder(), "static"), {
		recursive: true,
		withFileTypes: true,
	})
		.filter((entry) => entry.isFile() && !entry.name.endsWith(".map"))
		.map((entry) => {
			const path = join(entry.parentPath, entry.name);
			const inside = path.slice(join(folder(), "static").length + 1);
			return `/_next/static/${inside.split(/[\\/]/).map(encodeURIComponent).join("/")}`;
		});
	return [
		...files.sort(),
		"/manifest.webmanifest",
		...ICON_NAMES.map((name) => `/icons/${name}`),
	];
}
