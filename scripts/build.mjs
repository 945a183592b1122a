import { createHash } from "node:crypto";
import {
	existsSync,
	mkdirSync,
	readdirSync,
	readFileSync,
	rmSync,
	statSync,
	writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { isRunning, thisProcess } from "./processes.mjs";

export const distDir = process.env.NEXT_DIST_DIR || ".next";
const STAMP = join(distDir, "build-stamp");
/** The framework keeps this folder through a rebuild. */
const CLAIMS = join(distDir, "cache", "claims");
const BUILDING = join(CLAIMS, "building.json");

/** Not part of what is built. Anything else at the root, known or not, is: a new file rebuilds. */
const LEFT_OUT = new Set([
	"biome.json",
	"coverage",
	"data",
	"docs",
	"generated", // made from prisma/, which counts
	"next-env.d.ts",
	"node_modules", // stands behind package-lock.json, which counts
	"scripts",
	"seed",
	"shots",
	"tests",
	"vitest.config.ts",
]);

const leftOut = (name) =>
	name.startsWith(".") ||
	name === distDir ||
	LEFT_OUT.has(name) ||
	/\.(md|tsbuildinfo|log)$/.test(name);

/** SHA-256 over the names and contents of everything that is built, and the variables that are built in. */
export function sourcesHash() {
	const hash = createHash("sha256");
	const add = (path) => {
		const bytes = readFileSync(path);
		hash.update(`${path}\0${bytes.length}\0`).update(bytes);
	};
	const walk = (folder) => {
		const entries = readdirSync(folder || ".", { withFileTypes: true });
		entries.sort((a, b) => (a.name < b.name ? -1 : 1));
		for (const entry of entries) {
			if (folder === "" && leftOut(entry.name)) continue;
			const path = folder === "" ? entry.name : `${folder}/${entry.name}`;
			if (entry.isDirectory()) walk(path);
			else if (entry.isFile()) add(path);
		}
	};
	walk("");
	for (const name of Object.keys(process.env).sort())
		if (name.startsWith("NEXT_PUBLIC_"))
			hash.update(`${name}=${process.env[name]}\0`);
	return hash.digest("hex");
}

/** A claim is written in a moment; one still unreadable after this long was cut off. */
const WRITING_MS = 5_000;

/** Whether the process that left the claim still runs, as far as can be told. */
function isHeld(path) {
	try {
		return isRunning(JSON.parse(readFileSync(path, "utf8")));
	} catch (error) {
		if (error.code === "ENOENT") return false;
		if (!(error instanceof SyntaxError)) throw error;
		const written = statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0;
		return Date.now() - written < WRITING_MS;
	}
}

/** The servers that run from this build now. Claims left behind by a killed one are removed. */
function servers() {
	const paths = readdirSync(CLAIMS)
		.filter((name) => name.startsWith("serving-"))
		.map((name) => join(CLAIMS, name));
	for (const path of paths) if (!isHeld(path)) rmSync(path, { force: true });
	return paths
		.filter((path) => existsSync(path))
		.map((path) => JSON.parse(readFileSync(path, "utf8")));
}

async function claimBuilding() {
	for (let told = false; ; ) {
		try {
			writeFileSync(BUILDING, JSON.stringify(thisProcess()), { flag: "wx" });
			return;
		} catch (error) {
			if (error.code !== "EEXIST") throw error;
		}
		if (!isHeld(BUILDING)) {
			rmSync(BUILDING, { force: true });
			continue;
		}
		if (!told) console.log("waiting for another process, which builds");
		told = true;
		await wait(250);
	}
}

/** The build must be replaced, and a server runs from it. */
export class BuildInUseError extends Error {
	name = "BuildInUseError";
}

/**
 * Makes the build fit the sources and claims it for a server in this process, so that nobody rebuilds
 * it meanwhile. Calls `build` only where something changed. Throws a BuildInUseError where it must be
 * rebuilt while another server runs from it.
 * @param {{port: number, build: () => Promise<void>}} options
 * @returns {Promise<{built: boolean, release: () => void}>}
 */
export async function claimBuild({ port, build }) {
	mkdirSync(CLAIMS, { recursive: true });
	await claimBuilding();
	try {
		const wanted = sourcesHash();
		const built =
			!existsSync(join(distDir, "BUILD_ID")) ||
			!existsSync(STAMP) ||
			readFileSync(STAMP, "utf8") !== wanted;
		if (built) {
			const running = servers();
			if (running.length > 0) {
				const list = running.map((one) => `${one.pid} (port ${one.port})`);
				throw new BuildInUseError(
					`the sources have changed, and the build cannot be replaced under a running server: stop process ${list.join(", ")} first`,
				);
			}
			rmSync(STAMP, { force: true });
			await build();
			writeFileSync(STAMP, wanted);
		}
		const claim = join(CLAIMS, `serving-${process.pid}.json`);
		writeFileSync(claim, JSON.stringify({ ...thisProcess(), port }));
		return { built, release: () => rmSync(claim, { force: true }) };
	} finally {
		rmSync(BUILDING, { force: true });
	}
}
