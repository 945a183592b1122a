import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { NATURAL_PALETTE } from "@/lib/present/cue-palette";
import { renderCue } from "@/lib/present/cue-raster";
import { USUAL_GRAIN } from "@/lib/present/cue-shading";
import { heightForPx } from "@/lib/present/cue-view";
import { accessibilityProblems, browserTest } from "../support/browser";
import { cue } from "../support/designs";

const browser = browserTest();
const TABLET = { viewport: { width: 820, height: 1180 } };
const PHONE = { viewport: { width: 360, height: 740 } };
const DESK = { viewport: { width: 1440, height: 900 } };

const picture = (page: Page) =>
	page.getByRole("img", { name: /cue|butt/i }).first();
const weight = (page: Page) =>
	page
		.locator("dt", { hasText: /^Weight$/ })
		.locator("xpath=following-sibling::dd[1]");

/** A sum over the canvas that any change of the picture changes, and how many pixels it covers. */
const painted = (page: Page) =>
	page.locator("canvas").evaluate((canvas: HTMLCanvasElement) => {
		const { data } = canvas
			.getContext("2d")
			?.getImageData(0, 0, canvas.width, canvas.height) ?? { data: [] };
		let sum = 0;
		let covered = 0;
		for (let i = 0; i < data.length; i++)
			sum = (sum * 31 + (data[i] ?? 0)) % 1e9;
		for (let i = 3; i < data.length; i += 4) if (data[i]) covered++;
		return { sum, covered, width: canvas.width, height: canvas.height };
	});
/** Waits until the canvas shows what was asked last: it is drawn away from the page. */
const drawnAnew = (page: Page) => page.locator("canvas[data-drawn]").waitFor();
/** Waits until the canvas shows the angle. */
const drawnAt = (page: Page, angleDeg: number) =>
	page.waitForFunction(
		(wanted) => document.querySelector("canvas")?.dataset.drawn === wanted,
		String(angleDeg),
	);
async function open(page: Page, query = ""): Promise<void> {
	await page.goto(browser.at(`/cues${query}`));
	await drawnAt(page, 0);
}

describe("a cue on its own", () => {
	test("stands drawn and weighed with nothing chosen", async () => {
		const page = await browser.open(TABLET);
		await open(page);
		const { covered, width, height } = await painted(page);
		expect(width).toBeGreaterThanOrEqual(1600);
		expect(covered / (width * height)).toBeGreaterThan(0.4);
		expect(await weight(page).textContent()).toMatch(/\d{3}\u00a0g/);
		for (const name of [
			"How it bends",
			"On the ball",
			"Grain arrows and sighting",
			"Through the year",
		])
			await page.getByRole("heading", { name }).waitFor();
		await page.locator("svg.recharts-surface").first().waitFor();
	});

	test("what is chosen changes picture and figures at once, and outlives a reload", async () => {
		const page = await browser.open(DESK);
		await open(page);
		const before = {
			...(await painted(page)),
			weight: await weight(page).textContent(),
		};
		await page.getByLabel("Butt wood").selectOption({ label: "Olive" });
		await page.getByText(/butt of olive/).waitFor();
		await drawnAnew(page);
		const after = await painted(page);
		expect(after.sum).not.toBe(before.sum);
		expect(await weight(page).textContent()).not.toBe(before.weight);
		await page.getByLabel("Wanted weight", { exact: true }).fill("520 g");
		await page.getByText("Added weight, net").waitFor();
		await page.getByText(/Brass Ø/).waitFor();
		await page.waitForURL(/buttWood=olive&mass=520\+g/);
		await page.reload();
		await drawnAt(page, 0);
		expect(
			await page.getByLabel("Wanted weight", { exact: true }).inputValue(),
		).toBe("520 g");
		await page.getByText(/butt of olive/).waitFor();
		expect(await weight(page).textContent()).toMatch(/^520\u00a0g/);
	});

	test("a weight the wood cannot have is refused, the cue stays, and one tap mends it", async () => {
		const page = await browser.open(TABLET);
		await open(page, "?mass=310+g&buttWood=african-blackwood");
		const refusal = page.getByRole("main").getByRole("alert");
		await refusal.getByText(/cannot be built/).waitFor();
		expect((await painted(page)).covered).toBeGreaterThan(1000);
		await refusal.getByRole("button", { name: /^Use / }).click();
		await refusal.waitFor({ state: "detached" });
	});

	test("an entry that cannot be read names itself and its bounds, and counts as left open", async () => {
		const page = await browser.open(TABLET);
		await open(page);
		const length = page.getByLabel("Length", { exact: true });
		await length.fill("999 km");
		await length.blur();
		await page.getByText(/^Length: the unit in/).waitFor();
		await page.getByText("Some entries cannot be read").waitFor();
		await page.getByText("Grain and sighting", { exact: true }).click();
		const tilt = page.getByLabel("Tilt of the rings, degrees");
		await tilt.fill("30");
		await tilt.blur();
		await page.getByText(/“30” is not a number from −10 to 10/).waitFor();
	});

	test("rings chosen move the arrows of picture and table alike", async () => {
		const page = await browser.open(TABLET);
		await open(page);
		const before = (await painted(page)).sum;
		const arrows = () =>
			page
				.getByRole("table", { name: "Arrows on the shaft, from the tip" })
				.getByRole("row")
				.count();
		const few = await arrows();
		await page.getByText("Grain and sighting", { exact: true }).click();
		await page.getByLabel("Rings of the shaft apart").fill("1 mm");
		await expect.poll(arrows).toBeGreaterThan(few);
		await expect.poll(async () => (await painted(page)).sum).not.toBe(before);
	});
});

