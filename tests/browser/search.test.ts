import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { accessibilityProblems, browserTest } from "../support/browser";

const browser = browserTest();
const WIDE = { viewport: { width: 1440, height: 900 } };
const PHONE = { viewport: { width: 360, height: 740 } };

let count = 0;
/** A new fitting's recommendation, once the search has answered for it. */
async function recommended(page: Page): Promise<void> {
	const name = `Invented Seeker ${++count}`;
	await page.goto(browser.at("/fittings/new"));
	await page.getByLabel("Player", { exact: true }).fill(name);
	await page.getByRole("option", { name: `New player: ${name}` }).click();
	await page.getByRole("button", { name: "Start", exact: true }).click();
	await page.waitForURL(/\/fittings\/\d+\/player$/);
	const number = /fittings\/(\d+)/.exec(page.url())?.[1];
	await page.goto(browser.at(`/fittings/${number}/recommendation`));
	await answered(page);
}

const answered = (page: Page) =>
	page.getByText(/Best of .* cues; .* are beaten by none/).waitFor();
const figure = (page: Page, label: string) =>
	page
		.getByRole("article")
		.filter({ has: page.getByRole("heading", { name: label, exact: true }) });
const region = (page: Page, name: string) =>
	page.getByRole("region", { name, exact: true });
const plain = (text: string | null) => (text ?? "").replaceAll("\u00a0", " ");
const number = (text: string | null) =>
	Number(/−?[\d.]+/.exec(plain(text))?.[0]?.replace("−", "-"));

