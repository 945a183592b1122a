import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { accessibilityProblems, browserTest } from "../support/browser";
import { freePort, type RunningServer, startServer } from "../support/server";

// Servers of its own: settings hold for everybody, and the demo data goes for good.
const browser = browserTest();
const folders: string[] = [];
const folder = () => {
	const path = mkdtempSync(join(tmpdir(), "settings-test-"));
	folders.push(path);
	return path;
};
const dataDir = folder();
let server: RunningServer;

beforeAll(async () => {
	server = await startServer({ dataDir, port: await freePort() });
}, 300_000);
afterAll(async () => {
	await server.stop();
	for (const path of folders) rmSync(path, { recursive: true });
});

const ENGLISH = { locale: "en-GB" };
const at = (path = "", base = server.baseUrl) =>
	`${base}/workshop/settings${path}`;
async function open(
	path: string,
	options: BrowserContextOptions = {},
	base = server.baseUrl,
): Promise<Page> {
	const page = await browser.open({ ...ENGLISH, ...options });
	await page.goto(at(path, base));
	// Putting the focus somewhere and choosing a file do not wait until the form takes input.
	await page.locator("[data-waits]").waitFor({ state: "detached" });
	return page;
}
const field = (page: Page, label: string) =>
	page.getByLabel(label, { exact: true });
const press = (page: Page, name: string) =>
	page.getByRole("button", { name, exact: true }).click();

async function save(page: Page, by = "Bench"): Promise<void> {
	await field(page, "Who").fill(by);
	await press(page, "Save as a new version");
}
const saved = (page: Page, version: number) =>
	page.getByText(new RegExp(`^Saved as version ${version}\\.`)).waitFor();

