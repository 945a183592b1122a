import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { accessibilityProblems, browserTest } from "../support/browser";

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
