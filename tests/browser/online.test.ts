import type { Page, Request } from "playwright-core";
import { describe, expect, test } from "vitest";
import { accessibilityProblems, browserTest } from "../support/browser";
import { Hands } from "../support/hands";

const browser = browserTest();
const PHONE = { viewport: { width: 360, height: 740 } };
const GERMAN = { ...PHONE, locale: "de-DE" };

const plain = (text: string | null | undefined) =>
	(text ?? "").replaceAll("\u00a0", " ");
const field = (page: Page, label: string) =>
	page.getByLabel(label, { exact: true });
/** A question with its choices and what is said of it. */
const question = (page: Page, name: string) => page.locator(`#choice-${name}`);
const figure = async (page: Page, id: "weight" | "balance" | "price") =>
	plain(await page.locator(`[data-figure=${id}] strong:visible`).textContent());
const becomes = (page: Page, id: "weight" | "price", pattern: RegExp) =>
	expect.poll(() => figure(page, id), { timeout: 20_000 }).toMatch(pattern);

/** The page, once its script runs: before, a field could be typed into and forgotten. */
async function begin(page: Page, path = "/build"): Promise<void> {
	await page.goto(browser.at(path));
	await isLive(page);
}
const isLive = (page: Page) =>
	page.waitForFunction(() => {
		const input = document.querySelector("[name=massG]");
		return (
			input !== null &&
			Object.keys(input).some((key) => key.startsWith("__reactProps"))
		);
	});

const refused = (page: Page, name: string) =>
	question(page, name).locator("[data-kind=refused]");
const choose = (page: Page, name: string, option: RegExp) =>
	question(page, name).getByRole("radio", { name: option }).check();

const words = {
	name: "Your name",
	contact: "How to reach you",
	consent: /^I agree/,
	send: "Send it to the workshop",
};
async function fillIn(page: Page, name: string): Promise<void> {
	await field(page, words.name).fill(name);
	await field(page, words.contact).fill("invented@example.org");
	await page.getByLabel(words.consent).check();
}
const send = (page: Page) =>
	page.getByRole("button", { name: words.send }).click();
const jobNumber = async (page: Page) => {
	await page.waitForURL(/\/sent$/);
	const told = page.getByText(/(is job|ist Auftrag) \d+\./);
	await told.waitFor();
	return /\d+/.exec((await told.textContent()) ?? "")?.[0] ?? "";
};

test("on a phone a cue is chosen, mended, kept, shared and sent: taps, fields and minutes", async () => {
	const page = await browser.open(PHONE);
	const hands = new Hands();
	await page.goto(browser.at("/"));
	await hands.tap(page.getByRole("link", { name: "Build a cue online" }));
	await page.getByRole("heading", { name: "Build your cue" }).waitFor();
	await isLive(page);

	expect(await figure(page, "weight")).toMatch(/^\d{3} g$/);
	const band = page.locator("[data-figure=weight] small:visible");
	expect(plain(await band.textContent())).toMatch(/^\d{3}–\d{3} g$/);
	await hands.tap(page.getByRole("button", { name: "Set weight to 500 g" }));
	await becomes(page, "weight", /^500 g/);
	const price = await figure(page, "price");
	const wood = question(page, "buttWood").getByRole("radio", {
		name: /^Black walnut/,
	});
	await hands.tap(wood);
	await expect
		.poll(() => figure(page, "price"), { timeout: 20_000 })
		.not.toBe(price);

	await hands.tap(
		question(page, "case").getByRole("radio", { name: /^Two-piece case/ }),
	);
	await refused(page, "case")
		.getByText(/takes pieces up to 800.mm; the longest of this cue is/)
		.waitFor();
	await page.getByText("One choice does not fit: case.").waitFor();
	const mend = refused(page, "case").getByRole("button").first();
	await hands.tap(mend);
	await page.getByText("This cue can be made.").waitFor();
	expect(await refused(page, "case").count()).toBe(0);

	await hands.tap(
		page.getByRole("button", { name: "Keep it and get the address" }),
	);
	await field(page, "Address of your cue").waitFor({ timeout: 30_000 });
	const address = await field(page, "Address of your cue").inputValue();
	expect(address).toMatch(/\/build\/[\w-]{20,}$/);
	const standing = [await figure(page, "weight"), await figure(page, "price")];

	const contact = field(page, words.contact);
	await hands.type(field(page, words.name), "Invented Walker");
	await hands.type(contact, "invented.walker@example.org");
	await hands.tap(page.getByLabel(words.consent));
	await hands.tap(page.getByRole("button", { name: words.send }));
	const number = await jobNumber(page);
	expect(Number(number)).toBeGreaterThan(0);

	const other = await browser.open(PHONE);
	await other.goto(address);
	await other.getByRole("heading", { name: "A cue to look at" }).waitFor();
	const seen = plain(await other.locator("main").textContent());
	for (const text of standing) expect(seen).toContain(text);
	expect(seen).not.toMatch(/Walker|example\.org/);
	expect(await other.locator("meta[name=robots]").getAttribute("content")).toBe(
		"noindex, nofollow",
	);

	await page.goto(browser.at("/workshop"));
	await page.getByText("Invented Walker").first().waitFor();
	await page.goto(browser.at(`/workshop/${number}`));
	const contacts = page.locator("input[value='invented.walker@example.org']");
	await contacts.first().waitFor({ state: "attached" });
	await page
		.getByText(/black walnut/i)
		.first()
		.waitFor();

	console.info(
		`online walk: ${hands.taps} taps, ${hands.fields} fields, ${hands.keys} keys; about ${(hands.seconds / 60).toFixed(1)} min`,
	);
	expect(hands.taps).toBeLessThanOrEqual(9);
	expect(hands.fields).toBe(2);
	expect(hands.seconds).toBeLessThan(120);
}, 120_000);

