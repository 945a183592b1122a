import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { accessibilityProblems, browserTest } from "../support/browser";

const browser = browserTest();
const TABLET = { viewport: { width: 820, height: 1180 } };
const PHONE = { viewport: { width: 360, height: 740 } };

let count = 0;
/** Starts a fitting of a player nobody else in this run has. */
async function begin(page: Page): Promise<string> {
	const name = `Invented Tester ${++count}`;
	await page.goto(browser.at("/fittings/new"));
	await page.getByLabel("Player", { exact: true }).fill(name);
	await page.getByRole("option", { name: `New player: ${name}` }).click();
	await page.getByRole("button", { name: "Start", exact: true }).click();
	await page.waitForURL(/\/fittings\/\d+\/player$/);
	return name;
}

const saved = (page: Page) => page.getByText(/All answers saved/).waitFor();
const next = async (page: Page, step: string) => {
	await page.getByRole("link", { name: `Next: ${step}` }).click();
	await page.waitForURL(
		new RegExp(`/${step.toLowerCase().replace(" ", "-")}$`),
	);
};
const figure = (page: Page, label: string) =>
	page
		.getByRole("article")
		.filter({ has: page.getByRole("heading", { name: label, exact: true }) });

/** Types an answer and waits until the server has it. */
async function answer(page: Page, label: string, text: string): Promise<void> {
	const field = page.getByLabel(label, { exact: true });
	await field.fill(text);
	await field.blur();
	await page.waitForTimeout(50);
	await saved(page);
}

async function toRecommendation(page: Page): Promise<void> {
	const number = /fittings\/(\d+)/.exec(page.url())?.[1];
	await page.goto(browser.at(`/fittings/${number}/recommendation`));
	await figure(page, "Length").waitFor();
}

describe("the main job", () => {
	test("from a new player to the bench's sheet, and back to it later", async () => {
		const page = await browser.open(TABLET);
		const name = await begin(page);

		await page.getByRole("radio", { name: "Snooker", exact: true }).check();
		await answer(page, "Height", "178");
		expect(await page.getByLabel("Height", { exact: true }).inputValue()).toBe(
			"178 cm",
		);
		await page.getByText("5 ft 10 in").waitFor();
		await page.getByRole("radio", { name: "Right" }).check();

		await next(page, "Hand");
		await page.getByLabel("Grip circle, reading 1").fill("27.5 mm");
		await page.getByRole("button", { name: "Add a reading" }).click();
		await page.getByLabel("Grip circle, reading 2").fill("28 mm");
		await page.getByText(/Mean of 2/).waitFor();

		await next(page, "Stance");
		await page.getByRole("radio", { name: "Side-on" }).check();
		await next(page, "Present cue");
		await answer(page, "Weight of the present cue", "17.5 oz");
		await page.getByRole("checkbox", { name: "Too light" }).check();
		await next(page, "Wishes");
		await page.getByLabel("Butt wood").selectOption({ label: "Gaboon ebony" });
		await next(page, "Recommendation");

		for (const label of [
			"Length",
			"Weight",
			"Butt diameter",
			"Tip",
			"Balance point from the butt end",
		])
			await figure(page, label).waitFor();
		for (const title of [
			/^Weight: /,
			/^Butt diameter: /,
			/^Length: /,
			/^Tip size: /,
		]) {
			const chart = page
				.getByRole("figure")
				.filter({ has: page.getByRole("heading", { name: title }) });
			await chart.locator("svg.recharts-surface").first().waitFor();
			await chart.getByText("Show as table").click();
			expect(await chart.getByRole("row").count()).toBeGreaterThan(4);
		}

		const weight = figure(page, "Weight");
		const before = await weight.textContent();
		await page.getByLabel("Wanted weight", { exact: true }).fill("545 g");
		await weight.getByText("You asked for 545").waitFor();
		expect(await weight.textContent()).not.toBe(before);
		await page.getByText(/= 545/).waitFor();

		await page.getByRole("button", { name: "Save the spec" }).click();
		await page.waitForURL(/\/specs\/\d+\/1$/);
		const spec = page.url();
		await page.getByRole("link", { name: "Open the job sheet" }).click();
		await page.getByRole("heading", { name: /^Job sheet \d+\/1$/ }).waitFor();
		const sheet = (await page.getByRole("article").textContent()) ?? "";
		for (const part of [
			"Diameters at stations",
			"Gaboon ebony",
			"To be added",
			"545\u00a0g",
			"Ferrule",
			"Wood dust",
			name,
		])
			expect(sheet).toContain(part);

		await page.goto(browser.at("/fittings"));
		await page
			.getByLabel("Search by player")
			.fill(name.slice(-12).toLowerCase());
		await page.getByRole("button", { name: "Search" }).click();
		await page.getByRole("link", { name, exact: true }).click();
		await page.waitForURL(/recommendation$/);
		await page.getByLabel("Wanted weight", { exact: true }).fill("530 g");
		await figure(page, "Weight").getByText("You asked for 530").waitFor();
		await page
			.getByLabel("What changed, and why")
			.fill("lighter after a trial");
		await page.getByRole("button", { name: "Save the spec" }).click();
		await page.waitForURL(/\/specs\/\d+\/2$/);
		await page.getByRole("cell", { name: "545\u00a0g" }).waitFor();
		await page.getByRole("cell", { name: "530\u00a0g" }).waitFor();

		await page.goto(spec);
		await page.getByText("There is a later revision").waitFor();
		expect(await figure(page, "Weight").textContent()).toContain("545\u00a0g");

		await page.goto(browser.at("/players"));
		await page.getByLabel("Search by name").fill(name);
		await page.getByRole("button", { name: "Search" }).click();
		await page.getByRole("link", { name, exact: true }).click();
		await page.getByRole("button", { name: /^Refit from fitting/ }).click();
		await page.waitForURL(/\/fittings\/\d+\/player$/);
		expect(await page.getByLabel("Height", { exact: true }).inputValue()).toBe(
			"178 cm",
		);
	});

	test("with nothing answered everything is estimated and marked so", async () => {
		const page = await browser.open(TABLET);
		await begin(page);
		await page
			.getByText(/Estimate/)
			.first()
			.waitFor();
		await toRecommendation(page);
		await figure(page, "Length").getByText(/Rough/).waitFor();
		await page.getByText("Height was left out").waitFor();
	});

	test("a weight the wood cannot give is refused with the nearest as one tap", async () => {
		const page = await browser.open(TABLET);
		await begin(page);
		await toRecommendation(page);
		await page
			.getByLabel("Butt wood")
			.selectOption({ label: "African blackwood" });
		await page.getByLabel("Wanted weight", { exact: true }).fill("310 g");
		const refusal = page
			.getByRole("main")
			.getByRole("alert")
			.filter({ hasText: "cannot be built" });
		await refusal.waitFor();
		expect(
			await page.getByRole("button", { name: "Save the spec" }).isDisabled(),
		).toBe(true);
		await refusal.getByRole("button", { name: /^Use / }).click();
		await refusal.waitFor({ state: "detached" });
		// Open again once the cues have been looked through for the new weight.
		await expect
			.poll(
				() => page.getByRole("button", { name: "Save the spec" }).isDisabled(),
				{ timeout: 30_000 },
			)
			.toBe(false);
	});
});

