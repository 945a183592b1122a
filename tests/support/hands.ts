import type { Locator, Page } from "playwright-core";

/** What the hands do: a tap on the glass, or a field put in focus and typed into. */
export class Hands {
	taps = 0;
	fields = 0;
	keys = 0;
	async tap(target: Locator): Promise<void> {
		this.taps++;
		await target.click();
	}
	async choose(page: Page, name: string): Promise<void> {
		this.taps++;
		await page.getByRole("radio", { name, exact: true }).check();
	}
	async type(target: Locator, text: string): Promise<void> {
		this.fields++;
		this.keys += text.length;
		await target.fill(text);
		await target.blur();
	}

	/** How long it takes a person who knows the page, without what is done away from the glass. */
	get seconds(): number {
		return (
			(this.taps + this.fields) * (KLM.pointS + KLM.thinkS) +
			this.keys * KLM.keyS
		);
	}
}

/**
 * Keystroke-level model (Card, Moran & Newell 1980), seconds, from memory: 1.1 to point, 1.35 to make
 * up one's mind, 0.28 a key.
 */
const KLM = { pointS: 1.1, thinkS: 1.35, keyS: 0.28 } as const;