test("in German too: chosen, mended, sent, and the number is told", async () => {
	const page = await browser.open(GERMAN);
	await begin(page);
	await page.getByRole("heading", { name: "Queue zusammenstellen" }).waitFor();
	await field(page, "Gewünschtes Gewicht").fill("700 g");
	const mend = refused(page, "massG").getByRole("button", {
		name: /^Gewicht auf 69\d.g setzen$/,
	});
	await mend.click();
	await page.getByText("Dieses Queue lässt sich bauen.").waitFor();
	await becomes(page, "weight", /^69\d g/);
	await page.locator("[name=contact-name]").fill("Erfundene Anfrage");
	await page.locator("[name=contact-contact]").fill("030 000000");
	await page.getByLabel(/^Ich bin einverstanden/).check();
	await page.getByRole("button", { name: "An die Werkstatt senden" }).click();
	expect(Number(await jobNumber(page))).toBeGreaterThan(0);
});

describe("what was chosen", () => {
	test("is taken back step by step, and survives a reload", async () => {
		const page = await browser.open(PHONE);
		await begin(page);
		const undo = page.getByRole("button", { name: "Undo" });
		expect(await undo.getAttribute("aria-disabled")).toBe("true");
		await field(page, "Wanted weight").fill("510 g");
		await choose(page, "tip", /^Layered leather/);
		await choose(page, "ferruleMetal", /^Stainless steel/);
		await undo.click();
		await page.getByText(/^Taken back: Ferrule/).waitFor();
		await undo.click();
		expect(
			await question(page, "tip")
				.getByRole("radio", { name: /^Pressed leather/ })
				.isChecked(),
		).toBe(true);
		expect(await field(page, "Wanted weight").inputValue()).toBe("510 g");
		await undo.click();
		expect(await field(page, "Wanted weight").inputValue()).toBe("");
		expect(await undo.getAttribute("aria-disabled")).toBe("true");

		await field(page, "Wanted weight").fill("530 g");
		await choose(page, "tip", /^Layered leather/);
		await becomes(page, "weight", /^530 g/);
		await page.reload();
		await becomes(page, "weight", /^530 g/);
		expect(await field(page, "Wanted weight").inputValue()).toBe("530 g");
		expect(
			await question(page, "tip")
				.getByRole("radio", { name: /^Layered leather/ })
				.isChecked(),
		).toBe(true);
	});

	test("and cannot be read or kept to says its name, the value and the bounds", async () => {
		const page = await browser.open(PHONE);
		await begin(page);
		const weight = field(page, "Wanted weight");
		for (const [text, said] of [
			["2 kg", /^Wanted weight: 2.*g is outside 300.g to 850.g\.$/],
			["heavy", /^Wanted weight: “heavy” cannot .* 300.g to 850.g\.$/],
		] as const) {
			await weight.fill(text);
			await weight.blur();
			await question(page, "massG").getByText(said).first().waitFor();
			await page
				.getByText("Cannot be read and counts as left open: Wanted weight.")
				.waitFor();
		}
		expect(await weight.getAttribute("aria-invalid")).toBe("true");
		await weight.fill("520 g");
		await page.getByText("This cue can be made.").waitFor();
		await page.getByText("Cannot be read").waitFor({ state: "detached" });
	});

	test("and crosses a border defers to the authority, and a free wood is one tap away", async () => {
		const page = await browser.open(PHONE);
		await begin(page);
		await choose(page, "isGoingAbroad", /^Yes/);
		const guard = question(page, "buttWood").locator("[data-kind]");
		await guard
			.getByText(/CITES Appendix II .*only the national CITES authority/)
			.waitFor();
		await guard.getByRole("button").first().click();
		await question(page, "buttWood")
			.getByText(/CITES/)
			.waitFor({ state: "detached" });
	});

	test("measured at home is optional, and stays on the device", async () => {
		const page = await browser.open(PHONE);
		const posted: string[] = [];
		page.on("request", (request) => posted.push(request.postData() ?? ""));
		await begin(page);
		await page.getByText("Measures at home").click();
		await field(page, "Your height").fill("191 cm");
		const take = page.getByRole("button", { name: /^Take \d{4}.mm$/ });
		await take.click();
		await page.getByText("Taken", { exact: true }).waitFor();
		expect(await field(page, "Length").inputValue()).toMatch(
			/^\d{4}(\.\d)? mm$/,
		);
		await page.getByRole("button", { name: /^Keep it and get/ }).click();
		await field(page, "Address of your cue").waitFor({ timeout: 30_000 });
		expect(posted.join()).not.toMatch(/191|1910/);
	});
});

