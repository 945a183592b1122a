import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium, type Page } from "playwright-core";
import { chromiumPath } from "../support/chromium";
import { freePort, startServer } from "../support/server";

/** Moves of each slider; the 95th percentile of fewer says little. */
const MOVES = 40;

interface Measured {
	readonly toDrawnMs: readonly number[];
	readonly tasksMs: readonly number[];
}

/**
 * From a slider's move to the next frame after the page has changed for it, and every main-thread task
 * over 50 ms while that went on. Sliders: a wish (figures and charts follow) and a bound on the
 * trade-offs (points and table follow).
 */
export async function run(): Promise<string> {
	const dataDir = mkdtempSync(join(tmpdir(), "interaction-bench-"));
	const server = await startServer({ dataDir, port: await freePort() });
	const browser = await chromium.launch({
		executablePath: chromiumPath(process.env),
		args: ["--no-sandbox", "--disable-gpu", "--disable-background-networking"],
	});
	try {
		const page = await browser.newPage({
			viewport: { width: 1440, height: 900 },
		});
		const started = Date.now();
		await page.goto(`${server.baseUrl}/fittings/2/recommendation`);
		await page.getByText(/are beaten by none/).waitFor();
		const toAnswerMs = Date.now() - started;
		await page
			.getByText(/would move/)
			.first()
			.waitFor();
		// A quantity without steps: every move greys other points.
		await page.getByLabel("Hold this quantity").selectOption("steadiness");
		const trade = await measure(page, {
			label: /^At (most|least) /,
			watched: "path[data-points=kept]",
		});
		const wish = await measure(page, {
			label: /^Wanted weight, slider$/,
			watched: "main article",
		});
		return [
			`page opened to search answered: ${toAnswerMs} ms`,
			line("bound on the trade-offs to redrawn points", trade),
			line("wish for the weight to redrawn figures", wish),
		].join("\n");
	} finally {
		await browser.close();
		await server.stop();
		rmSync(dataDir, { recursive: true });
	}
}

const line = (name: string, { toDrawnMs, tasksMs }: Measured): string => {
	const sorted = [...toDrawnMs].sort((a, b) => a - b);
	const at = (share: number) =>
		(sorted[Math.ceil(share * sorted.length) - 1] ?? Number.NaN).toFixed(0);
	const longest = Math.max(0, ...tasksMs);
	return `${name}: median ${at(0.5)} ms, p95 ${at(0.95)} ms of ${sorted.length} moves; longest task ${longest === 0 ? "under 50" : longest.toFixed(0)} ms (${tasksMs.length} over 50 ms)`;
};

/** Moves the slider by key, one step at a time, and times what is watched until it has changed. */
async function measure(
	page: Page,
	p: { label: RegExp; watched: string },
): Promise<Measured> {
	const slider = page.getByLabel(p.label).last();
	await slider.scrollIntoViewIfNeeded();
	await slider.focus();
	await page.evaluate((watched) => {
		const state = { moves: [] as number[], tasks: [] as number[], from: 0 };
		(globalThis as unknown as { bench: typeof state }).bench = state;
		new PerformanceObserver((list) => {
			for (const { duration } of list.getEntries()) state.tasks.push(duration);
		}).observe({ type: "longtask" });
		addEventListener(
			"keydown",
			() => {
				state.from = performance.now();
			},
			{ capture: true },
		);
		const drawn = new MutationObserver(() => {
			if (state.from === 0) return;
			const { from } = state;
			state.from = 0;
			// The frame that shows the change has been drawn when the one after it begins.
			requestAnimationFrame(() =>
				requestAnimationFrame(() => state.moves.push(performance.now() - from)),
			);
		});
		const elements = document.querySelectorAll(watched);
		if (elements.length === 0)
			throw new Error(`nothing to watch at ${watched}`);
		for (const element of elements)
			drawn.observe(element, {
				subtree: true,
				childList: true,
				characterData: true,
				attributes: true,
				attributeFilter: ["d"],
			});
	}, p.watched);
	for (let i = 0; i < MOVES; i++) {
		await page.keyboard.press("ArrowLeft");
		await page.waitForTimeout(350);
	}
	return page.evaluate(() => {
		const { moves, tasks } = (
			globalThis as unknown as { bench: { moves: number[]; tasks: number[] } }
		).bench;
		return { toDrawnMs: moves, tasksMs: tasks };
	});
}
