import type { Locator, Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { seededUniform } from "@/lib/advice/normal";
import { choicesFrom, SEARCH_SEED } from "@/lib/advice/recommend";
import { type TwoGames, twoGames } from "@/lib/advice/two-games";
import type { Answers } from "@/lib/forms/fields";
import { must } from "@/lib/numerics/outcome";
import { gameName } from "@/lib/present/labels";
import { twoGamesView } from "@/lib/present/two-games-view";
import type { GameId } from "@/lib/reference/rules";
import { accessibilityProblems, browserTest } from "../support/browser";
import { fittingWith, inputOf, plainText } from "../support/fittings";
import { METRIC } from "../support/readers";

const browser = browserTest();
const WIDE = { viewport: { width: 1440, height: 900 } };
const PHONE = { viewport: { width: 360, height: 740 } };
const TYPED = { stature: "178 cm" } as const;

/** What the page must find, by the function it asks in its worker. */
function expected(p: {
	second: GameId;
	shareOfFirst: number;
	answers?: Answers;
}): TwoGames {
	const input = inputOf(p.answers ?? TYPED);
	return must(
		twoGames({
			input,
			second: { gameId: p.second },
			shareOfFirst: p.shareOfFirst,
			options: {
				...choicesFrom(input.priorities),
				uniform: seededUniform(SEARCH_SEED),
			},
		}),
	);
}

let count = 0;
async function opened(page: Page): Promise<Locator> {
	const number = await fittingWith(page, {
		at: browser.at,
		player: `Invented Doubler ${++count}`,
		step: "player",
		typed: TYPED,
	});
	await page.goto(browser.at(`/fittings/${number}/recommendation`));
	await page.getByText(/Best of .* cues; .* are beaten by none/).waitFor();
	return page.getByRole("region", { name: "Two games", exact: true });
}

async function ask(region: Locator, second: GameId): Promise<void> {
	await region
		.getByLabel("The other game")
		.selectOption({ label: gameName(second, METRIC) });
	await region.getByRole("button", { name: "One cue or two?" }).click();
	await region.getByText("Looking through both games’ cues…").waitFor();
	await region.getByRole("table").waitFor();
}

async function says(region: Locator, found: TwoGames): Promise<void> {
	const view = twoGamesView(found, METRIC);
	const cells = await region
		.getByRole("row")
		.locator("td, th[scope=row]")
		.allTextContents();
	expect(cells.map(plainText)).toEqual(
		view.cues.flatMap(({ name, cue, price }) =>
			[name, cue, price].map(plainText),
		),
	);
	const whole = plainText(await region.textContent());
	expect(whole).toContain(plainText(view.verdict));
	for (const { name, text } of view.games)
		expect(whole).toContain(plainText(`${name}${text}`));
	expect(whole).toContain(plainText(view.prices));
	if (view.conflicts !== null)
		expect(whole).toContain(plainText(view.conflicts));
}

describe("one player, two games", () => {
	test("one cue or two, what it loses and what it costs are what the models say", async () => {
		const page = await browser.open(WIDE);
		const region = await opened(page);
		const button = region.getByRole("button", { name: "One cue or two?" });
		expect(await button.isDisabled()).toBe(true);
		await ask(region, "english-eight-ball");
		const found = expected({
			second: "english-eight-ball",
			shareOfFirst: 0.5,
		});
		expect(found.compromise).not.toBeNull();
		for (const { loss } of found.games) expect(loss).toBeGreaterThanOrEqual(0);
		await says(region, found);
	});

	test("the share of play moves it, and another answer takes it away until it is asked again", async () => {
		const page = await browser.open(WIDE);
		const region = await opened(page);
		const share = region.getByRole("slider", { name: /^Play in/ });
		await share.focus();
		for (let i = 0; i < 8; i++) await share.press("ArrowRight");
		expect(plainText(await share.getAttribute("aria-valuetext"))).toMatch(
			/^90 ?%$/,
		);
		await ask(region, "english-eight-ball");
		await says(
			region,
			expected({ second: "english-eight-ball", shareOfFirst: 0.9 }),
		);

		await page.getByLabel("Wanted tip", { exact: true }).fill("9.5 mm");
		await region.getByRole("table").waitFor({ state: "detached" });
		await ask(region, "english-eight-ball");
		await says(
			region,
			expected({
				second: "english-eight-ball",
				shareOfFirst: 0.9,
				answers: { ...TYPED, wishTip: "9.5 mm" },
			}),
		);
	});

	test("where no tip serves both, two cues are named with the reason", async () => {
		const page = await browser.open(WIDE);
		const region = await opened(page);
		await ask(region, "american-pool");
		const found = expected({ second: "american-pool", shareOfFirst: 0.5 });
		expect(found.conflicts).toContain("tip");
		await says(region, found);
		expect(await region.getByRole("row").count()).toBe(3);
	});

	test("no axe violation, nothing wider than a phone's screen", async () => {
		const page = await browser.open(PHONE);
		const region = await opened(page);
		await ask(region, "english-eight-ball");
		expect(await accessibilityProblems(page)).toEqual([]);
		expect(
			await page.evaluate(
				() =>
					document.documentElement.scrollWidth -
					document.documentElement.clientWidth,
			),
		).toBeLessThanOrEqual(0);
	});
});
