import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { lettersOf, readPdf } from "../documents/support/pdf";
import { accessibilityProblems, browserTest } from "../support/browser";
import { fittingWith, plainText } from "../support/fittings";
import { Hands } from "../support/hands";

const browser = browserTest();
const TABLET = { viewport: { width: 820, height: 1180 } };
/** A demo fitting with a saved spec. */
const DEMO = "1";
/** Handling the tape or the cone is assumed, generously: 25 s a measure. */
const TAPE_S = 25;
const WIDTHS = [360, 820, 1440] as const;
/** The cues are looked through before a spec can be saved. */
const SEARCHED = { timeout: 50_000 };

const speak = (page: Page, language: "en" | "de", system: string) =>
	page.context().addCookies([
		{ name: "language", value: language, url: browser.at("/") },
		{ name: "units", value: system, url: browser.at("/") },
	]);
const sheet = (page: Page) => page.getByRole("article");
const saveSpec = (page: Page) =>
	page.getByRole("button", { name: "Save the spec" });
const field = (page: Page, label: string) =>
	page.getByLabel(label, { exact: true });
const saved = (page: Page) => page.getByText(/All answers saved/).waitFor();

/** Every text that the summary shows, each where it stands. */
const textsOn = async (page: Page): Promise<string[]> => {
	const texts = await sheet(page)
		.locator("h2, header p, dt, dd strong, dd span, dd p, li, td, p")
		.allInnerTexts();
	return texts.map((text) => text.trim()).filter((text) => text !== "");
};

async function printed(page: Page, number: string): Promise<string> {
	const answer = await page.request.get(
		browser.at(`/fittings/${number}/summary.pdf`),
		{ timeout: 50_000 },
	);
	expect(answer.status()).toBe(200);
	expect(answer.headers()["content-type"]).toBe("application/pdf");
	const pages = await readPdf(new Uint8Array(await answer.body()));
	return pages.map(({ letters }) => letters).join("");
}

describe("the player's summary", () => {
	test("is reached from the last step, also before a spec is saved", async () => {
		const page = await browser.open({ ...TABLET, locale: "en-GB" });
		const player = "Invented Summed";
		const number = await fittingWith(page, {
			at: browser.at,
			player,
			step: "player",
			typed: { stature: "182 cm", armSpan: "185 cm" },
		});
		await page.goto(browser.at(`/fittings/${number}/recommendation`));
		await page.getByRole("link", { name: "Summary for the player" }).click();
		await page.waitForURL(/\/summary$/, SEARCHED);
		await sheet(page)
			.getByRole("heading", { level: 1, name: `Summary for ${player}` })
			.waitFor(SEARCHED);
		await sheet(page).getByText("Not saved as a spec yet").waitFor();
		expect(plainText(await sheet(page).textContent())).toContain("182 cm");
	});

	test("is reached from the player's timeline, and is of the spec last saved", async () => {
		const page = await browser.open(TABLET);
		await page.goto(browser.at("/players"));
		await page.getByRole("link", { name: "Bram Highbeam" }).click();
		await page
			.getByRole("link", { name: "Summary for the player" })
			.first()
			.click();
		await page.waitForURL(/\/fittings\/1\/summary$/);
		await sheet(page)
			.getByText(/^From spec \d+, revision \d+, saved/)
			.waitFor();
	});

	test.each([
		["en", "metric"],
		["en", "trade"],
		["de", "metric"],
	] as const)(
		"as a PDF says what the page says: %s, %s",
		async (language, system) => {
			const page = await browser.open(TABLET);
			await speak(page, language, system);
			await page.goto(browser.at(`/fittings/${DEMO}/summary`));
			const texts = await textsOn(page);
			expect(texts.length).toBeGreaterThan(40);
			const letters = await printed(page, DEMO);
			expect(
				texts.filter((text) => !letters.includes(lettersOf(text))),
			).toEqual([]);
		},
	);

	test("fits every width, and is fit to print", async () => {
		const page = await browser.open(TABLET);
		await page.goto(browser.at(`/fittings/${DEMO}/summary`));
		const print = page.getByRole("button", { name: "Print" });
		await print.waitFor();
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
		await page.emulateMedia({ media: "print" });
		expect(await print.isVisible()).toBe(false);
		expect(await sheet(page).isVisible()).toBe(true);
	});

	test("there is none of a fitting that is not there, and what is asked wrongly is refused", async () => {
		browser.expectError("404");
		const page = await browser.open(TABLET);
		const answer = await page.goto(browser.at("/fittings/99999/summary"));
		expect(answer?.status()).toBe(404);
		const status = async (path: string) =>
			(await page.request.get(browser.at(path))).status();
		expect(await status("/fittings/99999/summary.pdf")).toBe(404);
		expect(await status("/fittings/1/summary.pdf?paper=papyrus")).toBe(400);
	});
});

test("a session with a known player, from the first tap to the summary: taps, fields, minutes", async () => {
	const page = await browser.open({ ...TABLET, locale: "en-GB" });
	const player = "Invented Known";
	await fittingWith(page, {
		at: browser.at,
		player,
		step: "player",
		typed: { stature: "170 cm", age: "34" },
	});
	await page.goto(browser.at("/coaching"));
	const hands = new Hands();
	const next = (step: string) =>
		hands.tap(page.getByRole("link", { name: `Next: ${step}` }));
	await hands.tap(page.getByRole("button", { name: new RegExp(`^${player}`) }));
	await hands.tap(
		page.getByRole("button", { name: /^New fitting with the answers of/ }),
	);
	await page.waitForURL(/\/player$/);
	await saved(page);
	const number = /fittings\/(\d+)/.exec(page.url())?.[1] ?? "";
	expect(await field(page, "Height").inputValue()).toBe("170 cm");

	// Measured anew; what has not changed stands from last time.
	await hands.type(field(page, "Height"), "171");
	await hands.type(field(page, "Arm span"), "172");
	await next("Hand");
	for (const [i, reading] of ["28", "28.5", "28"].entries()) {
		if (i > 0)
			await hands.tap(page.getByRole("button", { name: "Add a reading" }));
		await hands.type(field(page, `Grip circle, reading ${i + 1}`), reading);
	}
	await hands.choose(page, "Just touching");
	await hands.type(field(page, "Hand length"), "184");
	await next("Stance");
	await hands.type(field(page, "Bridge hand to grip hand"), "101");
	await hands.type(field(page, "Bridge length"), "25");
	await hands.type(field(page, "Grip hand to butt end"), "12");
	await hands.choose(page, "Side-on");
	await hands.tap(
		page.getByRole("link", { name: "Straight to the recommendation" }),
	);
	await expect.poll(() => saveSpec(page).isDisabled(), SEARCHED).toBe(false);
	await hands.tap(saveSpec(page));
	await page.waitForURL(/\/specs\/\d+\/1$/, SEARCHED);
	await hands.tap(page.getByRole("link", { name: "Summary for the player" }));
	await page.waitForURL(new RegExp(`/fittings/${number}/summary$`));
	await sheet(page)
		.getByText(/From spec \d+, revision 1/)
		.first()
		.waitFor();
	expect(plainText(await sheet(page).textContent())).toContain("171 cm");

	const measures = hands.fields;
	const seconds = hands.seconds + measures * TAPE_S;
	console.info(
		`session with a known player: ${hands.taps} taps, ${hands.fields} fields, ${hands.keys} keys; about ${(seconds / 60).toFixed(1)} min with ${TAPE_S} s a measure`,
	);
	expect(measures).toBe(9);
	expect(hands.taps).toBeLessThanOrEqual(12);
	expect(seconds).toBeLessThan(600);
});
