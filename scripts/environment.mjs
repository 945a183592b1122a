import { accessSync, constants, mkdirSync } from "node:fs";
import { createServer, isIP } from "node:net";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const OLDEST_NODE = [20, 19];
const DATABASE_NAME = "cue-fitting.db";
/** 14 bits are 16 000 hashes on average: well under a second on a phone, unseen behind a form. */
const WORK_BITS = { usual: 14, most: 24 };

/** What is wrong with the environment, one line for each variable, in words for the person starting the app. */
export class EnvironmentError extends Error {
	/** @param {string[]} problems */
	constructor(problems) {
		super(problems.join("\n"));
		this.name = "EnvironmentError";
	}
}

/**
 * Reads HOST, PORT, DATA_DIR, DATABASE_URL, ONLINE_WORK_BITS and BEHIND_PROXY once, with their defaults. An empty variable counts as
 * not set. Throws an EnvironmentError that names every variable that is wrong.
 * @param {NodeJS.ProcessEnv} env
 */
export function readEnvironment(env) {
	const problems = [];
	const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
	const [oldestMajor = 0, oldestMinor = 0] = OLDEST_NODE;
	if (major < oldestMajor || (major === oldestMajor && minor < oldestMinor)) {
		problems.push(
			`Node.js ${OLDEST_NODE.join(".")} or later is needed, this is ${process.versions.node}`,
		);
	}

	const host = env.HOST || "127.0.0.1";
	if (isIP(host) === 0 && !/^[a-z0-9]([a-z0-9.-]*[a-z0-9])?$/i.test(host)) {
		problems.push(
			`HOST must be an address or a host name to listen on, such as 127.0.0.1, without scheme or port; got "${host}"`,
		);
	}

	const port = Number(env.PORT || "3000");
	if (
		!/^\d+$/.test(env.PORT || "3000") ||
		!(Number.isInteger(port) && port >= 1 && port <= 65_535)
	) {
		problems.push(
			`PORT must be a whole number from 1 to 65535; got "${env.PORT}"`,
		);
	}

	const workBits = Number(env.ONLINE_WORK_BITS || WORK_BITS.usual);
	if (
		!/^\d+$/.test(env.ONLINE_WORK_BITS || "0") ||
		!(workBits <= WORK_BITS.most)
	)
		problems.push(
			`ONLINE_WORK_BITS must be a whole number from 0 to ${WORK_BITS.most}: each one more doubles what a browser works before it may send a cue (usual: ${WORK_BITS.usual}); got "${env.ONLINE_WORK_BITS}"`,
		);
	const behindProxy = env.BEHIND_PROXY || "no";
	if (behindProxy !== "yes" && behindProxy !== "no")
		problems.push(
			`BEHIND_PROXY must be yes or no: whether requests come through a proxy of yours that writes down in X-Forwarded-For who asked; got "${behindProxy}"`,
		);

	const database = databaseFile(env);
	if ("problem" in database) problems.push(database.problem);
	if (problems.length > 0) throw new EnvironmentError(problems);
	const { file, variable } = database;
	if (file !== null)
		try {
			mkdirSync(dirname(file), { recursive: true });
			accessSync(dirname(file), constants.W_OK);
		} catch (error) {
			throw new EnvironmentError([
				`${variable}: cannot write in ${dirname(file)} (${error.code ?? error.message})`,
			]);
		}
	return {
		host,
		port,
		workBits,
		isBehindProxy: behindProxy === "yes",
		databaseUrl: database.url,
		databaseName: database.name,
		isLoopback:
			host === "localhost" || host === "::1" || host.startsWith("127."),
	};
}

/** @param {NodeJS.ProcessEnv} env */
function databaseFile(env) {
	const url = env.DATABASE_URL;
	if (!url) {
		const file = resolve(env.DATA_DIR || "data", DATABASE_NAME);
		return inFile(file, "DATA_DIR");
	}
	const variable = "DATABASE_URL";
	if (/^postgres(ql)?:\/\//.test(url)) return onServer(url);
	const path = url.slice("file:".length);
	if (!url.startsWith("file:") || path === "" || /[?]|:memory:/.test(path)) {
		return {
			problem: `DATABASE_URL must name a SQLite file as file:<path>, such as file:${join("data", DATABASE_NAME)}, or a PostgreSQL database as postgresql://user@host/name; got one that begins with "${url.split(":")[0]}:"`,
		};
	}
	return inFile(
		url.startsWith("file://") ? fileURLToPath(url) : resolve(path),
		variable,
	);
}

/**
 * @param {string} file
 * @param {string} variable
 */
const inFile = (file, variable) => ({
	file,
	variable,
	url: pathToFileURL(file).href,
	name: file,
});

/** The name leaves the user and the password out: it is printed. @param {string} url */
function onServer(url) {
	const parsed = tryParse(url);
	if (parsed === null || parsed.hostname === "" || parsed.pathname.length < 2)
		return {
			problem:
				"DATABASE_URL must name a PostgreSQL database as postgresql://user@host/name",
		};
	return {
		file: null,
		variable: "DATABASE_URL",
		url,
		name: `${parsed.host}${parsed.pathname}`,
	};
}

/** @param {string} url */
function tryParse(url) {
	try {
		return new URL(url);
	} catch {
		return null; // said by the caller
	}
}

/**
 * Throws an EnvironmentError, naming HOST or PORT, where the app could not listen there: better
 * known before a build than after.
 * @param {{host: string, port: number}} address
 */
export function checkAddress({ host, port }) {
	return new Promise((done, fail) => {
		const probe = createServer();
		probe.once("error", (error) => {
			const { code } = /** @type {NodeJS.ErrnoException} */ (error);
			const reason =
				code === "EADDRINUSE"
					? `PORT ${port} on ${host} is in use by another program: stop it, or set PORT to another`
					: code === "EACCES"
						? `PORT ${port} needs rights that this user does not have: set PORT to 1024 or more`
						: `HOST ${host} is not an address of this machine (${code})`;
			fail(new EnvironmentError([reason]));
		});
		probe.listen(port, host, () => probe.close(() => done(undefined)));
	});
}