describe("the picture", () => {
	test("turns by keyboard, and says so", async () => {
		const page = await browser.open(TABLET);
		await open(page, "?frontWedgeWood=olive");
		const front = await painted(page);
		const slider = page.getByRole("slider", { name: "Turn the cue" });
		await slider.focus();
		await page.keyboard.press("ArrowRight");
		await drawnAt(page, 5);
		expect(await slider.getAttribute("aria-valuetext")).toBe("5°, front");
		await page.keyboard.press("PageUp");
		await drawnAt(page, 50);
		await picture(page)
			.and(page.getByLabel(/50° faces you/))
			.waitFor();
		expect((await painted(page)).sum).not.toBe(front.sum);
		await page.keyboard.press("Home");
		await drawnAt(page, 0);
		expect((await painted(page)).sum).toBe(front.sum);
	});

	test("each view is another picture with words of its own", async () => {
		const page = await browser.open(TABLET);
		await open(page);
		const seen = new Set<number>();
		for (const [name, words] of [
			["Whole, to scale", /whole cue, to scale/],
			["Whole, thicker", /thickness drawn \d times/],
			["Front", /front of the cue, enlarged/],
			["Butt", /butt, enlarged/],
			["Laid flat", /laid flat/],
		] as const) {
			await page.getByRole("radio", { name, exact: true }).check();
			await page.getByRole("img", { name: words }).waitFor();
			await drawnAnew(page);
			seen.add((await painted(page)).sum);
		}
		expect(seen.size).toBe(5);
	});

	test("the line that faces you is told as a table", async () => {
		const page = await browser.open(TABLET);
		await open(page);
		await page.getByText("What stands along the line that faces you").click();
		const table = page.getByRole("table", { name: /From tip to butt at 0°/ });
		for (const part of ["Tip", "Ferrule", "Shaft", "Joint"])
			await table
				.getByRole("rowheader", { name: part, exact: true })
				.first()
				.waitFor();
	});

	test("stands on paper too: as wide as the page, controls left out", async () => {
		const page = await browser.open(DESK);
		await open(page, "?frontWedgeWood=olive");
		await page.setViewportSize({ width: 690, height: 980 });
		await page.emulateMedia({ media: "print" });
		await page.waitForTimeout(200);
		await drawnAnew(page);
		const box = await picture(page).boundingBox();
		expect(box?.width).toBeGreaterThan(500);
		expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(690);
		expect(
			await page.getByRole("slider", { name: "Turn the cue" }).isVisible(),
		).toBe(false);
		expect(await page.getByLabel("Butt wood").isVisible()).toBe(false);
		expect((await painted(page)).covered).toBeGreaterThan(1000);
	});
});

