import { createCanvas, loadImage } from "@napi-rs/canvas";
import jsQR from "jsqr";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { lettersOf, readPdf } from "../documents/support/pdf";
import { browserTest } from "../support/browser";

const browser = browserTest();
const TABLET = { viewport: { width: 820, height: 1180 } };
const PHONE = { viewport: { width: 360, height: 740 } };

let count = 0;
/** Saves a spec of a player nobody else in this run has, and is on its page. */
async function savedSpec(page: Page): Promise<string> {
	const name = `Invented Exporter ${++count}`;
	await page.goto(browser.at("/fittings/new"));
	await page.getByLabel("Player", { exact: true }).fill(name);
	await page.getByRole("option", { name: `New player: ${name}` }).click();
	await page.getByRole("button", { name: "Start", exact: true }).click();
	await page.waitForURL(/\/fittings\/\d+\//);
	const number = /fittings\/(\d+)/.exec(page.url())?.[1];
	await page.goto(browser.at(`/fittings/${number}/recommendation`));
	await save(page);
	return new URL(page.url()).pathname;
}

async function save(page: Page): Promise<void> {
	await page.getByRole("button", { name: "Save the spec" }).click();
	await page.waitForURL(/\/specs\/\d+\/\d+$/);
}

const files = (page: Page) =>
	page.getByRole("list", { name: "Files for the bench" });

/** The code on the page as a camera would have it, through an independent decoder. */
async function scanned(page: Page): Promise<string | undefined> {
	const image = await loadImage(
		await page
			.getByRole("img", { name: "Code that opens this job on a phone" })
			.screenshot(),
	);
	const canvas = createCanvas(image.width, image.height);
	const context = canvas.getContext("2d");
	context.drawImage(image, 0, 0);
	const { data, width, height } = context.getImageData(
		0,
		0,
		image.width,
		image.height,
	);
	return jsQR(data, width, height)?.data;
}

/** Every text the sheet shows, but the picture's: figures, tables, lists and sentences. */
const sheetTexts = (page: Page): Promise<string[]> =>
	page.getByRole("article").evaluate((article) => {
		const texts: string[] = [];
		const walk = (node: Node) => {
			if (node instanceof Element) {
				// The picture is another on paper; the badge stands in the title there.
				if (node.closest("figure, h1, caption") !== null) return;
				node.childNodes.forEach(walk);
			} else if (node.textContent?.trim()) texts.push(node.textContent);
		};
		walk(article);
		return texts;
	});

describe("the files of a saved spec", () => {
	test("are linked from its page and its sheet, and come as files", async () => {
		const page = await browser.open(TABLET);
		const spec = await savedSpec(page);
		const [number, revision] = spec.split("/").slice(2);
		for (const path of [spec, `${spec}/sheet`]) {
			await page.goto(browser.at(path));
			expect(await files(page).getByRole("link").count()).toBe(5);
			for (const [link, name] of [
				["Diameters at stations", `stations-${number}-${revision}.csv`],
				["Turned outline", `profile-${number}-${revision}.dxf`],
				["All of the spec", `spec-${number}-${revision}.json`],
			] as const) {
				const [download] = await Promise.all([
					page.waitForEvent("download"),
					files(page).getByRole("link", { name: link }).click(),
				]);
				expect(download.suggestedFilename()).toBe(name);
				expect(await download.failure()).toBeNull();
			}
			expect(new URL(page.url()).pathname).toBe(path);
		}
	});

	test("the JSON leads back to the job and to a schema that is there", async () => {
		const page = await browser.open(TABLET);
		const spec = await savedSpec(page);
		const exported = await (
			await page.request.get(browser.at(`${spec}/spec.json`))
		).json();
		expect(exported.address).toBe(browser.at(spec));
		expect((await page.goto(exported.address))?.status()).toBe(200);
		const schema = await page.request.get(exported.$schema);
		expect(schema.status()).toBe(200);
		expect((await schema.json()).title).toBe("A saved specification of a cue");
	});
});

describe("the printed sheet", () => {
	test.each([
		["metric", "a4"],
		["metric", "letter"],
		["trade", "a4"],
		["trade", "letter"],
	] as const)(
		"says in %s on %s what the sheet on the screen says",
		async (system, paper) => {
			const page = await browser.open(TABLET);
			const spec = await savedSpec(page);
			await page
				.context()
				.addCookies([{ name: "units", value: system, url: browser.at("/") }]);
			await page.goto(browser.at(`${spec}/sheet`));
			const texts = await sheetTexts(page);
			expect(texts.length).toBeGreaterThan(150);
			const response = await page.request.get(
				browser.at(`${spec}/sheet.pdf?paper=${paper}`),
			);
			expect(response.headers()["content-type"]).toBe("application/pdf");
			const pages = await readPdf(await response.body());
			expect(pages).toHaveLength(3);
			const letters = pages.map((one) => one.letters).join("");
			expect(
				texts.filter((text) => !letters.includes(lettersOf(text))),
			).toEqual([]);
		},
	);
});

describe("the code on the sheet", () => {
	test.each([
		["in the light", { ...TABLET, colorScheme: "light" }],
		["in the dark", { ...TABLET, colorScheme: "dark" }],
		["on a phone", PHONE],
	] as const)("leads back to the job, %s", async (_, options) => {
		const page = await browser.open(options);
		const spec = await savedSpec(page);
		await page.goto(browser.at(`${spec}/sheet`));
		const address = await scanned(page);
		expect(address).toBe(browser.at(spec));
		await page.getByText("works on this machine only").waitFor();
		await page.goto(address ?? "");
		await page
			.getByRole("heading", { name: /^Spec \d+, revision 1/ })
			.waitFor();
	});

	test("stands on the print too; what is for the screen does not", async () => {
		const page = await browser.open(TABLET);
		const spec = await savedSpec(page);
		await page.goto(browser.at(`${spec}/sheet`));
		await page.emulateMedia({ media: "print" });
		expect(await scanned(page)).toBe(browser.at(spec));
		expect(await files(page).isVisible()).toBe(false);
		expect(await page.getByText("works on this machine only").isVisible()).toBe(
			false,
		);
	});
});
