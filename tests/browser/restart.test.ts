import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { browserTest } from "../support/browser";
import { freePort, startServer } from "../support/server";

const browser = browserTest();

test("drafts survive a restart of the server, typed before it or while it is down", async () => {
	browser.expectError("ERR_CONNECTION_REFUSED");
	const dataDir = mkdtempSync(join(tmpdir(), "restart-test-"));
	const port = await freePort();
	let server = await startServer({ dataDir, port });
	try {
		const page = await browser.open();
		await page.goto(`${server.baseUrl}/fittings/new`);
		await page.getByLabel("Player", { exact: true }).fill("Invented Restarter");
		await page.getByRole("option", { name: /^New player/ }).click();
		await page.getByRole("button", { name: "Start", exact: true }).click();
		await page.waitForURL(/player$/);
		const height = page.getByLabel("Height", { exact: true });
		const span = page.getByLabel("Arm span", { exact: true });
		await height.fill("176 cm");
		await page.waitForTimeout(50);
		await page.getByText(/All answers saved/).waitFor();

		await server.stop();
		await span.fill("179 cm");
		await page.getByText(/Kept on this device/).waitFor();
		server = await startServer({ dataDir, port });
		await page.getByText(/All answers saved/).waitFor();
		await page.reload();
		expect(await height.inputValue()).toBe("176 cm");
		expect(await span.inputValue()).toBe("179 cm");

		const fresh = await browser.open();
		await fresh.goto(page.url());
		expect(await fresh.getByLabel("Height", { exact: true }).inputValue()).toBe(
			"176 cm",
		);
		expect(
			await fresh.getByLabel("Arm span", { exact: true }).inputValue(),
		).toBe("179 cm");
	} finally {
		await server.stop();
		rmSync(dataDir, { recursive: true });
	}
}, 180_000);