describe("the picture as a file", () => {
	/** The browser's own decoder, a second opinion on the PNG encoder and on the route. */
	test("decoded by the browser it is the raster, pixel for pixel", async () => {
		const page = await browser.open(TABLET);
		await open(page);
		const design = cue({ lengthMm: 1473 });
		const view = { part: "whole", isUnrolled: false, stretch: 4 } as const;
		const size = {
			widthPx: 600,
			heightPx: heightForPx({ design, view, widthPx: 600 }),
		};
		const { rgba } = renderCue({
			design,
			view,
			angleDeg: 30,
			...size,
			palette: NATURAL_PALETTE,
			grain: USUAL_GRAIN,
		});
		const decoded = await page.evaluate(async () => {
			const answer = await fetch(
				"/api/v1/cue/picture?lengthMm=1473&buttDiameterMm=29&tipDiameterMm=9.5&shaftWood=white-ash&buttWood=gaboon-ebony&stretch=4&angleDeg=30&widthPx=600",
			);
			const image = await createImageBitmap(await answer.blob(), {
				premultiplyAlpha: "none",
				colorSpaceConversion: "none",
			});
			const canvas = new OffscreenCanvas(image.width, image.height);
			const context = canvas.getContext("2d");
			context?.drawImage(image, 0, 0);
			const pixels = context?.getImageData(0, 0, image.width, image.height);
			return {
				width: image.width,
				height: image.height,
				data: [...(pixels?.data ?? [])],
			};
		});
		expect([decoded.width, decoded.height]).toEqual([
			size.widthPx,
			size.heightPx,
		]);
		let worst = 0;
		for (let i = 0; i < rgba.length; i += 4) {
			expect(decoded.data[i + 3]).toBe(rgba[i + 3]);
			// A canvas keeps colours multiplied by alpha, so soft edges come back rounded.
			if (rgba[i + 3] !== 255) continue;
			for (let channel = 0; channel < 3; channel++)
				worst = Math.max(
					worst,
					Math.abs((decoded.data[i + channel] ?? 0) - (rgba[i + channel] ?? 0)),
				);
		}
		expect(worst).toBe(0);
	});

	test("the link under the picture opens it", async () => {
		const page = await browser.open(TABLET);
		await open(page, "?mass=520+g&veneerWood=sugar-maple");
		const href = await page
			.getByRole("link", { name: "Open the picture as a file" })
			.getAttribute("href");
		const answer = await page.request.get(browser.at(href ?? ""));
		expect(answer.status()).toBe(200);
		expect(answer.headers()["content-type"]).toBe("image/png");
	});
});

describe("accessibility", () => {
	test.each([
		["light", PHONE],
		["dark", PHONE],
		["light", TABLET],
		["dark", DESK],
	] as const)(
		"no violation and no sideways scrolling, %s %j",
		async (colorScheme, size) => {
			const page = await browser.open({ ...size, colorScheme });
			await open(page, "?mass=520+g&frontWedgeWood=olive");
			for (const summary of [
				"Splice, joint and ferrule",
				"Air through the year",
				"What stands along the line that faces you",
			])
				await page.getByText(summary, { exact: true }).click();
			await page.locator("svg.recharts-surface").first().waitFor();
			await page.waitForLoadState("networkidle");
			expect(await accessibilityProblems(page)).toEqual([]);
			const overflow = await page.evaluate(
				() =>
					document.documentElement.scrollWidth -
					document.documentElement.clientWidth,
			);
			expect(overflow).toBeLessThanOrEqual(0);
		},
	);
});
