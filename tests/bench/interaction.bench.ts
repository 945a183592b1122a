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
 * From a slider's move to the frame that shows everything the move changed of what is in sight, and every
 * main-thread task over 50 ms from the first move until the search has answered for the last one and
 * what is out of sight has followed. Sliders: a bound on the trade-offs, with the points in sight; a wish
 * with the figures in sight, with the charts in sight, and with either on a phone a quarter as fast.
 */
export async function run(): Promise<string> {
	const dataDir = mkdtempSync(join(tmpdir(), "interaction-bench-"));
	const server = await startServer({ dataDir, port: await freePort() });
	const browser = await chromium.launch({
		executablePath: chromiumPath(process.env),
		args: ["--no-sandbox", "--disable-gpu", "--disable-background-networking"],
	});
	const url = `${server.baseUrl}/fittings/2/recommendation`;
	try {
		const desk = await browser.newPage({
			viewport: { width: 1440, height: 900 },
		});
		const started = Date.now();
		await desk.goto(url);
		await answered(desk);
		const toAnswerMs = Date.now() - started;
		await desk
			.getByText(/would move/)
			.first()
			.waitFor();
		const figures = await measure(desk, { ...WISH, watched: "main article" });
		const charts = await measure(desk, { ...WISH, ...CHARTS });
		// A quantity without steps: every move greys other points.
		await desk.getByLabel("Hold this quantity").selectOption("steadiness");
		const trade = await measure(desk, {
			label: /^At (most|least) /,
			heading: "Trade-offs",
			watched: "figure:has(path[data-points])",
		});
		await desk.close();
		const phone = await browser.newPage({
			viewport: { width: 360, height: 740 },
		});
		const devtools = await phone.context().newCDPSession(phone);
		await devtools.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
		await phone.goto(url);
		await answered(phone);
		const slow = await measure(phone, {
			...WISH,
			heading: "Wishes",
			watched: "main p[aria-hidden]",
		});
		return [
			`page opened to search answered: ${toAnswerMs} ms`,
			line("bound on the trade-offs to redrawn points", trade),
			line("wish for the weight to redrawn figures", figures),
			line("wish for the weight to redrawn charts", charts),
			line(`the same to the figures on a phone, ${SLOWER} times slower`, slow),
		].join("\n");
	} finally {
		await browser.close();
		await server.stop();
		rmSync(dataDir, { recursive: true });
	}
}

const SLOWER = 4;
const WISH = { label: /^Wanted weight, slider$/ };
const CHARTS = {
	heading: "What each choice costs",
	watched: "figure:has(.recharts-surface)",
};

const answered = (page: Page) =>
	page.getByText(/are beaten by none/).waitFor({ timeout: 120_000 });

const line = (name: string, { toDrawnMs, tasksMs }: Measured): string => {
	const sorted = [...toDrawnMs].sort((a, b) => a - b);
	const at = (share: number) =>
		(sorted[Math.ceil(share * sorted.length) - 1] ?? Number.NaN).toFixed(0);
	const longest = Math.max(0, ...tasksMs);
	return `${name}: median ${at(0.5)} ms, p95 ${at(0.95)} ms of ${sorted.length} moves; longest task ${longest === 0 ? "under 50" : longest.toFixed(0)} ms (${tasksMs.length} over 50 ms)`;
};

/**
 * Moves the slider by key, one step at a time. A move has been shown when the frame has been drawn that
 * follows the last change, before the next move, to what is watched and in sight.
 */
async function measure(
	page: Page,
	p: { label: RegExp; heading?: string; watched: string },
): Promise<Measured> {
	const slider = page.getByLabel(p.label).last();
	if (p.heading === undefined) await page.evaluate(() => scrollTo(0, 0));
	else
		await page
			.getByText(p.heading, { exact: true })
			.first()
			.evaluate((element) => element.scrollIntoView());
	await slider.evaluate((element: HTMLElement) =>
		element.focus({ preventScroll: true }),
	);
	await page.waitForTimeout(STILL_MS);
	await page.evaluate((watched) => {
		// Methods throughout: the runner names plain inner functions by a helper the page does not have.
		const state = {
			moves: [] as number[],
			tasks: [] as number[],
			from: 0,
			shown: 0,
			keys: new AbortController(),
			close() {
				if (state.shown > 0) state.moves.push(state.shown - state.from);
				state.shown = 0;
			},
			over() {
				state.close();
				state.keys.abort();
				drawn.disconnect();
			},
			end() {
				tasks.disconnect();
			},
		};
		(globalThis as unknown as { bench: typeof state }).bench = state;
		const tasks = new PerformanceObserver((list) => {
			for (const { duration } of list.getEntries()) state.tasks.push(duration);
		});
		tasks.observe({ type: "longtask" });
		addEventListener(
			"keydown",
			() => {
				state.close();
				state.from = performance.now();
			},
			{ capture: true, signal: state.keys.signal },
		);
		const drawn = new MutationObserver(() => {
			const { from } = state;
			if (from === 0) return;
			// The frame that shows the change has been drawn when the one after it begins.
			requestAnimationFrame(() =>
				requestAnimationFrame(() => {
					if (state.from === from) state.shown = performance.now();
				}),
			);
		});
		const inSight = [...document.querySelectorAll(watched)].filter(
			(element) => {
				const { top, bottom } = element.getBoundingClientRect();
				return bottom > 0 && top < innerHeight;
			},
		);
		if (inSight.length === 0)
			throw new Error(`nothing in sight to watch at ${watched}`);
		for (const element of inSight)
			drawn.observe(element, {
				subtree: true,
				childList: true,
				characterData: true,
				attributes: true,
			});
	}, p.watched);
	for (let i = 0; i < MOVES; i++) {
		await page.keyboard.press("ArrowLeft");
		await page.waitForTimeout(BETWEEN_MS);
	}
	await page.evaluate(() => (globalThis as unknown as Watching).bench.over());
	// The search answers for the last move, and what is out of sight follows.
	await page.waitForTimeout(BETWEEN_MS);
	await answered(page);
	await page.waitForTimeout(STILL_MS);
	return page.evaluate(() => {
		const { bench } = globalThis as unknown as Watching;
		bench.end();
		return { toDrawnMs: bench.moves, tasksMs: bench.tasks };
	});
}

interface Watching {
	readonly bench: {
		readonly moves: number[];
		readonly tasks: number[];
		readonly over: () => void;
		readonly end: () => void;
	};
}

const BETWEEN_MS = 350;
const STILL_MS = 2000;