describe("the search behind the recommendation", () => {
	test("answers, gives every figure its other side, and lists cues worth making", async () => {
		const page = await browser.open(WIDE);
		await recommended(page);
		const told = plain(
			await page.getByText(/Best of .* cues/).textContent(),
		).replaceAll("\u202f", "");
		expect(Number(/Best of (\d+)/.exec(told)?.[1])).toBeGreaterThan(50_000);
		for (const label of ["Length", "Weight", "Butt diameter", "Tip"])
			await figure(page, label).getByText("Strongest against").waitFor();
		const cues = region(page, "Cues worth making");
		const options = cues.getByRole("listitem").filter({
			has: page.getByRole("button", { name: "Build this one" }),
		});
		const listed = await options.count();
		expect(listed).toBeGreaterThan(1);
		expect(listed).toBeLessThanOrEqual(4);
		expect(plain(await options.nth(1).textContent())).toMatch(
			/in \d+ of 100 draws/,
		);
		await region(page, "What would change this")
			.getByText(/would move .* by about ±/)
			.first()
			.waitFor();
		await page
			.locator("summary")
			.filter({ hasText: "What a cue is judged by" })
			.click();
		expect(
			await page
				.getByRole("table", { name: "What a cue is judged by" })
				.getByRole("row")
				.count(),
		).toBe(14);
	});

	test("“Build this one” sets the wishes, the figures follow, and it can be undone", async () => {
		const page = await browser.open(WIDE);
		await recommended(page);
		const second = region(page, "Cues worth making")
			.getByRole("listitem")
			.filter({ has: page.getByRole("button", { name: "Build this one" }) })
			.nth(1);
		const rows = second.locator("dl > div");
		const length = plain(
			await rows
				.filter({ has: page.getByText("Length", { exact: true }) })
				.locator("dd")
				.textContent(),
		);
		const wood = /\d\. (.*), /.exec(
			(await second.getByRole("heading").textContent()) ?? "",
		)?.[1];
		await second.getByRole("button", { name: "Build this one" }).click();
		await figure(page, "Length").getByText("You asked for").waitFor();
		await answered(page);
		expect(plain(await figure(page, "Length").textContent())).toContain(length);
		const wished = page.getByLabel("Wanted length", { exact: true });
		expect(Math.round(number(await wished.inputValue()))).toBe(number(length));
		const woods = page.getByLabel("Butt wood");
		expect(await woods.locator("option:checked").textContent()).toBe(
			wood?.split(",")[0],
		);
		await page
			.getByRole("button", { name: "Leave all wishes for the cue open" })
			.click();
		await figure(page, "Length")
			.getByText("You asked for")
			.waitFor({ state: "detached" });
		expect(await wished.inputValue()).toBe("");
	});

	test("a point of the trade-offs is picked by a press and by key", async () => {
		const page = await browser.open(WIDE);
		await recommended(page);
		const trade = region(page, "Trade-offs");
		const slider = trade.getByLabel("Cue shown");
		expect(await slider.getAttribute("aria-valuetext")).toBe("none picked");
		const plot = trade.getByRole("img", { name: /against/ }).first();
		const dots = await plot.locator("path[data-points=kept]").getAttribute("d");
		const [, x, y] = /^M([\d.]+) ([\d.]+)h0/.exec(dots ?? "") ?? [];
		await plot.scrollIntoViewIfNeeded();
		await plot.click({ position: { x: Number(x), y: Number(y) } });
		await trade.getByRole("button", { name: "Build this one" }).waitFor();
		await trade.getByText(/^A cue \d+/).waitFor();
		const first = await slider.getAttribute("aria-valuetext");
		expect(first).toMatch(/^cue \d+ of \d+$/);
		await slider.focus();
		await page.keyboard.press(
			(await slider.inputValue()) === "0" ? "ArrowRight" : "ArrowLeft",
		);
		await page.waitForFunction(
			(before) =>
				[...document.querySelectorAll("input[type=range]")].some(
					(input) =>
						/^cue \d+ of/.test(input.getAttribute("aria-valuetext") ?? "") &&
						input.getAttribute("aria-valuetext") !== before,
				),
			first,
		);
		await trade.getByRole("button", { name: "Build this one" }).click();
		await figure(page, "Length").getByText("You asked for").waitFor();
	});

	test("holding one quantity narrows what the others can have", async () => {
		const page = await browser.open(WIDE);
		await recommended(page);
		const trade = region(page, "Trade-offs");
		await trade.getByLabel("Hold this quantity").selectOption("price");
		await trade.getByLabel("To", { exact: true }).selectOption("most");
		const left = trade.getByText(/ cues are left\./);
		const all = plain(await left.textContent());
		const [, most, total] =
			/([\d\s\u202f]+) of ([\d\s\u202f]+) cues/.exec(all) ?? [];
		expect(most).toBe(total);
		await trade.getByLabel(/^At most/).fill("20");
		await page.waitForFunction(
			(before) =>
				![...document.querySelectorAll("p[role=status]")].some(
					(p) => p.textContent?.replaceAll("\u00a0", " ") === before,
				),
			all,
		);
		expect(number(await left.textContent())).toBeLessThan(number(all));
		expect(
			await trade.locator("path[data-points=beyond]").first().getAttribute("d"),
		).toMatch(/^M/);
		const table = trade.getByRole("table", {
			name: "What the others can still have",
		});
		expect(await table.getByText(/ becomes /).count()).toBeGreaterThan(0);
	});

	test("wishes that no rule lets be built come with ways out of one tap", async () => {
		const page = await browser.open(WIDE);
		await recommended(page);
		await page.getByLabel("Wanted length", { exact: true }).fill("900 mm");
		// Ways out are looked for in the worker: the page says so meanwhile and takes further typing.
		await page
			.getByRole("status")
			.filter({ hasText: "Looking through cues…" })
			.waitFor();
		const refusal = page
			.getByRole("main")
			.getByRole("alert")
			.filter({ hasText: "Nothing can be built with all these wishes" });
		await refusal.waitFor();
		expect(
			await page.getByRole("button", { name: "Save the spec" }).isDisabled(),
		).toBe(true);
		await refusal
			.getByRole("button", { name: /^Wanted length: take/ })
			.first()
			.click();
		await refusal.waitFor({ state: "detached" });
		await answered(page);
		expect(
			await page.getByRole("button", { name: "Save the spec" }).isEnabled(),
		).toBe(true);
	});

	test("a weight the wood cannot give stays refused when the search has answered", async () => {
		const page = await browser.open(WIDE);
		await recommended(page);
		await page
			.getByLabel("Butt wood")
			.selectOption({ label: "African blackwood" });
		await page.getByLabel("Wanted weight", { exact: true }).fill("310 g");
		await page
			.getByText("No cue that was found has the weight wished for")
			.waitFor();
		await page
			.getByRole("main")
			.getByRole("alert")
			.filter({ hasText: "cannot be built" })
			.waitFor();
		expect(
			await page.getByRole("button", { name: "Save the spec" }).isDisabled(),
		).toBe(true);
	});

	test("where there are no workers the needs are shown, and that is said", async () => {
		const page = await browser.open(WIDE);
		await page.addInitScript(() => {
			(globalThis as { Worker?: unknown }).Worker = undefined;
		});
		await page.goto(browser.at("/fittings/1/recommendation"));
		await page
			.getByText(/cannot look through the cues in the background/)
			.first()
			.waitFor();
		await figure(page, "Length").waitFor();
	});
});

describe("accessibility", () => {
	test.each([
		["wide, light", WIDE, "light"],
		["wide, dark", WIDE, "dark"],
		["phone, light", PHONE, "light"],
		["phone, dark", PHONE, "dark"],
	] as const)(
		"no axe violation with everything open, %s",
		async (_, size, colorScheme) => {
			const page = await browser.open({ ...size, colorScheme });
			await recommended(page);
			await page.getByRole("button", { name: "Next cue" }).click();
			await region(page, "Trade-offs")
				.getByRole("button", { name: "Build this one" })
				.waitFor();
			await region(page, "What would change this")
				.getByText(/would move/)
				.first()
				.waitFor();
			await page.evaluate(() => {
				for (const details of document.querySelectorAll("main details"))
					details.setAttribute("open", "");
			});
			expect(await accessibilityProblems(page)).toEqual([]);
			const overflow = await page.evaluate(
				() =>
					document.documentElement.scrollWidth -
					document.documentElement.clientWidth,
			);
			expect(overflow, "scrolls sideways").toBeLessThanOrEqual(0);
		},
	);
});
