import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { accessibilityProblems, browserTest } from "../support/browser";
import { fittingWith, plainText } from "../support/fittings";

const browser = browserTest();
const WIDTHS = [360, 820, 1440] as const;

async function fitsEverywhere(page: Page): Promise<void> {
	for (const width of WIDTHS) {
		await page.setViewportSize({ width, height: 900 });
		expect(await accessibilityProblems(page), `${width} px`).toEqual([]);
		expect(
			await page.evaluate(
				() => document.documentElement.scrollWidth - window.innerWidth,
			),
			`wider than ${width} px`,
		).toBeLessThanOrEqual(0);
	}
}

const speak = (page: Page, language: "en" | "de", system: string) =>
	page.context().addCookies([
		{ name: "language", value: language, url: browser.at("/") },
		{ name: "units", value: system, url: browser.at("/") },
	]);

describe("coming back", () => {
	test("notes, the day to measure again, a refit and what changed since", async () => {
		const page = await browser.open({ locale: "en-GB" });
		const player = "Invented Returner";
		const first = await fittingWith(page, {
			at: browser.at,
			player,
			step: "player",
			typed: { stature: "150 cm" },
		});
		await page.goto(browser.at(`/players?name=${encodeURIComponent(player)}`));
		await page.getByRole("link", { name: player, exact: true }).click();
		await page.getByRole("heading", { level: 1, name: player }).waitFor();
		await page.getByRole("link", { name: `Fitting ${first}` }).waitFor();
		const home = page.url();

		await page.getByRole("button", { name: "Add the note" }).click();
		await page.getByText("Write something first.").waitFor();
		await page.getByLabel("Note", { exact: true }).fill("Grew out of shoes");
		await page.getByRole("button", { name: "Add the note" }).click();
		const note = page
			.getByRole("listitem")
			.filter({ has: page.getByRole("button", { name: /^Take back/ }) });
		await note.getByText("Grew out of shoes").waitFor();
		await note.getByRole("button", { name: /^Take back the note of/ }).click();
		const taken = page.getByRole("button", { name: "Put it back" });
		await taken.waitFor();
		expect(await page.getByText("Grew out of shoes").count()).toBe(0);
		await taken.click();
		await page.getByText("The note stands again.").waitFor();
		await page.reload();
		await page.getByText("Grew out of shoes").waitFor();

		await page.getByText("No day is due.").waitFor();
		await page.getByLabel("Day to measure again").fill("2099-05-03");
		await page.getByRole("button", { name: "Set the day" }).click();
		await page.getByText(/Due on 3 May 2099\./).waitFor();
		await page.getByRole("button", { name: "Take the day away" }).click();
		await page.getByText("No day is due.").waitFor();
		await fitsEverywhere(page);

		await page
			.getByRole("button", { name: `Refit from fitting ${first}` })
			.click();
		await page.waitForURL(/\/fittings\/\d+\/player$/);
		const second = /fittings\/(\d+)/.exec(page.url())?.[1] ?? "";
		expect(second).not.toBe(first);
		await page
			.getByText(new RegExp(`^Old answer, from fitting ${first} of `))
			.first()
			.waitFor();
		await page.getByLabel("Height", { exact: true }).fill("175 cm");
		await page.waitForTimeout(50);
		await page.getByText(/All answers saved/).waitFor();

		await page.goto(home);
		await page.getByText(`Refit of fitting ${first}`).waitFor();
		await page.getByRole("link", { name: "Compare two" }).click();
		await page.getByLabel("The one").selectOption(`fitting-${first}`);
		await page.getByLabel("The other").selectOption(`fitting-${second}`);
		await page.getByRole("button", { name: "Compare", exact: true }).click();
		const why = page.getByRole("table", {
			name: "Where the difference comes from",
		});
		await why.waitFor();
		const length = (
			await why
				.getByRole("row", { name: /^Length/ })
				.locator("td")
				.allTextContents()
		).map(plainText);
		const [picked, model, grew, wished, settings, whole] = length;
		expect([picked, model, wished, settings]).toEqual(
			Array.from({ length: 4 }, () => "0 mm"),
		);
		expect(grew).toMatch(/^\+\d+ mm$/);
		expect(whole).toBe(grew);
		const answers = page.getByRole("table", { name: "Answers", exact: true });
		expect(
			(await answers.locator("td").allTextContents()).map(plainText),
		).toEqual(["150 cm", "175 cm"]);
		await fitsEverywhere(page);

		await speak(page, "de", "trade");
		await page.reload();
		const german = page.getByRole("table", {
			name: "Woher der Unterschied kommt",
		});
		await german.waitFor();
		expect(
			plainText(
				await german.getByRole("row", { name: /^Länge/ }).textContent(),
			),
		).toMatch(/\+\d[\d¼½¾]* in/);
		await fitsEverywhere(page);
		await page.goto(home);
		await page.getByRole("heading", { name: "Verlauf" }).waitFor();
		await page.getByText("Kein Tag steht an.").waitFor();
		await fitsEverywhere(page);
	});
});
