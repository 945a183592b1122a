import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { AxeResults, RunOptions } from "axe-core";
import {
	type Browser,
	type BrowserContext,
	type BrowserContextOptions,
	chromium,
	type Page,
} from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, inject } from "vitest";
import { freePort, type RunningServer, startServer } from "./server";

const AXE_SOURCE = readFileSync("node_modules/axe-core/axe.min.js", "utf8");

export interface BrowserTest {
	/** Address of a page of the server: `at("/fittings")`. */
	readonly at: (path: string) => string;
	/**
	 * A page in a context of its own (no shared cookies, no shared storage), closed after the test. It
	 * fetches nothing ahead for use without a network unless `serviceWorkers` is "allow".
	 */
	readonly open: (options?: BrowserContextOptions) => Promise<Page>;
	/**
	 * Lets through what the test provokes: a console error or page error that contains the text. Every
	 * other one fails the test, and so does text let through that never came.
	 */
	readonly expectError: (containing: string) => void;
	/** Lets through what may or may not come, such as a link fetched ahead while the network is away. */
	readonly allowError: (containing: string) => void;
}

/**
 * A browser for the test file. Any error on the console or in a page fails the test it happens in. The
 * server is the one all files share, or the file's own where it changes what everybody's figures rest on.
 */
export function browserTest({
	server = "shared",
}: {
	server?: "shared" | "own";
} = {}): BrowserTest {
	let browser: Browser;
	let own: RunningServer | null = null;
	const dataDir =
		server === "own" ? mkdtempSync(join(tmpdir(), "browser-test-")) : null;
	const contexts: BrowserContext[] = [];
	const errors: string[] = [];
	const expected: string[] = [];
	const possible: string[] = [];

	beforeAll(async () => {
		if (dataDir !== null)
			own = await startServer({ dataDir, port: await freePort() });
		browser = await chromium.launch({
			executablePath: inject("chromiumPath"),
			args: [
				"--no-sandbox",
				"--disable-gpu",
				"--disable-quic",
				"--no-first-run",
				"--disable-background-networking",
				"--disable-component-update",
				"--disable-sync",
			],
		});
	}, 300_000);
	afterAll(async () => {
		await browser?.close();
		await own?.stop();
		if (dataDir !== null) rmSync(dataDir, { recursive: true });
	});
	afterEach(async () => {
		for (const context of contexts.splice(0)) await context.close();
		const seen = errors.splice(0);
		const allowed = expected.splice(0);
		const letThrough = [...allowed, ...possible.splice(0)];
		expect(
			seen.filter((error) => !letThrough.some((text) => error.includes(text))),
			"errors in the browser",
		).toEqual([]);
		expect(
			allowed.filter((text) => !seen.some((error) => error.includes(text))),
			"errors the test expected",
		).toEqual([]);
	});

	return {
		at: (path) => new URL(path, own?.baseUrl ?? inject("baseUrl")).href,
		async open(options) {
			const context = await browser.newContext({
				serviceWorkers: "block",
				...options,
			});
			contexts.push(context);
			context.on("console", (message) => {
				if (message.type() === "error")
					errors.push(`${message.text()} (${message.location().url})`);
			});
			context.on("weberror", (error) => {
				errors.push(String(error.error()));
			});
			return context.newPage();
		},
		expectError: (containing) => void expected.push(containing),
		allowError: (containing) => void possible.push(containing),
	};
}

/** What the accessibility rules of WCAG 2.2 AA and good practice find wrong on the page as it stands, one line a node. */
export async function accessibilityProblems(
	page: Page,
	options: RunOptions = {},
): Promise<string[]> {
	await page.evaluate(AXE_SOURCE);
	const results = await page.evaluate(
		(runOptions) =>
			(
				globalThis as unknown as {
					axe: { run: (o: RunOptions) => Promise<AxeResults> };
				}
			).axe.run(runOptions),
		options,
	);
	if (results.testEngine.name !== "axe-core" || results.passes.length === 0)
		throw new Error("the accessibility rules did not run");
	return results.violations.flatMap(({ id, help, nodes }) =>
		nodes.map((node) => `${id}: ${help}: ${node.target.join(" ")}`),
	);
}