describe("a kept cue", () => {
	test("keeps every change, and its address can be ended", async () => {
		const page = await browser.open(PHONE);
		await begin(page);
		await field(page, "Wanted weight").fill("505 g");
		await page.getByRole("button", { name: /^Keep it and get/ }).click();
		await field(page, "Address of your cue").waitFor({ timeout: 30_000 });
		const address = await field(page, "Address of your cue").inputValue();
		const changed = page.waitForResponse(
			(response) => response.request().postData()?.includes("515 g") ?? false,
		);
		await field(page, "Wanted weight").fill("515 g");
		await field(page, "Wanted weight").blur();
		expect((await changed).status()).toBe(200);

		const other = await browser.open(PHONE);
		await other.goto(address);
		await other.getByText(/515.g/).first().waitFor();
		await other.getByRole("button", { name: "Make it mine" }).click();
		await other.waitForURL(/\/build$/);
		await becomes(other, "weight", /^515 g/);

		await page
			.getByRole("button", { name: "End this address and get another" })
			.click();
		await page.getByRole("button", { name: "End it", exact: true }).click();
		await page.getByText(/opens nothing any more/).waitFor();
		expect(await field(page, "Address of your cue").inputValue()).not.toBe(
			address,
		);
		await other.goto(address);
		await other
			.getByRole("heading", { name: "This address was ended" })
			.waitFor();
		await other.goto(browser.at("/build/nothing-was-ever-kept-under-this"));
		await other
			.getByRole("heading", { name: "There is no cue under this address" })
			.waitFor();
	});

	test("changed in another window meanwhile is not written over", async () => {
		const page = await browser.open(PHONE);
		await begin(page);
		await field(page, "Wanted weight").fill("505 g");
		await page.getByRole("button", { name: /^Keep it and get/ }).click();
		await field(page, "Address of your cue").waitFor({ timeout: 30_000 });
		const address = await field(page, "Address of your cue").inputValue();
		const second = await page.context().newPage();
		await begin(second, new URL(address).pathname);
		const first = page.waitForResponse(
			(response) => response.request().postData()?.includes("525 g") ?? false,
		);
		await field(page, "Wanted weight").fill("525 g");
		await first;
		await field(second, "Wanted weight").fill("535 g");
		await second
			.getByRole("button", { name: "What was kept there" })
			.click({ timeout: 20_000 });
		await becomes(second, "weight", /^525 g/);
	});
});

test("everything can be done with the keyboard alone", async () => {
	const page = await browser.open({ viewport: { width: 820, height: 1180 } });
	await begin(page);
	await page.locator("body").press("Tab");
	const focusOn = async (selector: string) => {
		for (let presses = 0; presses < 120; presses++) {
			const isThere = await page.evaluate(
				(wanted) => document.activeElement?.matches(wanted) ?? false,
				selector,
			);
			if (isThere) return;
			await page.keyboard.press("Tab");
		}
		throw new Error(`the keyboard does not reach ${selector}`);
	};
	await focusOn("input[type=range]");
	const turned = () =>
		page
			.getByRole("slider", { name: "Turn the cue" })
			.getAttribute("aria-valuetext");
	const before = await turned();
	await page.keyboard.press("ArrowRight");
	await expect.poll(turned).not.toBe(before);
	await focusOn("[name=buttWood]");
	const price = await figure(page, "price");
	await page.keyboard.press("ArrowDown");
	await expect
		.poll(() => figure(page, "price"), { timeout: 20_000 })
		.not.toBe(price);
	await focusOn("[name=massG]");
	await page.keyboard.type("800 g");
	await refused(page, "massG").getByRole("button").first().waitFor();
	await focusOn("[data-kind=refused] button");
	await page.keyboard.press("Enter");
	await page.getByText("This cue can be made.").waitFor();
	expect(
		await page.evaluate(() => document.activeElement?.id),
		"the focus goes on from the question",
	).toBe("choice-massG");
	await focusOn("[name=contact-name]");
	await page.keyboard.type("Invented Keyboard");
	await page.keyboard.press("Tab");
	await page.keyboard.type("invented@example.org");
	await focusOn("button[type=submit]");
	await page.keyboard.press("Enter");
	await page.getByText(/^Without this the workshop cannot keep/).waitFor();
	expect(
		await page.evaluate(() =>
			(document.activeElement as HTMLInputElement | null)?.matches(
				"[name=contact-isConsented]",
			),
		),
	).toBe(true);
	await page.keyboard.press("Space");
	await focusOn("button[type=submit]");
	await page.keyboard.press("Enter");
	expect(Number(await jobNumber(page))).toBeGreaterThan(0);
});

