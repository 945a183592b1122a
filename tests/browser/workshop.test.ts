import type { Locator, Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { accessibilityProblems, browserTest } from "../support/browser";

// What a finished cue weighed changes the densities every later figure is worked out with.
const browser = browserTest({ server: "own" });
const WIDTHS = [360, 820, 1440] as const;

async function fitsEverywhere(page: Page): Promise<void> {
	// The title of a page gone to comes after the page.
	await page.waitForFunction(() => document.title !== "");
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

const DESK = { viewport: { width: 1440, height: 900 }, locale: "en-GB" };
const PHONE = { viewport: { width: 360, height: 740 }, locale: "en-GB" };
const plain = (text: string | null) => (text ?? "").replaceAll("\u00a0", " ");

/** What the hands do: a tap, or a field put in focus and typed into. */
class Hands {
	taps = 0;
	fields = 0;
	keys = 0;
	async tap(target: Locator): Promise<void> {
		this.taps++;
		await target.click();
	}
	async type(target: Locator, text: string): Promise<void> {
		this.fields++;
		this.keys += text.length;
		await target.fill(text);
		await target.blur();
	}
	/**
	 * Keystroke-level model (Card, Moran & Newell 1980), seconds, from memory: 1.1 to point, 1.35 to make
	 * up one's mind, 0.28 a key. Without the work at the bench itself.
	 */
	get minutes(): number {
		return ((this.taps + this.fields) * (1.1 + 1.35) + this.keys * 0.28) / 60;
	}
}

const button = (page: Page, name: string) =>
	page.getByRole("button", { name, exact: true });
const field = (page: Page, name: string) =>
	page.getByLabel(name, { exact: true });

/** The moves offered where a job stands. */
async function movesOffered(page: Page): Promise<string[]> {
	const part = page
		.locator("section")
		.filter({ has: page.getByRole("heading", { name: "Where it stands" }) });
	const names = await part
		.locator("button:visible, summary:visible")
		.allTextContents();
	return names.map(plain).filter((name) => name !== "");
}

const stands = (page: Page, state: string) =>
	page.getByText(new RegExp(`^${state}\\b.* since `)).waitFor();

/** A name like no other's, of letters alone: a digit in it would be searched among the jobs' numbers. */
const ownName = (): string =>
	`Invented ${Array.from(crypto.getRandomValues(new Uint8Array(10)), (byte) => String.fromCharCode(97 + (byte % 26))).join("")}`;

/** Saves a spec of a player of its own, and is on the spec's page. */
async function savedSpec(page: Page): Promise<{ name: string; spec: string }> {
	const name = ownName();
	await page.goto(browser.at("/fittings/new"));
	await page.getByLabel("Player", { exact: true }).fill(name);
	await page.getByRole("option", { name: `New player: ${name}` }).click();
	await button(page, "Start").click();
	await page.waitForURL(/\/fittings\/\d+\//);
	const number = /fittings\/(\d+)/.exec(page.url())?.[1];
	await page.goto(browser.at(`/fittings/${number}/recommendation`));
	await button(page, "Save the spec").click();
	await page.waitForURL(/\/specs\/\d+\/\d+$/);
	return { name, spec: new URL(page.url()).pathname };
}

/** Sends the spec to the workshop; gives the job's address. */
async function sentToWorkshop(
	page: Page,
	hands: Hands = new Hands(),
): Promise<string> {
	await hands.type(field(page, "Your name"), "Bench One");
	await hands.tap(button(page, "Send to the workshop"));
	await page.waitForURL(/\/workshop\/\d+$/);
	await stands(page, "asked for");
	return new URL(page.url()).pathname;
}

/** Quotes at the price suggested; the job is then quoted. */
async function quoted(page: Page, hands: Hands = new Hands()): Promise<void> {
	const price = page.getByLabel(/^Price in /).first();
	if (!(await price.isVisible()))
		await hands.tap(page.getByText("Write a quote", { exact: true }));
	await price.waitFor();
	await hands.tap(button(page, "Save the quote"));
	await stands(page, "quoted");
}

/** Makes the customer's address. */
async function customerAddress(
	page: Page,
	hands: Hands = new Hands(),
): Promise<string> {
	await hands.tap(button(page, "Make a link"));
	const address = field(page, "Address for the customer");
	await address.waitFor();
	return new URL(await address.inputValue()).pathname;
}

/** The customer's yes, in a browser of their own. */
async function agreesAt(
	address: string,
	look: (page: Page) => Promise<void> = async () => {},
): Promise<Page> {
	const page = await browser.open(PHONE);
	await page.goto(browser.at(address));
	await look(page);
	await page.setViewportSize(PHONE.viewport);
	await field(page, "Your name").fill("Invented Customer");
	await button(page, "I agree").click();
	await page.getByText(/Invented Customer agreed on/).waitFor();
	return page;
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

describe("a job", () => {
	test("goes from asked for to handed over, each state with its own moves, and is the player's cue then", async () => {
		const page = await browser.open(DESK);
		const hands = new Hands();
		const { name } = await savedSpec(page);
		const job = await sentToWorkshop(page, hands);
		expect(await movesOffered(page)).toEqual(["Cancel the job"]);
		await fitsEverywhere(page);

		await quoted(page, hands);
		expect(await movesOffered(page)).toEqual(["Cancel the job"]);
		const address = await customerAddress(page, hands);
		await fitsEverywhere(page);

		const customer = await agreesAt(address, async (open) => {
			const words = plain(await open.getByRole("main").textContent());
			expect(words).toMatch(/Valid until: \d/);
			expect(words).toMatch(/What may vary/);
			expect(words).toMatch(/Looking after the cue/);
			expect(words).toMatch(/Never file or sand it when a tip is changed/);
			await fitsEverywhere(open);
		});
		await fitsEverywhere(customer);

		await page.reload();
		await stands(page, "agreed");
		expect(await movesOffered(page)).toEqual([
			"Put it on the bench",
			"Cancel the job",
		]);
		await hands.tap(button(page, "Put it on the bench"));
		await stands(page, "on the bench");
		expect(await movesOffered(page)).toEqual([
			"Mark it as checked",
			"Take it off the bench again",
			"Cancel the job",
			"Put it aside to wait",
		]);
		await fitsEverywhere(page);

		await hands.tap(
			page.locator("summary").filter({ hasText: "Put it aside to wait" }),
		);
		await hands.type(field(page, "Expected until"), "2031-05-03");
		await hands.tap(button(page, "Put it aside to wait"));
		await stands(page, "waiting");
		await page.getByText("(drying, expected until 3 May 2031)").waitFor();
		expect(await movesOffered(page)).toEqual([
			"Back to the bench",
			"Cancel the job",
		]);
		await fitsEverywhere(page);
		await hands.tap(button(page, "Back to the bench"));
		await stands(page, "on the bench");

		// Twelve grams over what is wanted: the sheet allows seven.
		await hands.tap(page.getByRole("link", { name: "Measure", exact: true }));
		await hands.tap(page.getByRole("radio", { name: "Finished", exact: true }));
		const wanted = Number(
			/wanted (\d+)/.exec(
				plain(
					await page
						.getByText(/^wanted \d+.*± 7/)
						.first()
						.textContent(),
				),
			)?.[1],
		);
		expect(wanted).toBeGreaterThan(300);
		await hands.type(field(page, "Weight"), `${wanted + 12} g`);
		await page.getByText(/\+1[12](\.\d)?\sg: out of tolerance/).waitFor();
		await hands.tap(button(page, "Save the check"));
		await page.getByRole("heading", { name: "Out of tolerance" }).waitFor();
		await fitsEverywhere(page);
		await page.goto(browser.at(job));
		await hands.tap(button(page, "Mark it as checked"));
		await page
			.getByText(/is out of tolerance and not decided on yet/)
			.waitFor();
		await stands(page, "on the bench");
		await hands.tap(button(page, "Accept it as it is"));
		await page
			.getByText(/Not done/)
			.first()
			.waitFor();
		await hands.type(
			field(page, "Why, or what is to be done"),
			"Likes it heavy",
		);
		await hands.tap(button(page, "Accept it as it is"));
		await page
			.getByRole("heading", { name: "Out of tolerance" })
			.waitFor({ state: "detached" });
		await page.getByRole("cell", { name: /Likes it heavy/ }).waitFor();
		await hands.tap(button(page, "Mark it as checked"));
		await stands(page, "checked");
		expect(await movesOffered(page)).toEqual([
			"Hand it over",
			"Back to the bench",
			"Cancel the job",
		]);
		await fitsEverywhere(page);
		await hands.tap(button(page, "Hand it over"));
		await hands.tap(
			page.getByRole("dialog").getByRole("button", { name: "Hand it over" }),
		);
		await stands(page, "handed over");
		expect(await movesOffered(page)).toEqual([]);
		await fitsEverywhere(page);
		console.info(
			`workshop's way: ${hands.taps} taps, ${hands.fields} fields, ${hands.keys} keys; about ${hands.minutes.toFixed(1)} min beside the bench`,
		);
		expect(hands.taps).toBeLessThanOrEqual(24);
		expect(hands.fields).toBeLessThanOrEqual(8);

		await page.getByRole("link", { name: "Care sheet" }).click();
		await page.waitForURL(/\/care$/);
		await page
			.getByRole("row", { name: /^Weight .*measured on the cue/ })
			.waitFor();
		await fitsEverywhere(page);
		await page.emulateMedia({ media: "print" });
		expect(
			await page.getByRole("link", { name: "Back to the job" }).isVisible(),
		).toBe(false);
		await page.emulateMedia({ media: "screen" });

		// The player comes back: the cue as built is the one in hand.
		await page.goto(browser.at(job));
		await page.getByRole("link", { name, exact: true }).click();
		await page.waitForURL(/\/players\//);
		await page.getByRole("button", { name: /^Refit from fitting/ }).click();
		await page.waitForURL(/\/fittings\/\d+\//);
		const fitting = /fittings\/(\d+)/.exec(page.url())?.[1];
		await page.goto(browser.at(`/fittings/${fitting}/present-cue`));
		await expect
			.poll(
				async () =>
					plain(await field(page, "Weight of the present cue").inputValue()),
				{ timeout: 20_000 },
			)
			.toBe(`${wanted + 12} g`);
	}, 240_000);

	test("changed later is another revision: the difference is read, agreed to, and the sheet follows", async () => {
		const page = await browser.open(DESK);
		await savedSpec(page);
		const job = await sentToWorkshop(page);
		await quoted(page);
		const address = await customerAddress(page);
		const customer = await agreesAt(address);
		await page.reload();
		await stands(page, "agreed");
		await button(page, "Put it on the bench").click();
		await stands(page, "on the bench");

		await page.getByText("Change the cue", { exact: true }).click();
		const length = field(page, "Length");
		const before = Number(/\d+/.exec(await length.inputValue())?.[0]);
		await length.fill(`${before + 20} mm`);
		await button(page, "Work out the change").click();
		const worked = page.getByRole("table", { name: "This would change" });
		await worked.waitFor();
		const told = plain(await worked.textContent());
		expect(told).toContain(String(before));
		expect(told).toContain(String(before + 20));
		await button(page, "Save as revision 3").click();
		await page
			.getByText(/Revision 3 is not agreed to yet\. The bench/)
			.waitFor();
		await fitsEverywhere(page);

		// The bench's sheet stays with what was agreed to, and says what waits.
		await page.goto(browser.at(`${job}/sheet`));
		await page.getByText(/A change, revision 3, waits/).waitFor();
		await fitsEverywhere(page);

		await customer.reload();
		await customer.getByText("What changed since you agreed").waitFor();
		expect(plain(await customer.getByRole("main").textContent())).toContain(
			String(before + 20),
		);
		await fitsEverywhere(customer);
		await field(customer, "Your name").fill("Invented Customer");
		await button(customer, "I agree").click();
		await customer.getByText(/Invented Customer agreed on/).waitFor();
		await page.goto(browser.at(`${job}?sheet=2`));
		await page.getByText("The sheet in hand is replaced").waitFor();
		await page.goto(browser.at(`${job}/sheet`));
		await page
			.getByRole("heading", { name: /^Job sheet, job \d+\/3/ })
			.waitFor();
		expect(await page.getByText(/waits for the customer/).count()).toBe(0);
	}, 180_000);
});

describe("the queue", () => {
	test("is searched, filtered by state, and left for the next job by one key", async () => {
		const page = await browser.open(DESK);
		const { name } = await savedSpec(page);
		const job = await sentToWorkshop(page);
		await page.goto(browser.at("/workshop"));
		const rows = page.getByRole("table").getByRole("row");
		const all = await rows.count();
		expect(all).toBeGreaterThan(2);
		await page.getByLabel("Search number, customer or wood").fill(name);
		await page.keyboard.press("Enter");
		await page.waitForURL(/[?&]q=/);
		await expect.poll(() => rows.count(), { timeout: 20_000 }).toBe(2);
		await rows.filter({ hasText: name }).waitFor();
		await page.goto(
			browser.at("/workshop?state=handed-over&q=nobody-has-this"),
		);
		await page.getByText("No job matches").waitFor();
		await fitsEverywhere(page);

		await page.goto(browser.at("/workshop?state=asked"));
		const numbers = await page
			.locator("[data-job]")
			.evaluateAll((links) =>
				links.map((link) => new URL((link as HTMLAnchorElement).href).pathname),
			);
		expect(numbers).toContain(job);
		const [first, second] = numbers;
		await page.locator("[data-job]").first().click();
		await page.waitForURL((url) => url.pathname === first);
		await page.getByText(/next job/).waitFor();
		await page.getByRole("link", { name: "Next job" }).waitFor();
		await page.keyboard.press("n");
		await page.waitForURL((url) => url.pathname === second);
		await page.getByRole("link", { name: "Previous job" }).waitFor();
		await page.keyboard.press("p");
		await page.waitForURL((url) => url.pathname === first);
	}, 90_000);
});

describe("the woods of the workshop", () => {
	test("without a weighed cue say so, and what the tables have", async () => {
		const page = await browser.open(DESK);
		await page.goto(browser.at("/workshop/woods"));
		await page.getByRole("heading", { name: "Woods", exact: true }).waitFor();
		const ash = page
			.getByRole("table", { name: /^Density before and after/ })
			.getByRole("row", { name: /^White ash/i });
		await page
			.getByText("No cue of this workshop has been weighed yet")
			.waitFor();
		expect(plain(await ash.textContent())).toMatch(/672 kg\/m³ ± 67/);
		await fitsEverywhere(page);
	});

	test("learn from a weighed cue; its result is left out and taken back in, by name", async () => {
		const page = await browser.open(DESK);
		await savedSpec(page);
		const job = await sentToWorkshop(page);
		await quoted(page);
		await agreesAt(await customerAddress(page));
		await page.reload();
		await stands(page, "agreed");
		await button(page, "Put it on the bench").click();
		await stands(page, "on the bench");

		await page.goto(browser.at(`${job}/sheet`));
		const sheet = plain(await page.getByRole("article").textContent());
		const natural = Number(/Natural weight, computed\s*(\d+)/.exec(sheet)?.[1]);
		await page.goto(browser.at(`${job}/checks`));
		await page
			.getByRole("radio", { name: "Before weighting", exact: true })
			.check();
		const expected = Number(
			/expected (\d+)/.exec(
				plain(
					await page
						.getByText(/^expected \d+/)
						.first()
						.textContent(),
				),
			)?.[1],
		);
		expect(natural).toBeGreaterThan(200);
		await field(page, "Weight").fill(`${natural + 6} g`);
		await field(page, "Balance point from the butt end").fill(`${expected} mm`);
		await button(page, "Save the check").click();
		await page
			.getByRole("heading", { name: "What it says of its woods" })
			.waitFor();
		await fitsEverywhere(page);

		await page.goto(browser.at("/workshop/woods"));
		const number = job.split("/").at(-1) ?? "";
		const leaveOut = page
			.getByRole("button", {
				name: new RegExp(`^Leave out what job ${number} says of `),
			})
			.first();
		await leaveOut.waitFor();
		const label = (await leaveOut.getAttribute("aria-label")) ?? "";
		const wood = label.replace(/^.* says of /, "");
		const band = page
			.getByRole("table", { name: /^Density before and after/ })
			.getByRole("row", { name: new RegExp(`^${wood}`, "i") });
		const learnt = plain(await band.textContent());
		expect(learnt).not.toContain("as the tables");
		await page
			.getByRole("img", { name: "Result less prediction, build by build" })
			.waitFor();
		await page.getByText(/nine in ten are expected/).waitFor();
		await page.getByText("Show as table").click();
		await page
			.getByRole("table", { name: "Result less prediction, build by build" })
			.getByRole("row")
			.nth(1)
			.waitFor();
		await fitsEverywhere(page);

		await leaveOut.click();
		const takeIn = page.getByRole("button", {
			name: `Take back in what job ${number} says of ${wood}`,
		});
		await takeIn.waitFor();
		await expect
			.poll(async () => plain(await band.textContent()), { timeout: 20_000 })
			.toMatch(/1 left out/);
		await page.getByText(/withdrawn by Bench One/).waitFor();
		await takeIn.click();
		await expect
			.poll(async () => plain(await band.textContent()), { timeout: 20_000 })
			.toBe(learnt);
	}, 180_000);
});
