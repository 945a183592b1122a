import type { Page } from "playwright-core";
import type { FittingInput } from "@/lib/advice/input";
import { readAnswers } from "@/lib/forms/answers";
import type { Answers, FieldName } from "@/lib/forms/fields";
import { fieldLabel } from "@/lib/present/labels";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import { offerOf } from "@/lib/workshop/settings";
import type { BrowserTest } from "./browser";
import { METRIC } from "./readers";

/** What the page computes from: the answers as typed, with the workshop's settings as they come. */
export const inputOf = (answers: Answers): FittingInput => ({
	...readAnswers(answers).input,
	workshop: offerOf(DEFAULT_SETTINGS),
});

/** A new player's fitting with these texts typed at one step, saved; gives its number. */
export async function fittingWith(
	page: Page,
	p: {
		at: BrowserTest["at"];
		player: string;
		step: string;
		typed: Partial<Record<FieldName, string>>;
	},
): Promise<string> {
	await page.goto(p.at("/fittings/new"));
	await page.getByLabel("Player", { exact: true }).fill(p.player);
	await page.getByRole("option", { name: `New player: ${p.player}` }).click();
	await page.getByRole("button", { name: "Start", exact: true }).click();
	await page.waitForURL(/\/fittings\/\d+\/player$/);
	const number = /fittings\/(\d+)/.exec(page.url())?.[1] ?? "";
	await page.goto(p.at(`/fittings/${number}/${p.step}`));
	for (const [name, text] of Object.entries(p.typed))
		await page
			.getByLabel(fieldLabel(name as FieldName, METRIC), { exact: true })
			.fill(text);
	await page.waitForTimeout(50);
	await page.getByText(/All answers saved/).waitFor();
	return number;
}

/** Spaces as a person reads them. */
export const plainText = (text: string | null): string =>
	(text ?? "").replace(/[\u00a0\u202f]/g, " ");