describe("every kind of setting is changed on its own page", () => {
	test("the name stands on the sheet's head, and new readers begin as set", async () => {
		const page = await open("/header");
		// This one has chosen already, and stays as chosen.
		await page.context().addCookies(
			[
				["language", "en"],
				["units", "metric"],
			].map(([name = "", value = ""]) => ({
				name,
				value,
				url: server.baseUrl,
			})),
		);
		await page.getByText("These are invented figures").waitFor();
		await field(page, "Name of the workshop").fill("Invented Bench");
		await field(page, "Address").fill("1 Yard\nTown");
		await field(page, "Public address of this app").fill("cues.example");
		await page
			.getByRole("radio", { name: "Inches and ounces", exact: true })
			.check();
		await page
			.getByRole("group", { name: "Language new readers begin with" })
			.getByRole("radio", { name: "Deutsch", exact: true })
			.check();
		await save(page);
		await page
			.getByText("One field needs another look.", { exact: false })
			.waitFor();
		await page
			.getByText(
				"Public address of this app: “cues.example” is not an address",
				{ exact: false },
			)
			.waitFor();
		expect(await field(page, "Address").inputValue()).toBe("1 Yard\nTown");
		await field(page, "Public address of this app").fill(
			"https://cues.example/",
		);
		await press(page, "Save as a new version");
		await saved(page, 1);

		const fresh = await open("");
		expect(await fresh.locator("html").getAttribute("lang")).toBe("de");
		await fresh
			.getByRole("heading", { name: "Werkstatteinstellungen" })
			.waitFor();
		expect(
			await fresh
				.getByRole("button", { name: /in · oz/ })
				.getAttribute("aria-pressed"),
		).toBe("true");

		// Back to each reader's own device, so that what follows is in English.
		await page
			.getByRole("radio", { name: "That of their device", exact: true })
			.check();
		await page
			.getByRole("radio", { name: "Millimetres and grams", exact: true })
			.check();
		await press(page, "Save as a new version");
		await saved(page, 2);
		expect(await (await open("")).locator("html").getAttribute("lang")).toBe(
			"en",
		);
	});

	test("an amount out of its range is named with value and bound, and nothing typed is lost", async () => {
		const page = await open("/prices");
		const labour = field(
			page,
			"Labour: Any cue: turning, tip, ferrule, finish",
		);
		await field(page, "Material: Butt wood · Bocote").fill("41.50");
		await labour.fill("60000");
		await save(page);
		await page
			.getByText(
				/^Labour: Any cue.*: 60\s000\.00\sGBP is outside 0\.00\sGBP to 50\s000\.00\sGBP\.$/,
			)
			.waitFor();
		expect(
			await labour.evaluate((node) => node === document.activeElement),
		).toBe(true);
		expect(await labour.inputValue()).toBe("60000");
		expect(await field(page, "Material: Butt wood · Bocote").inputValue()).toBe(
			"41.50",
		);
		await labour.fill("150");
		await field(page, "Why").fill("the yearly rise");
		await press(page, "Save as a new version");
		await saved(page, 1);

		// The history names it, and compares it with what was before.
		await page.getByRole("link", { name: "1 (in force)" }).click();
		await page
			.getByRole("heading", { name: "Price list, version 1" })
			.waitFor();
		const changed = page
			.getByRole("group", { name: "Changes" })
			.getByRole("row");
		expect(await changed.allTextContents()).toEqual([
			"WhatBeforeAfter",
			expect.stringMatching(
				/^Any cue.*140\.00\sGBP: labour 126\.00.*164\.00\sGBP: labour 150\.00/,
			),
			expect.stringMatching(/^Butt wood · Bocote40\.00\sGBP.*41\.50\sGBP/),
		]);
	});

	test("a later list holds from its day; an earlier one is put back as a new version", async () => {
		const page = await open("/prices");
		await field(page, "Labour: Veneers (each)").fill("99");
		const nextYear = `${new Date().getFullYear() + 1}-01-01`;
		await field(page, "Holds from").fill(nextYear);
		await save(page);
		await saved(page, 2);
		await page.getByRole("link", { name: "2 (later)" }).waitFor();
		await page.getByText("A later version is already saved").waitFor();
		await page.goto(at("/prices/1"));
		await press(page, "Make this the newest version");
		await page.waitForURL(/settings\/prices$/);
		await page.getByRole("link", { name: "3 (in force)" }).waitFor();
		await page.getByText("As version 1").waitFor();
		expect(await field(page, "Labour: Veneers (each)").inputValue()).toBe(
			"16.00",
		);
	});

	test("two people at once: the second is told, sees the first's, and saves after it", async () => {
		const [one, two] = [await open("/lead-times"), await open("/lead-times")];
		await field(one, "Any cue").fill("12");
		await save(one, "Ann");
		await saved(one, 1);
		await field(two, "Cues finished in a week").fill("3");
		await save(two, "Ben");
		await two.getByText("Meanwhile somebody saved version 1").waitFor();
		expect(await field(two, "Cues finished in a week").inputValue()).toBe("3");
		await press(two, "Save mine after version 1");
		await saved(two, 2);
	});

	test("a day the workshop is closed moves the day a cue is ready", async () => {
		const page = await open("/lead-times");
		const example = page.getByText(/^A plain three-quarter cue agreed today/);
		const before = await example.textContent();
		await press(page, "Add closed days");
		const today = new Date();
		const iso = (days: number) =>
			new Date(today.getTime() + days * 86_400_000).toISOString().slice(0, 10);
		await field(page, "First day").fill(iso(1));
		await field(page, "Last day").fill(iso(60));
		await expect
			.poll(() => example.textContent(), { timeout: 10_000 })
			.not.toBe(before);
		await save(page);
		await saved(page, 3);
	});

	test("weighed billets stand beside the published table, and advice uses them", async () => {
		const page = await open("/stock");
		await field(page, "Wood").selectOption({ label: "White ash" });
		await press(page, "Add White ash");
		await page.getByText("Nothing weighed yet", { exact: false }).waitFor();
		await field(page, "Density").fill("600");
		await press(page, "Add a billet");
		await field(page, "Weight").nth(1).fill("1240 g");
		await field(page, "Volume").nth(1).fill("2000");
		// 600 and 620 weigh 610 on average, 10 either way, and 1 % of weighing: 12.
		await page
			.getByText(
				/^Yours: 610\skg\/m³ ± 12\skg\/m³, 2 billets weighed; published: 672\skg\/m³ ± 67\skg\/m³ \(/,
			)
			.waitFor();
		await field(page, "Density").nth(1).fill("2000");
		await save(page);
		await page
			.getByText(
				/White ash, Billet 2, Density: 2000\skg\/m³ is outside 300\skg\/m³ to 1500\skg\/m³\./,
			)
			.waitFor();
		await field(page, "Density").nth(1).fill("");
		await press(page, "Save as a new version");
		await saved(page, 1);
		const answer = await page.request.post(`${server.baseUrl}/api/v1/advice`, {
			data: { player: { statureMm: 1780 } },
		});
		const { build } = await answer.json();
		expect(build.request.densities["white-ash"].kgM3).toBe(610);
	});

	test("what the catalogue no longer makes is not advised", async () => {
		const page = await open("/catalogue");
		for (const wood of ["Indian rosewood", "Gaboon ebony", "Macassar ebony"])
			await page
				.getByRole("combobox", { name: wood, exact: true })
				.selectOption({ label: "Not offered" });
		await press(page, "Add a tip");
		await save(page);
		await page
			.getByText("Tip 3, Tip: Nothing entered", { exact: false })
			.waitFor();
		await field(page, "Tip").nth(2).fill("Milk leather");
		await field(page, "Height").nth(2).fill("6 mm");
		await press(page, "Save as a new version");
		await saved(page, 1);
		await page
			.getByText("Offered, but without a price: Tip · Milk leather", {
				exact: false,
			})
			.waitFor();
		const answer = await page.request.post(`${server.baseUrl}/api/v1/advice`, {
			data: { player: { statureMm: 1780 } },
		});
		const { search } = await answer.json();
		expect(
			search.options.map(
				(one: { request: { buttWood: string } }) => one.request.buttWood,
			),
		).toEqual(search.options.map(() => "black-walnut"));
	});
});

describe("files", () => {
	const choose = async (page: Page, name: string, text: string) => {
		await field(page, "File").setInputFiles({
			name,
			mimeType: "application/octet-stream",
			buffer: Buffer.from(text),
		});
		await press(page, "Show what would change");
	};

	test("all settings, taken away and brought into an empty database, are the same", async () => {
		const page = await open("/files");
		const [download] = await Promise.all([
			page.waitForEvent("download"),
			page.getByRole("link", { name: "All settings (JSON)" }).click(),
		]);
		const text = readFileSync(await download.path(), "utf8");
		const other = await startServer({
			dataDir: folder(),
			port: await freePort(),
		});
		try {
			const there = await open("/files", {}, other.baseUrl);
			await choose(there, "settings.json", text);
			await there
				.getByRole("heading", { name: /^Catalogue: what would change from/ })
				.waitFor();
			await there.getByRole("row", { name: /Tips · Milk leather/ }).waitFor();
			await field(there, "Who").fill("Bench");
			await press(there, "Take it over");
			await there.getByText("Taken over", { exact: true }).waitFor();
			await choose(there, "settings.json", text);
			await there.getByText("nothing would change", { exact: false }).waitFor();
			const settingsOf = async (base: string) => {
				const response = await there.request.get(
					`${base}/workshop/settings/files/settings.json`,
				);
				return (await response.json()).settings;
			};
			const [mine, theirs] = [
				await settingsOf(server.baseUrl),
				await settingsOf(other.baseUrl),
			];
			expect(theirs).toEqual(mine);
			// Before its server ends: the page would ask it for the links in sight.
			await there.close();
		} finally {
			await other.stop();
		}
	});

	test("a spreadsheet's price list is shown before it is taken, and refused by its line", async () => {
		const page = await open("/files");
		const csv = await (await page.request.get(at("/files/prices.csv"))).text();
		await choose(page, "prices.csv", csv.replace("150.00", "dear"));
		await page
			.getByText("Line 2, labour: “dear” cannot be read as a number.")
			.waitFor();
		await choose(page, "prices.csv", csv.replace("150.00", "155.00"));
		await page
			.getByRole("heading", { name: /^Price list: what would change from/ })
			.waitFor();
		await field(page, "Who").fill("Bench");
		await press(page, "Take it over");
		await page.getByText("Price list: version 4").waitFor();
	});
});

const PAGES = [
	"",
	"/header",
	"/catalogue",
	"/stock",
	"/prices",
	"/prices/1",
	"/lead-times",
	"/files",
	"/demo",
];

describe("the pages", () => {
	test.each([
		[360, "light"],
		[360, "dark"],
		[820, "light"],
		[820, "dark"],
		[1440, "light"],
		[1440, "dark"],
	] as const)(
		"keep the rules of accessibility and their width at %d px, %s",
		async (width, colorScheme) => {
			const page = await open("", {
				viewport: { width, height: 900 },
				colorScheme,
			});
			for (const path of PAGES) {
				await page.goto(at(path));
				await page.getByRole("heading", { level: 1 }).waitFor();
				expect(await accessibilityProblems(page), path).toEqual([]);
				expect(
					await page.evaluate(
						() => document.documentElement.scrollWidth - window.innerWidth,
					),
					`${path} is wider than the screen by`,
				).toBeLessThanOrEqual(0);
			}
		},
		120_000,
	);

	test("are told in German too, and saved from there with a decimal comma", async () => {
		const page = await open("/prices", { locale: "de-DE" });
		const leather = page.getByLabel("Material: Leder · Layered leather", {
			exact: true,
		});
		expect(await leather.inputValue()).toBe("15,00");
		await leather.fill("17,50");
		await page.getByLabel("Wer", { exact: true }).fill("Werkbank");
		await press(page, "Als neue Fassung speichern");
		await page.getByText(/^Als Fassung 5 gespeichert\./).waitFor();
	});

	test("work by keyboard alone", async () => {
		const page = await open("/header");
		await field(page, "Name of the workshop").focus();
		await page.keyboard.press("ControlOrMeta+A");
		await page.keyboard.type("Keyboard Bench");
		await field(page, "Who").focus();
		await page.keyboard.type("K");
		await page.keyboard.press("Tab");
		await page.keyboard.press("Enter");
		await saved(page, 3);
	});
});

test("the demo data is taken away after one more question, and stays away", async () => {
	const page = await open("/demo");
	await page.getByRole("row", { name: /Players/ }).waitFor();
	await press(page, "Take away the demo data");
	const question = page.getByRole("dialog");
	await question
		.getByText("marked as invented will be deleted", { exact: false })
		.waitFor();
	await question.getByRole("button", { name: "Keep it" }).click();
	await press(page, "Take away the demo data");
	await question.getByRole("button", { name: "Take it away" }).click();
	await page.getByText("The invented demo data is gone").waitFor();
	await page
		.getByText("It does not come back at the next start.", { exact: false })
		.waitFor();

	const { baseUrl } = server;
	await page.goto("about:blank");
	await server.stop();
	server = await startServer({ dataDir, port: Number(new URL(baseUrl).port) });
	expect(server.output()).not.toMatch(/invented demo players/);
	await page.goto(`${server.baseUrl}/players`);
	await page.getByRole("heading", { level: 1 }).waitFor();
	expect(await page.getByText("Highbeam", { exact: false }).count()).toBe(0);
	await page.goto(at("/header"));
	expect(await field(page, "Name of the workshop").inputValue()).toBe(
		"Keyboard Bench",
	);
}, 180_000);
