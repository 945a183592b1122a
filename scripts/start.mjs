// npm start: generate, migrate, seed, build what changed, serve. `dev` as an argument serves without
// a build and follows edits.
import { spawn } from "node:child_process";
import { createRequire } from "node:module";
import { BuildInUseError, claimBuild } from "./build.mjs";
import { askConnections } from "./connections.mjs";
import {
	checkAddress,
	EnvironmentError,
	readEnvironment,
} from "./environment.mjs";
import { generate } from "./generate.mjs";

const require = createRequire(import.meta.url);
const isDev = process.argv[2] === "dev";
const STOP_SIGNALS = ["SIGINT", "SIGTERM", "SIGHUP"];

/** @param {string[]} args */
function run(args) {
	return new Promise((done, fail) => {
		const child = spawn(process.execPath, args, { stdio: "inherit" });
		const stop = (signal) => child.kill(signal);
		for (const signal of STOP_SIGNALS) process.on(signal, stop);
		child.once("error", fail);
		child.once("exit", (code, signal) => {
			for (const name of STOP_SIGNALS) process.off(name, stop);
			if (code === 0) done(undefined);
			else if (signal) process.kill(process.pid, signal);
			else process.exit(code ?? 1);
		});
	});
}

/**
 * The framework's server in this very process: a signal to it, whoever sends it and however, reaches
 * the server, and there is no second process to leave behind.
 * @param {{host: string, port: number}} address
 */
function serve({ host, port }) {
	process.on("SIGHUP", () => process.kill(process.pid, "SIGTERM"));
	const next = require.resolve("next/dist/bin/next");
	process.argv = [process.execPath, next, isDev ? "dev" : "start"];
	process.argv.push("--hostname", host, "--port", String(port));
	require(next);
}

/** npm hands on SIGTERM and SIGINT. Where it is killed otherwise, the server ends too instead of staying behind. */
function endWithNpm() {
	if (!process.env.npm_lifecycle_event) return;
	const npm = process.ppid;
	setInterval(() => {
		if (process.ppid !== npm) process.kill(process.pid, "SIGTERM");
	}, 500).unref();
}

try {
	endWithNpm();
	const environment = readEnvironment(process.env);
	await checkAddress(environment);
	process.env.NODE_ENV = isDev ? "development" : "production";
	process.env.NEXT_TELEMETRY_DISABLED = "1";
	process.env.DATABASE_URL = environment.databaseUrl;
	process.env.ONLINE_WORK_BITS = String(environment.workBits);
	if (!environment.isBehindProxy) askConnections();
	if (!environment.isLoopback) {
		console.warn(
			`WARNING: HOST=${environment.host} can be reached from other machines, and there is no sign-in yet: whoever reaches it reads and changes everything.`,
		);
	}

	if (generate()) console.log("generated the database client");
	await run([
		"--conditions=react-server",
		"--import=tsx",
		"scripts/prepare.ts",
	]);
	if (!isDev) {
		const { built, release } = await claimBuild({
			port: environment.port,
			build: () => run([require.resolve("next/dist/bin/next"), "build"]),
		});
		process.on("exit", release);
		if (!built) console.log("nothing changed since the last build");
	}
	console.log(`data in ${environment.databaseName}`);
	serve(environment);
} catch (error) {
	const isForTheReader =
		error instanceof EnvironmentError || error instanceof BuildInUseError;
	console.error(isForTheReader ? error.message : error);
	process.exit(error instanceof EnvironmentError ? 2 : 1);
}
