import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { chromiumPath } from "./chromium";

declare module "vitest" {
	interface ProvidedContext {
		/** Of the server the browser tests share, such as http://127.0.0.1:4711 */
		baseUrl: string;
		chromiumPath: string;
	}
}

export interface RunningServer {
	readonly baseUrl: string;
	/** What it has printed so far. */
	readonly output: () => string;
	/** Ends it by the signal, and waits until it has ended. */
	readonly stop: (signal?: NodeJS.Signals) => Promise<void>;
}

/** With a build from nothing on a slow machine. */
const START_LIMIT_MS = 240_000;

/** A port of this machine that nothing listens on now. */
export function freePort(): Promise<number> {
	return new Promise((done, fail) => {
		const probe = createServer();
		probe.once("error", fail);
		probe.listen(0, "127.0.0.1", () => {
			const address = probe.address();
			probe.close(() =>
				address && typeof address === "object"
					? done(address.port)
					: fail(new Error("no port was given")),
			);
		});
	});
}

/**
 * Starts the app as `npm start` does, on the data folder given, and waits until it answers: it
 * migrates, seeds, and builds where the sources have changed since the last build.
 */
export async function startServer({
	dataDir,
	port,
}: {
	dataDir: string;
	port: number;
}): Promise<RunningServer> {
	const baseUrl = `http://127.0.0.1:${port}`;
	const { DATABASE_URL: _, ...environment } = process.env;
	const server = spawn(process.execPath, ["scripts/start.mjs"], {
		env: {
			...environment,
			NODE_ENV: "production",
			HOST: "127.0.0.1",
			PORT: String(port),
			DATA_DIR: dataDir,
		},
		stdio: ["ignore", "pipe", "pipe"],
	});
	let output = "";
	const note = (chunk: Buffer) => {
		output += chunk.toString();
	};
	server.stdout.on("data", note);
	server.stderr.on("data", note);
	const ended = new Promise<void>((done) => server.once("exit", () => done()));
	const stop = async (signal: NodeJS.Signals = "SIGTERM") => {
		if (isOver(server)) return;
		server.kill(signal);
		await ended;
	};
	try {
		await firstAnswer(baseUrl, () => isOver(server));
	} catch (error) {
		await stop("SIGKILL");
		throw new Error(`the server did not start:\n${output}`, { cause: error });
	}
	return { baseUrl, output: () => output, stop };
}

async function firstAnswer(url: string, isOver: () => boolean): Promise<void> {
	for (const deadline = Date.now() + START_LIMIT_MS; ; ) {
		const status = await fetch(url, { redirect: "manual" }).then(
			(response) => response.status,
			() => null, // nothing listens yet
		);
		if (status !== null && status < 500) return;
		if (status !== null) throw new Error(`${url} answers ${status}`);
		if (isOver()) throw new Error("the process ended");
		if (Date.now() > deadline)
			throw new Error(`no answer within ${START_LIMIT_MS} ms`);
		await new Promise((done) => setTimeout(done, 100));
	}
}

const isOver = (child: ChildProcess) =>
	child.exitCode !== null || child.signalCode !== null;

/** The browser project's shared server. Without a browser nothing is started and the run fails. */
export default async function setup(project: TestProject) {
	project.provide("chromiumPath", chromiumPath(process.env));
	const dataDir = mkdtempSync(join(tmpdir(), "browser-test-"));
	const server = await startServer({ dataDir, port: await freePort() });
	project.provide("baseUrl", server.baseUrl);
	return async () => {
		await server.stop();
		rmSync(dataDir, { recursive: true });
	};
}
