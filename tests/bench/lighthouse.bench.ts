import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import lighthouse, { desktopConfig } from "lighthouse";
import { chromium } from "playwright-core";
import { chromiumPath } from "../support/chromium";
import { freePort, startServer } from "../support/server";

/** One page of each way in, and the two that compute. */
const PAGES = [
	["home", "/"],
	["questions, player", "/fittings/1/player"],
	["recommendation", "/fittings/1/recommendation"],
	["a cue put together online", "/build"],
	["queue of the workshop", "/workshop"],
	["list of players", "/players"],
] as const;
const AIMS = { performance: 95, accessibility: 100, "best-practices": 100 };
type Category = keyof typeof AIMS;
const CATEGORIES = Object.keys(AIMS) as Category[];

/**
 * What Lighthouse gives each page on a simulated middling phone and on a desk: points of 100, the aims
 * beside them, and what it holds against a page that misses one.
 */
export async function run(): Promise<string> {
	const dataDir = mkdtempSync(join(tmpdir(), "lighthouse-bench-"));
	const server = await startServer({ dataDir, port: await freePort() });
	const port = await freePort();
	const browser = await chromium.launch({
		executablePath: chromiumPath(process.env),
		args: [
			`--remote-debugging-port=${port}`,
			"--no-sandbox",
			"--disable-gpu",
			"--disable-background-networking",
		],
	});
	try {
		const lines = [
			`aims: ${CATEGORIES.map((id) => `${id} ${AIMS[id]}`).join(", ")}`,
		];
		for (const [device, config] of [
			["phone", undefined],
			["desk", desktopConfig],
		] as const)
			for (const [name, path] of PAGES) {
				const found = await lighthouse(
					server.baseUrl + path,
					{ port, onlyCategories: CATEGORIES, logLevel: "silent" },
					config,
				);
				if (found === undefined) throw new Error(`${path} was not looked at`);
				const { categories, audits } = found.lhr;
				const points = CATEGORIES.map((id) =>
					Math.round((categories[id]?.score ?? Number.NaN) * 100),
				);
				lines.push(
					`${points.map((one) => String(one).padStart(4)).join("")}  ${device}, ${name}`,
				);
				for (const [i, id] of CATEGORIES.entries()) {
					if ((points[i] ?? 0) >= AIMS[id]) continue;
					for (const { id: audit, weight } of categories[id]?.auditRefs ?? []) {
						const { score, title, displayValue } = audits[audit] ?? {};
						if (weight > 0 && typeof score === "number" && score < 0.95)
							lines.push(`        ${title}: ${displayValue ?? score}`);
					}
				}
			}
		return lines.join("\n");
	} finally {
		await browser.close();
		await server.stop();
		rmSync(dataDir, { recursive: true });
	}
}