describe("bad input", () => {
	test.each([
		["text", "tall", /cannot be read as a length/],
		["zero", "0", /is outside 90 cm to 230 cm/],
		["negative", "-178 cm", /outside|cannot be read/],
		["huge", "99999999999 cm", /is outside 90 cm to 230 cm/],
		["a wrong unit", "178 kg", /unit in .* is not one of a length/],
	])(
		"%s: field, value and bound are named, and what was typed stays through a reload",
		async (_, text, message) => {
			const page = await browser.open(TABLET);
			await begin(page);
			const height = page.getByLabel("Height", { exact: true });
			await height.fill(text);
			await height.blur();
			const error = page.getByText(/^Height: /);
			await error.waitFor();
			expect((await error.textContent())?.replaceAll("\u00a0", " ")).toMatch(
				message,
			);
			expect(await height.getAttribute("aria-invalid")).toBe("true");
			await saved(page);
			await page.reload();
			await page.waitForFunction(
				(value) =>
					document.querySelector<HTMLInputElement>("input[name=stature]")
						?.value === value,
				text,
			);
			await toRecommendation(page);
			await page
				.getByText("Some answers cannot be read and count as left out")
				.waitFor();
		},
	);

	test("pasted commas are read where only one reading fits", async () => {
		const page = await browser.open(TABLET);
		await begin(page);
		for (const [typed, understood] of [
			["1,78 m", "178\u00a0cm"],
			["1,780 mm", "178\u00a0cm"],
			["5'10\"", "178\u00a0cm"],
		] as const) {
			await page.getByLabel("Height", { exact: true }).fill(typed);
			await page.getByText(`= ${understood}`).waitFor();
		}
	});

	test("a name typed before the page's own script ran is taken in", async () => {
		const page = await browser.open(TABLET);
		let release = () => {};
		const held = new Promise<void>((done) => {
			release = done;
		});
		await page.route("**/_next/static/chunks/**/*.js", async (route) => {
			await held;
			await route.continue();
		});
		await page.goto(browser.at("/fittings/new"), { waitUntil: "commit" });
		const name = `Invented Tester ${++count}`;
		await page.getByLabel("Player", { exact: true }).fill(name);
		release();
		await page.getByRole("option", { name: `New player: ${name}` }).click();
		await page.getByRole("button", { name: "Start", exact: true }).click();
		await page.waitForURL(/\/fittings\/\d+\/player$/);
	});

	test("pressed twice, one fitting is started and one revision saved", async () => {
		const page = await browser.open(TABLET);
		const name = `Invented Tester ${++count}`;
		await page.goto(browser.at("/fittings/new"));
		await page.getByLabel("Player", { exact: true }).fill(name);
		await page.getByRole("option", { name: `New player: ${name}` }).click();
		await page.getByRole("button", { name: "Start", exact: true }).dblclick();
		await page.waitForURL(/player$/);
		await toRecommendation(page);
		await page.getByRole("button", { name: "Save the spec" }).dblclick();
		await page.waitForURL(/\/specs\/\d+\/1$/);
		expect(await page.getByRole("row").count()).toBe(2);
		await page.goto(browser.at(`/fittings?player=${encodeURIComponent(name)}`));
		expect(await page.getByRole("row").count()).toBe(2);
	});

	test("back, forward and a reload half-way lose nothing", async () => {
		const page = await browser.open(TABLET);
		await begin(page);
		await answer(page, "Height", "181 cm");
		await next(page, "Hand");
		await page.goBack();
		expect(await page.getByLabel("Height", { exact: true }).inputValue()).toBe(
			"181 cm",
		);
		await page.goForward();
		await page.getByLabel("Hand length", { exact: true }).fill("192 mm");
		await page.reload();
		await page.waitForFunction(
			() =>
				document.querySelector<HTMLInputElement>("input[name=handLength]")
					?.value === "192 mm",
		);
		await page.goto(browser.at("/fittings"));
		await page.goBack();
		await page.waitForFunction(
			() =>
				document.querySelector<HTMLInputElement>("input[name=handLength]")
					?.value === "192 mm",
		);
	});

	test.each([
		"/fittings/0/player",
		"/fittings/abc/player",
		"/fittings/999999/player",
		"/specs/1/999",
		"/players/none",
	])("%s is not found, and says so", async (path) => {
		browser.expectError("404");
		const page = await browser.open(TABLET);
		const response = await page.goto(browser.at(path));
		expect(response?.status()).toBe(404);
		await page.getByRole("main").getByRole("heading").first().waitFor();
	});
});

