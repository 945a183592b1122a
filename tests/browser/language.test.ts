import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { accessibilityProblems, browserTest } from "../support/browser";
import { ENGLISH_STRETCHES, englishLeft } from "../support/english-left";

const browser = browserTest();
const PHONE = { width: 360, height: 740 };

const languageOf = (page: Page) => page.locator("html").getAttribute("lang");
const heading = (page: Page, name: string) =>
	page.getByRole("heading", { level: 1, name, exact: true });

describe("the reader's language", () => {
	test("is the one the browser asks for, until another is chosen, and stays chosen", async () => {
		const page = await browser.open({ locale: "de-CH" });
		await page.goto(browser.at("/players"));
		expect(await languageOf(page)).toBe("de");
		await heading(page, "Spieler").waitFor();
		expect(await page.title()).toBe("Spieler · Queue-Berater");

		const english = page.getByRole("button", { name: "English", exact: true });
		expect(await english.getAttribute("lang")).toBe("en");
		expect(await english.getAttribute("aria-pressed")).toBe("false");
		await english.click();
		await heading(page, "Players").waitFor();
		expect(await languageOf(page)).toBe("en");

		await page.goto(browser.at("/sources"));
		await heading(page, "Sources and assumptions").waitFor();
		await page.getByRole("button", { name: "Deutsch", exact: true }).click();
		await heading(page, "Quellen und Annahmen").waitFor();
		await page.goto(browser.at("/nowhere"));
		await heading(page, "Diese Seite gibt es nicht").waitFor();
		browser.expectError("404");
	});

	test("can be chosen before any script has run", async () => {
		const page = await browser.open({
			locale: "en-GB",
			javaScriptEnabled: false,
		});
		await page.goto(browser.at("/"));
		await page.getByRole("button", { name: "Deutsch", exact: true }).click();
		await heading(page, "Ein Queue, das passt und sich bauen lässt").waitFor();
		expect(await languageOf(page)).toBe("de");
	});

	test.each(["/", "/players", "/sources"])(
		"on a phone %s keeps its width in German, and breaks no rule of accessibility",
		async (path) => {
			const page = await browser.open({ locale: "de-DE", viewport: PHONE });
			await page.goto(browser.at(path));
			await page.getByRole("heading", { level: 1 }).waitFor();
			expect(
				await page.evaluate(
					() => document.documentElement.scrollWidth - window.innerWidth,
				),
			).toBe(0);
			expect(await accessibilityProblems(page)).toEqual([]);
		},
	);
});

describe("in German, on a phone", () => {
	const open = () => browser.open({ locale: "de-DE", viewport: PHONE });

	/** Everything folded away is opened, then looked at as a whole. */
	async function isWhole(page: Page): Promise<void> {
		await page.getByRole("heading", { level: 1 }).waitFor();
		expect(await languageOf(page)).toBe("de");
		await page.evaluate(() => {
			for (const details of document.querySelectorAll("details"))
				details.open = true;
		});
		expect(await englishLeft(page), page.url()).toEqual([]);
		expect(
			await page.evaluate(
				() => document.documentElement.scrollWidth - window.innerWidth,
			),
			`${page.url()} is wider than the screen`,
		).toBeLessThanOrEqual(0);
		expect(await accessibilityProblems(page), page.url()).toEqual([]);
	}

	test("what is looked for is found on a page in English", async () => {
		expect(ENGLISH_STRETCHES.length).toBeGreaterThan(1000);
		const page = await browser.open({ locale: "en-GB", viewport: PHONE });
		await page.goto(browser.at("/cues"));
		await heading(page, "Cue on its own").waitFor();
		const left = await englishLeft(page);
		expect(left).toContain("How it swings");
		expect(left.length).toBeGreaterThan(20);
	});

	test.each([
		"/fittings",
		"/fittings/new",
		"/fittings/1/player",
		"/fittings/1/hand",
		"/fittings/1/stance",
		"/fittings/1/present-cue",
		"/fittings/1/wishes",
		"/trials",
		"/trials/new",
		"/trials/rack",
		"/cues",
		"/gauges",
		"/specs/1/1",
	])(
		"%s leaves no English, keeps its width and breaks no rule",
		async (path) => {
			const page = await open();
			await page.goto(browser.at(path));
			await isWhole(page);
		},
	);

	test("the recommendation does so too, once the cues have been looked through", async () => {
		const page = await open();
		await page.goto(browser.at("/fittings/1/recommendation"));
		await page
			.getByRole("status")
			.getByText(/^Das Beste von/)
			.waitFor({ timeout: 50_000 });
		await page.getByRole("heading", { name: "Abwägungen" }).waitFor();
		await isWhole(page);
	}, 120_000);

	test("a trial does so too while it is played, and so do its results", async () => {
		const page = await open();
		await page.goto(browser.at("/trials/rack"));
		for (const [name, mass] of [
			["Leichtes Probequeue", "460 g"],
			["Schweres Probequeue", "570 g"],
		] as const) {
			for (const [label, text] of [
				["Name", name],
				["Länge", "1460 mm"],
				["Gewicht", mass],
				["Durchmesser des Unterteils", "29 mm"],
				["Leder", "9.5 mm"],
				["Balance vom Ende aus", "432 mm"],
			] as const)
				await page.getByLabel(label, { exact: true }).fill(text);
			await page.getByRole("button", { name: "Queue hinzufügen" }).click();
			await page.getByRole("link", { name, exact: true }).waitFor();
		}
		await page.goto(browser.at("/trials/new"));
		await page
			.getByLabel("Spieler", { exact: true })
			.selectOption({ index: 1 });
		await page.getByRole("button", { name: "Weiter: die Queues" }).click();
		await page.getByText("Die lehrreichsten Paare").waitFor();
		await isWhole(page);
		await page.getByRole("button", { name: "Mit den Stößen beginnen" }).click();
		await page.getByText(/^Stoß 1 von/).waitFor();
		// A press too soon after another is the same press: each is tried until it has counted.
		for (let shot = 1; shot <= 4; ) {
			await page
				.getByRole("button", {
					name: shot % 2 === 0 ? "Fehlstoß" : "Treffer",
					exact: true,
				})
				.click();
			const next = page.getByText(new RegExp(`^Stoß ${shot + 1} von`));
			await next.waitFor({ timeout: 1000 }).then(
				() => shot++,
				() => {},
			);
		}
		await page.getByText(/Alle Stöße gespeichert/).waitFor();
		await isWhole(page);
		await page.getByRole("button", { name: "Probe beenden" }).click();
		await page.getByRole("button", { name: "Beenden", exact: true }).click();
		await page.waitForURL(/\/results$/);
		await page.getByRole("heading", { name: "Was sie sagt" }).waitFor();
		await isWhole(page);
	}, 120_000);
});