describe.each([
	["en-GB", /^Set weight/, "Address of your cue", /^Keep it and get/],
	["de-DE", /^Gewicht auf/, "Adresse des Queues", /Adresse/],
] as const)("in %s", (locale, mend, address, keep) => {
	test.each([360, 820, 1440])(
		"no accessibility rule is broken and nothing scrolls sideways, %i px, light and dark",
		async (width) => {
			const page = await browser.open({
				viewport: { width, height: 900 },
				locale,
			});
			await begin(page);
			await page.locator("[name=massG]").fill("700 g");
			await page.locator("[name=massG]").blur();
			await refused(page, "massG")
				.getByRole("button", { name: mend })
				.waitFor();
			for (const details of await page.locator("main details").all())
				await details.evaluate((node: HTMLDetailsElement) => {
					node.open = true;
				});
			const look = async (where: string) => {
				for (const colorScheme of ["light", "dark"] as const) {
					await page.emulateMedia({ colorScheme });
					await page.evaluate(() =>
						Promise.all(document.getAnimations().map((one) => one.finished)),
					);
					expect(
						await accessibilityProblems(page),
						`${where}, ${colorScheme}`,
					).toEqual([]);
				}
				expect(
					await page.evaluate(
						() =>
							document.documentElement.scrollWidth -
							document.documentElement.clientWidth,
					),
					`${where}: sideways`,
				).toBeLessThanOrEqual(0);
			};
			await look("a refused choice");
			await refused(page, "massG").getByRole("button").first().click();
			await refused(page, "massG").waitFor({ state: "detached" });
			await page.getByRole("button", { name: keep }).click();
			await field(page, address).waitFor({ timeout: 30_000 });
			await look("a kept cue");
			const kept = await field(page, address).inputValue();
			await page.context().clearCookies({ name: "builder" });
			await page.goto(kept);
			await page.locator("main dl").first().waitFor();
			await look("a shared cue");
		},
	);
});

/** What the page sends when a cue is sent. */
const isSending = (request: Request) =>
	request.method() === "POST" &&
	(request.postData()?.includes("isConsented") ?? false);

test("a machine that sends again and again is held off, and a person is told until when", async () => {
	const page = await browser.open(PHONE);
	await begin(page);
	await field(page, "Wanted weight").fill("520 g");
	await fillIn(page, "Invented Machine");
	const asked = page.waitForRequest(isSending);
	await send(page);
	const sent = await asked;
	const number = await jobNumber(page);
	const body = sent.postData() ?? "";
	const again = async (data: string) => {
		const response = await page.request.post(sent.url(), {
			headers: {
				...sent.headers(),
				// What the page cannot know: that it comes from somewhere else.
				"x-forwarded-for": "203.0.113.77",
			},
			data,
		});
		return response.text();
	};
	expect(await again(body), "the same once more is the same job").toContain(
		`"jobNumber":${number}`,
	);
	const other = (text: string, key: string) =>
		text.replace(/("requestKey":")[^"]+/, `$1${key}`);
	expect(
		await again(other(body, crypto.randomUUID())),
		"work counts once",
	).toContain('"no-work"');
	expect(
		await again(body.replace(/("website":")/, "$1spam")),
		"the trap",
	).toContain('"trap-full"');
	expect(
		await again(body.replace(/("token":")[^"]+/, "$1forged.token")),
		"forged work",
	).toContain('"no-work"');
	let answer = "";
	for (let turn = 0; turn < 20 && !answer.includes("too-many"); turn++)
		answer = await again(body);
	expect(answer).toContain('"too-many"');

	const person = await browser.open(PHONE);
	await begin(person);
	await field(person, "Wanted weight").fill("515 g");
	await fillIn(person, "Invented Person");
	await send(person);
	await person
		.getByText(/^Too many cues were sent .* Try again at .*\d/)
		.waitFor({ timeout: 30_000 });
	expect(await field(person, words.name).inputValue()).toBe("Invented Person");
	expect(await field(person, "Wanted weight").inputValue()).toBe("515 g");

	await person.goto(browser.at("/workshop"));
	await person.getByText("Invented Machine").first().waitFor();
	expect(await person.getByText("Invented Person").count()).toBe(0);
}, 120_000);
