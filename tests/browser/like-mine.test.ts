import type { Locator, Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { readingOf } from "@/lib/advice/feel";
import { needsFor } from "@/lib/advice/fitting-needs";
import { STEP } from "@/lib/advice/judgement";
import {
	type LikeMineChange,
	likeMineBut,
} from "@/lib/advice/like-mine-advice";
import { must } from "@/lib/numerics/outcome";
import { likeMineView } from "@/lib/present/like-mine-view";
import { accessibilityProblems, browserTest } from "../support/browser";
import { fittingWith, inputOf, plainText } from "../support/fittings";
import { METRIC } from "../support/readers";

const browser = browserTest();
const WIDE = { viewport: { width: 1440, height: 900 } };
const PHONE = { viewport: { width: 360, height: 740 } };

/** An invented cue, as its player would measure it. */
const CUE = {
	presentLength: "1473 mm",
	presentMass: "510 g",
	presentButt: "29 mm",
	presentTip: "9.5 mm",
	presentBalance: "430 mm",
} as const;
const INPUT = inputOf(CUE);
const { lengthMm = 0, massG = 0, buttDiameterMm = 0 } = INPUT.presentCue;

/** What the page must say of a change, by the functions it is made of. */
function expected(change: LikeMineChange) {
	const reading = readingOf(must(needsFor(INPUT)));
	if (reading?.gripFromButtMm === undefined) throw new Error("no reading");
	const { gripFromButtMm } = reading;
	const found = must(
		likeMineBut({ reading: { ...reading, gripFromButtMm }, change }),
	);
	const view = likeMineView(found, METRIC);
	if (view === null) throw new Error("no load");
	return { found, view };
}

let count = 0;
async function opened(page: Page): Promise<Locator> {
	const number = await fittingWith(page, {
		at: browser.at,
		player: `Invented Keeper ${++count}`,
		step: "present-cue",
		typed: CUE,
	});
	await page.goto(browser.at(`/fittings/${number}/recommendation`));
	await page.getByText(/Best of .* cues; .* are beaten by none/).waitFor();
	return page.getByRole("region", { name: "Like mine, but…", exact: true });
}

const slider = (region: Locator, name: RegExp) =>
	region.getByRole("slider", { name });
const press = async (at: Locator, key: string, times: number) => {
	await at.focus();
	for (let i = 0; i < times; i++) await at.press(key);
};

/** The region says what the functions say: verdict, every cell of the table, bench and taper. */
async function says(region: Locator, change: LikeMineChange): Promise<void> {
	const { view } = expected(change);
	const texts = async () => ({
		verdict: plainText(await region.getByRole("status").textContent()),
		cells: (
			await region
				.getByRole("row")
				.locator("td, th[scope=row]")
				.allTextContents()
		).map(plainText),
		whole: plainText(await region.textContent()),
	});
	const wanted = {
		verdict: plainText(view.verdict),
		cells: view.rows
			.flatMap(({ name, now, becomes, kept }) => [name, now, becomes, kept])
			.map(plainText),
	};
	await expect
		.poll(async () => (await texts()).cells, { timeout: 10_000 })
		.toEqual(wanted.cells);
	const { verdict, whole } = await texts();
	expect(verdict).toBe(wanted.verdict);
	expect(whole).toContain(plainText(view.bench));
	expect(whole).toContain(plainText(view.taper));
}

describe("the present cue with something changed", () => {
	test("unchanged it keeps everything, and what a change keeps is what the models say", async () => {
		const page = await browser.open(WIDE);
		const region = await opened(page);
		await region.getByRole("table").waitFor();
		expect(expected({}).found.cannotKeep).toEqual([]);
		await says(region, {});

		await press(slider(region, /^Shorter or longer/), "ArrowLeft", 4);
		await says(region, { lengthMm: lengthMm - 4 * STEP.lengthMm });

		await press(slider(region, /^Slimmer or thicker/), "ArrowRight", 3);
		await press(slider(region, /^Lighter or heavier/), "ArrowRight", 2);
		const change = {
			lengthMm: lengthMm - 4 * STEP.lengthMm,
			buttDiameterMm: buttDiameterMm + 3 * STEP.diameterMm,
			massG: massG + 2 * STEP.massG,
		};
		await says(region, change);
		const { view } = expected(change);
		if (view.others.length > 0) {
			await region.getByText("Other pairs that can be kept").click();
			const listed = await region.getByRole("listitem").allTextContents();
			expect(listed.map(plainText)).toEqual(view.others.map(plainText));
		}
	});

	test("as far as the sliders go, it says what cannot be kept together or made", async () => {
		const page = await browser.open(WIDE);
		const region = await opened(page);
		await region.getByRole("table").waitFor();
		await press(slider(region, /^Shorter or longer/), "End", 1);
		await press(slider(region, /^Lighter or heavier/), "Home", 1);
		const change = {
			lengthMm: lengthMm + 16 * STEP.lengthMm,
			massG: massG - 8 * STEP.massG,
		};
		expect(expected(change).found.cannotKeep.length).toBeGreaterThan(0);
		await says(region, change);
	});

	test("without the cue's balance there is nothing to ask", async () => {
		const page = await browser.open(WIDE);
		const { presentBalance: _, ...some } = CUE;
		const number = await fittingWith(page, {
			at: browser.at,
			player: `Invented Keeper ${++count}`,
			step: "present-cue",
			typed: some,
		});
		await page.goto(browser.at(`/fittings/${number}/recommendation`));
		await page.getByText(/Best of .* cues; .* are beaten by none/).waitFor();
		await page.getByRole("region", { name: "Two games" }).waitFor();
		expect(
			await page.getByRole("region", { name: "Like mine, but…" }).count(),
		).toBe(0);
	});

	test.each([
		["wide", WIDE],
		["phone", PHONE],
	] as const)(
		"no axe violation, nothing wider than the screen, %s",
		async (_, size) => {
			const page = await browser.open(size);
			const region = await opened(page);
			await press(slider(region, /^Shorter or longer/), "ArrowRight", 2);
			await says(region, { lengthMm: lengthMm + 2 * STEP.lengthMm });
			expect(await accessibilityProblems(page)).toEqual([]);
			expect(
				await page.evaluate(
					() =>
						document.documentElement.scrollWidth -
						document.documentElement.clientWidth,
				),
			).toBeLessThanOrEqual(0);
		},
	);
});
