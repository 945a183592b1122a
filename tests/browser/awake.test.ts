import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { accessibilityProblems, browserTest } from "../support/browser";

const browser = browserTest();
const TABLET = { viewport: { width: 820, height: 1180 }, locale: "en-GB" };

/** A device of which is known whether it was asked to keep its screen on; `refuses`: it will not now. */
async function onDevice(refuses = false): Promise<Page> {
	const page = await browser.open(TABLET);
	await page.addInitScript((isRefused) => {
		const held = new Set<object>();
		const request = async () => {
			if (isRefused) throw new DOMException("battery", "NotAllowedError");
			const lock = {
				released: false,
				release: async () => {
					lock.released = true;
					held.delete(lock);
				},
			};
			held.add(lock);
			return lock;
		};
		Object.defineProperty(navigator, "wakeLock", { value: { request } });
		Object.assign(window, { heldLocks: () => held.size });
	}, refuses);
	return page;
}
const held = (page: Page) =>
	page.evaluate(() =>
		(window as unknown as { heldLocks: () => number }).heldLocks(),
	);
const keepsOn = (page: Page) =>
	page.getByRole("switch", { name: /^Screen stays on/ });
const isOn = (page: Page, on: boolean) =>
	keepsOn(page)
		.and(page.locator(`[aria-checked=${on}]`))
		.waitFor();

test("the screen stays on during a session, until the coach switches that off, also for the next visit", async () => {
	const page = await onDevice();
	await page.goto(browser.at("/fittings/1/player"));
	await isOn(page, true);
	await expect.poll(() => held(page), { timeout: 20_000 }).toBe(1);
	expect(await accessibilityProblems(page)).toEqual([]);
	await keepsOn(page).click();
	await isOn(page, false);
	await expect.poll(() => held(page), { timeout: 20_000 }).toBe(0);
	await page.reload();
	await isOn(page, false);
	expect(await held(page)).toBe(0);
	await keepsOn(page).click();
	await isOn(page, true);
	await expect.poll(() => held(page), { timeout: 20_000 }).toBe(1);
});

test("a device that does not allow it now is not said to do it", async () => {
	const page = await onDevice(true);
	await page.goto(browser.at("/fittings/1/player"));
	await page
		.getByRole("switch", {
			name: "Screen stays on: the device does not allow it now",
		})
		.waitFor();
	expect(await held(page)).toBe(0);
});
