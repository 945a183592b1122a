import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { accessibilityProblems, browserTest } from "../support/browser";

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

/** The first job of the queue, from the queue itself. */
async function firstJob(page: Page): Promise<string> {
	await page.goto(browser.at("/workshop"));
	const link = page.locator('a[href^="/workshop/"]').filter({ hasText: /\d/ });
	const hrefs = await link.evaluateAll((all) =>
		all.map((one) => one.getAttribute("href") ?? ""),
	);
	const [number] = hrefs
		.map((href) => /^\/workshop\/(\d+)/.exec(href)?.[1])
		.filter((found) => found !== undefined);
	if (number === undefined) throw new Error("the queue shows no job");
	return `/workshop/${number}`;
}

describe("the workshop", () => {
	test("queue, job, checks and sheet fit three widths and break no rule", async () => {
		const page = await browser.open({ locale: "en-GB" });
		const job = await firstJob(page);
		await fitsEverywhere(page);
		for (const path of [job, `${job}/checks`, `${job}/sheet`]) {
			const answer = await page.goto(browser.at(path));
			expect(answer?.status(), path).toBe(200);
			await fitsEverywhere(page);
		}
	}, 120_000);

	test("every file a job offers is there", async () => {
		const page = await browser.open({ locale: "en-GB" });
		const job = await firstJob(page);
		await page.goto(browser.at(`${job}/sheet`));
		const files = await page
			.getByRole("list", { name: "Files for the bench" })
			.getByRole("link")
			.evaluateAll((all) => all.map((one) => (one as HTMLAnchorElement).href));
		expect(files).toHaveLength(5);
		const begins: Readonly<Record<string, string>> = {
			"sheet.pdf": "%PDF-",
			"stations.csv": "From the butt end (mm),",
			"profile.dxf": "  0\r\nSECTION",
			"job.json": '"format": "cue-job"',
		};
		for (const href of files) {
			const answer = await page.request.get(href);
			expect(answer.status(), href).toBe(200);
			const name = new URL(href).pathname.split("/").at(-1) ?? "";
			const body = (await answer.body()).toString("latin1");
			expect(body.slice(0, 400).replace(/\s+/g, " "), href).toContain(
				(begins[name] ?? "nothing").trim().replace(/\s+/g, " "),
			);
		}
		expect(
			(
				await page.request.get(browser.at("/workshop/99999999/sheet.pdf"))
			).status(),
		).toBe(404);
	});
});
