import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { temporaryFolder } from "../support/database";

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
	folder = temporaryFolder();
});
afterEach(() => folder.remove());

describe("the environment", () => {
	const start = (env: Record<string, string>) => {
		const { status, stdout, stderr } = spawnSync(
			process.execPath,
			["scripts/start.mjs"],
			{
				encoding: "utf8",
				timeout: 10_000,
				env: {
					NODE_ENV: "production",
					PATH: process.env.PATH,
					DATA_DIR: folder.path,
					...env,
				},
			},
		);
		return { status, stdout, stderr };
	};

	test.each([
		["PORT", "abc", /^PORT must be a whole number from 1 to 65535; got "abc"$/],
		["PORT", "0", /^PORT must/],
		["PORT", "65536", /^PORT must/],
		["PORT", "0x50", /^PORT must/],
		["HOST", "http://here", /^HOST must be an address .*got "http:\/\/here"$/],
		["HOST", "127.0.0.1:80", /^HOST must/],
		["HOST", "192.0.2.1", /^HOST 192\.0\.2\.1 is not an address/], // RFC 5737: given to nobody
		[
			"DATABASE_URL",
			"mysql://user:secret@h/d",
			/^DATABASE_URL must name a SQLite file .*"mysql:"$/,
		],
		["DATABASE_URL", "file:", /^DATABASE_URL must/],
		["DATABASE_URL", "file::memory:", /^DATABASE_URL must/],
		["DATA_DIR", "package.json", /^DATA_DIR: cannot write/],
	])("%s=%s is refused by name", (name, value, message) => {
		const { status, stdout, stderr } = start({ [name]: value });
		expect(stderr.trim()).toMatch(message);
		expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
	});

	test("everything wrong is named at once, and no password is printed", () => {
		const { stderr } = start({
			PORT: "x",
			HOST: "a b",
			DATABASE_URL: "mysql://user:secret@h/d",
		});
		for (const name of ["PORT", "HOST", "DATABASE_URL"])
			expect(stderr).toMatch(new RegExp(`^${name} `, "m"));
		expect(stderr).not.toContain("secret");
	});

	test("a port in use is told before anything is built", async () => {
		const taken = createServer();
		await new Promise<void>((done) => taken.listen(0, "127.0.0.1", done));
		const address = taken.address();
		if (!address || typeof address === "string") throw new Error("no port");
		const { status, stderr } = start({ PORT: String(address.port) });
		taken.close();
		expect(status).toBe(2);
		expect(stderr).toContain(`PORT ${address.port} on 127.0.0.1 is in use`);
	});
});

describe("the build", () => {
	const module = pathToFileURL(resolve("scripts/build.mjs")).href;
	// Claims the build as start does, tells what happened, and stays until it is killed.
	const program = `
		import { appendFileSync, mkdirSync, writeFileSync } from "node:fs";
		import { setTimeout as wait } from "node:timers/promises";
		const { claimBuild } = await import(${JSON.stringify(module)});
		try {
			const { built, release } = await claimBuild({
				port: 1,
				build: async () => {
					await wait(Number(process.env.BUILD_MS ?? 0));
					appendFileSync("builds.log", "x");
					writeFileSync(".next/BUILD_ID", "1");
				},
			});
			process.on("exit", release);
			process.on("SIGTERM", () => process.exit(0));
			process.stdout.write(built ? "built" : "unchanged");
			await wait(60_000);
		} catch (error) {
			process.stdout.write(error.name + ": " + error.message);
		}`;

	const children: ChildProcess[] = [];
	beforeEach(() => {
		mkdirSync(join(folder.path, "app"));
		mkdirSync(join(folder.path, "tests"));
		write("app/page.tsx", "one");
		write("package-lock.json", "{}");
	});
	afterEach(async () => {
		for (const child of children.splice(0)) await end(child, "SIGKILL");
	});

	const write = (path: string, text: string) =>
		writeFileSync(join(folder.path, path), text);
	const builds = () =>
		existsSync(join(folder.path, "builds.log"))
			? readFileSync(join(folder.path, "builds.log"), "utf8").length
			: 0;

	function claim(env: Record<string, string> = {}) {
		const child = spawn(
			process.execPath,
			["--input-type=module", "--eval", program],
			{
				cwd: folder.path,
				env: { NODE_ENV: "production", PATH: process.env.PATH, ...env },
				stdio: ["ignore", "pipe", "inherit"],
			},
		);
		children.push(child);
		let said = "";
		const answer = new Promise<string>((done) => {
			child.stdout?.on("data", (chunk) => {
				said += chunk;
				if (/(built|unchanged|Error: .*)$/.test(said)) done(said);
			});
			child.once("exit", () => done(said));
		});
		return { child, answer };
	}

	async function end(child: ChildProcess, signal: NodeJS.Signals) {
		if (child.exitCode !== null || child.signalCode !== null) return;
		const gone = new Promise((done) => child.once("exit", done));
		child.kill(signal);
		await gone;
	}

	async function claimAndEnd(env?: Record<string, string>): Promise<string> {
		const { child, answer } = claim(env);
		const said = await answer;
		await end(child, "SIGTERM");
		return said;
	}

	test("is made where something that is built has changed, and only then", async () => {
		expect(await claimAndEnd()).toBe("built");
		expect(await claimAndEnd()).toBe("unchanged");
		write("tests/a.test.ts", "new");
		write("README.md", "new");
		expect(await claimAndEnd()).toBe("unchanged");
		write("app/page.tsx", "two");
		expect(await claimAndEnd()).toBe("built");
		write("instrumentation.ts", "new");
		expect(await claimAndEnd()).toBe("built");
		expect(await claimAndEnd({ NEXT_PUBLIC_NAME: "x" })).toBe("built");
		expect(builds()).toBe(4);
	});

	test("is not replaced under a running server, and is once that was killed", async () => {
		const running = claim();
		expect(await running.answer).toBe("built");
		expect(await claimAndEnd()).toBe("unchanged");
		write("app/page.tsx", "two");
		const refused = await claimAndEnd();
		expect(refused).toMatch(/^BuildInUseError: the sources have changed/);
		expect(refused).toContain(`stop process ${running.child.pid} (port 1)`);
		await end(running.child, "SIGKILL");
		expect(await claimAndEnd()).toBe("built");
		expect(builds()).toBe(2);
	});

	test("of two starts at once is made by one, while the other waits", async () => {
		const both = [claim({ BUILD_MS: "400" }), claim({ BUILD_MS: "400" })];
		const said = await Promise.all(both.map(({ answer }) => answer));
		expect(builds()).toBe(1);
		expect(said.filter((text) => text.endsWith("unchanged"))).toHaveLength(1);
		expect(said.filter((text) => text === "built")).toHaveLength(1);
	});

	test("that was cut off is made again by the next start", async () => {
		const cut = claim({ BUILD_MS: "60000" });
		while (!existsSync(join(folder.path, ".next/cache/claims/building.json")))
			await new Promise((done) => setTimeout(done, 20));
		await end(cut.child, "SIGKILL");
		expect(await claimAndEnd()).toBe("built");
		expect(builds()).toBe(1);
	});
});