describe("a page that is long in coming", () => {
	test("says that it is on its way, and is silent once it is there", async () => {
		const page = await browser.open(TABLET);
		await page.goto(browser.at("/sources"));
		let release = () => {};
		const held = new Promise<void>((done) => {
			release = done;
		});
		await page.route(/\/players\?_rsc=|\/players$/, async (route) => {
			await held;
			await route.continue();
		});
		const word = page
			.getByRole("status")
			.filter({ hasText: "Opening the page" });
		await page
			.getByRole("navigation", { name: "Main" })
			.getByRole("link", { name: "Players" })
			.click();
		await word.waitFor();
		release();
		await page.waitForURL(/\/players$/);
		await word.waitFor({ state: "detached" });
	});
});

describe("units", () => {
	test("switched to inches and ounces, pages follow and remember", async () => {
		const page = await browser.open(TABLET);
		await begin(page);
		await answer(page, "Height", "178 cm");
		await page.getByRole("button", { name: /in · oz/ }).click();
		await page.getByText("= 5 ft 10").waitFor();
		await toRecommendation(page);
		await figure(page, "Weight")
			.getByText(/\d\u00a0oz/)
			.first()
			.waitFor();
		await page.reload();
		expect(await figure(page, "Weight").textContent()).toMatch(/\d\u00a0oz/);
	});
});

describe("accessibility", () => {
	test.each([
		["light", TABLET],
		["dark", PHONE],
	] as const)("no axe violation on any page, %s", async (colorScheme, size) => {
		const page = await browser.open({ ...size, colorScheme });
		await begin(page);
		const number = /fittings\/(\d+)/.exec(page.url())?.[1];
		await page.goto(browser.at(`/fittings/${number}/recommendation`));
		await figure(page, "Length").waitFor();
		await page.getByRole("button", { name: "Save the spec" }).click();
		await page.waitForURL(/\/specs\/\d+\/1$/);
		const spec = new URL(page.url()).pathname;
		for (const path of [
			"/",
			"/fittings",
			"/fittings/new",
			"/players",
			"/sources",
			...[
				"player",
				"hand",
				"stance",
				"present-cue",
				"wishes",
				"recommendation",
			].map((step) => `/fittings/${number}/${step}`),
			spec,
			`${spec}/sheet`,
		]) {
			await page.goto(browser.at(path));
			await page.getByRole("main").getByRole("heading").first().waitFor();
			await page.waitForLoadState("networkidle");
			expect(await accessibilityProblems(page), path).toEqual([]);
			const overflow = await page.evaluate(
				() =>
					document.documentElement.scrollWidth -
					document.documentElement.clientWidth,
			);
			expect(overflow, `${path} scrolls sideways`).toBeLessThanOrEqual(0);
		}
	});
});
