import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { chromium } from "playwright-core";
import { chromiumPath } from "../support/chromium";
import { freePort, startServer } from "../support/server";

const PAGES = [
	["an empty page (not found)", "/nothing-here"],
	["home", "/"],
	["list of fittings", "/fittings"],
	["start a fitting", "/fittings/new"],
	["questions, player", "/fittings/1/player"],
	["questions, hand", "/fittings/1/hand"],
	["questions, stance", "/fittings/1/stance"],
	["recommendation", "/fittings/1/recommendation"],
	["players", "/players"],
	["sources", "/sources"],
] as const;

const kB = (bytes: number) => `${(bytes / 1000).toFixed(0).padStart(4)} kB`;

/** Scripts each page loads first, gzipped, beside the emptiest page of the same build. */
export async function run(): Promise<string> {
	const dataDir = mkdtempSync(join(tmpdir(), "pages-bench-"));
	const server = await startServer({ dataDir, port: await freePort() });
	const browser = await chromium.launch({
		executablePath: chromiumPath(process.env),
		args: ["--no-sandbox", "--disable-gpu", "--disable-background-networking"],
	});
	try {
		const lines: string[] = [];
		let empty = 0;
		for (const [name, path] of PAGES) {
			const context = await browser.newContext();
			const page = await context.newPage();
			const scripts = new Map<string, Promise<number>>();
			page.on("response", (response) => {
				if (response.request().resourceType() === "script")
					scripts.set(
						response.url(),
						response.body().then((body) => gzipSync(body).length),
					);
			});
			await page.goto(server.baseUrl + path, { waitUntil: "networkidle" });
			const bytes = (await Promise.all(scripts.values())).reduce(
				(sum, size) => sum + size,
				0,
			);
			empty ||= bytes;
			lines.push(
				`${kB(bytes)}  ${(bytes / empty).toFixed(2)} × the empty page  ${name}`,
			);
			await context.close();
		}
		return lines.join("\n");
	} finally {
		await browser.close();
		await server.stop();
		rmSync(dataDir, { recursive: true });
	}
}
