import type { Page } from "playwright-core";
import { beforeEach, describe, expect, test } from "vitest";
import { browserTest } from "../support/browser";

const browser = browserTest();
const TABLET = { viewport: { width: 820, height: 1180 } };

/** Links in sight and the search's script are fetched ahead, also where nothing answers any more. */
beforeEach(() => {
	browser.allowError("ERR_INTERNET_DISCONNECTED");
	browser.allowError("Failed to execute 'importScripts'");
});

/** What another part of the machine holds up still comes. */
const PATIENCE = { timeout: 20_000 };

let count = 0;
/** Starts a fitting of a player nobody else in this run has; gives its address without the step. */
async function begin(page: Page): Promise<string> {
	const name = `Invented Offline ${++count}`;
	await page.goto(browser.at("/fittings/new"));
	await page.getByLabel("Player", { exact: true }).fill(name);
	await page.getByRole("option", { name: `New player: ${name}` }).click();
	await page.getByRole("button", { name: "Start", exact: true }).click();
	await page.waitForURL(/\/fittings\/\d+\/player$/);
	return page.url().replace(/\/player$/, "");
}
const field = (page: Page, label: string) =>
	page.getByLabel(label, { exact: true });
const saved = (page: Page) => page.getByText(/All answers saved/).waitFor();
const shows = (page: Page, label: string, value: string) =>
	expect.poll(() => field(page, label).inputValue(), PATIENCE).toBe(value);

/** The page comes into sight: it asks what other devices did, as it does by itself every few seconds. */
const look = (page: Page) =>
	page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));

/** What this device still has to send. */
const waiting = (page: Page) =>
	page.evaluate(
		() =>
			new Promise<number>((done, fail) => {
				const asked = indexedDB.open("coaching");
				asked.onerror = () => fail(asked.error);
				asked.onsuccess = () => {
					const counted = asked.result
						.transaction("changes")
						.objectStore("changes")
						.count();
					counted.onsuccess = () => {
						asked.result.close();
						done(counted.result);
					};
				};
			}),
	);

describe("answers without a network", () => {
	test("are kept, lead on through every step, and go to the server once", async () => {
		const page = await browser.open(TABLET);
		const posts: unknown[] = [];
		page.on("request", (request) => {
			if (request.url().endsWith("/device/sync"))
				posts.push(request.postDataJSON());
		});
		const at = await begin(page);
		await saved(page);
		await page.context().setOffline(true);
		await field(page, "Height").fill("183 cm");
		await page.getByText(/Kept on this device/).waitFor();
		await page.getByText(/Offline, as of \d\d:\d\d/).waitFor();
		const sentBefore = posts.length;
		await page.getByRole("link", { name: "Next: Hand" }).click();
		await page.waitForURL(/hand$/);
		await page.getByRole("heading", { name: "Read the grip circle" }).waitFor();
		await field(page, "Hand length").fill("190 mm");
		await page.goBack();
		await shows(page, "Height", "183 cm");
		expect(posts.length).toBe(sentBefore);
		await page.context().setOffline(false);
		await saved(page);
		await expect.poll(() => waiting(page), PATIENCE).toBe(0);

		const other = await browser.open(TABLET);
		await other.goto(`${at}/player`);
		await shows(other, "Height", "183 cm");
		await other.goto(`${at}/hand`);
		await shows(other, "Hand length", "190 mm");
	});

	test("typed and the page closed at once are there at the next visit, and stored once", async () => {
		const page = await browser.open(TABLET);
		const at = await begin(page);
		await saved(page);
		await page.context().setOffline(true);
		await field(page, "Height").fill("177 cm");
		await page.close({ runBeforeUnload: false });
		const context = page.context();
		await context.setOffline(false);
		const again = await context.newPage();
		await again.goto(`${at}/player`);
		await shows(again, "Height", "177 cm");
		await saved(again);
		await expect.poll(() => waiting(again), PATIENCE).toBe(0);
	});

	/** The page without its script until the second is called: what is done meanwhile is done early. */
	const withoutScript = async (page: Page, go: () => Promise<unknown>) => {
		let release = () => {};
		const held = new Promise<void>((done) => {
			release = done;
		});
		await page.route("**/_next/static/chunks/**/*.js", async (route) => {
			await held;
			await route.continue();
		});
		await go();
		return () => release();
	};

	test("given before the page's own script ran are taken in", async () => {
		const page = await browser.open(TABLET);
		const at = await begin(page);
		await saved(page);
		await page.goto("about:blank");
		const start = await withoutScript(page, () =>
			page.goto(`${at}/player`, { waitUntil: "commit" }),
		);
		await field(page, "Height").fill("174 cm");
		await page.getByRole("radio", { name: "Left", exact: true }).check();
		start();
		await page.getByText(/5\sft\s8/).waitFor();
		await shows(page, "Height", "174 cm");
		await saved(page);
		const other = await browser.open(TABLET);
		await other.goto(`${at}/player`);
		await shows(other, "Height", "174 cm");
		expect(
			await other.getByRole("radio", { name: "Left", exact: true }).isChecked(),
		).toBe(true);

		await other.goto(`${at}/hand`);
		await saved(other);
		const restart = await withoutScript(other, () =>
			other.reload({ waitUntil: "commit" }),
		);
		const reading = other.getByLabel("Grip circle, reading 1", { exact: true });
		await reading.fill("36 mm");
		restart();
		await other.getByText(/One reading:/).waitFor();
		await saved(other);
		await page.goto(`${at}/hand`);
		await expect
			.poll(
				() =>
					page
						.getByLabel("Grip circle, reading 1", { exact: true })
						.inputValue(),
				PATIENCE,
			)
			.toBe("36 mm");
	});

	test("a reload shows as they are now, not as the browser remembers the fields", async () => {
		const page = await browser.open(TABLET);
		const at = await begin(page);
		await saved(page);
		const hand = (on: Page, name: string) =>
			on.getByRole("radio", { name, exact: true });
		await hand(page, "Left").check();
		await saved(page);
		const other = await browser.open(TABLET);
		await other.goto(`${at}/player`);
		await expect
			.poll(() => hand(other, "Left").isChecked(), PATIENCE)
			.toBe(true);
		await saved(other);
		await page.goto("about:blank");
		await hand(other, "Right").check();
		await saved(other);
		await page.goBack();
		await saved(page);
		await expect
			.poll(() => hand(page, "Right").isChecked(), PATIENCE)
			.toBe(true);
		await page.reload();
		await saved(page);
		expect(await hand(page, "Right").isChecked()).toBe(true);
		await page.goto(`${at}/changes`);
		await page
			.getByRole("row", { name: /Playing hand/ })
			.first()
			.waitFor();
		expect(await page.getByRole("row", { name: /Playing hand/ }).count()).toBe(
			2,
		);
	});

	test("whose acknowledgement is lost are sent again and stored once", async () => {
		browser.expectError("Failed to load resource");
		const page = await browser.open(TABLET);
		const at = await begin(page);
		await saved(page);
		let lost = 0;
		await page.route("**/device/sync", async (route) => {
			const { changes } = route.request().postDataJSON();
			if (changes.length === 0 || lost > 0) return route.continue();
			lost++;
			await route.fetch();
			await route.abort("connectionreset");
		});
		await field(page, "Height").fill("176 cm");
		await page.getByText(/Kept on this device/).waitFor();
		await saved(page);
		expect(lost).toBe(1);
		await page.goto(`${at}/changes`);
		await page.getByRole("cell", { name: "176 cm" }).waitFor();
		expect(await page.getByRole("cell", { name: "176 cm" }).count()).toBe(1);
	});

	test("that lie damaged on the device are set aside and said, and the others go on", async () => {
		const page = await browser.open(TABLET);
		const at = await begin(page);
		await saved(page);
		await page.context().setOffline(true);
		await field(page, "Height").fill("175 cm");
		await field(page, "Arm span").fill("177 cm");
		await page.getByText(/Kept on this device/).waitFor();
		await page.evaluate(
			() =>
				new Promise<void>((done) => {
					const asked = indexedDB.open("coaching");
					asked.onsuccess = () => {
						const tx = asked.result.transaction("changes", "readwrite");
						const all = tx.objectStore("changes").getAll();
						all.onsuccess = () => {
							const one = all.result.find(({ field }) => field === "armSpan");
							tx.objectStore("changes").put({ ...one, after: { odd: 177 } });
						};
						tx.oncomplete = () => {
							asked.result.close();
							done();
						};
					};
				}),
		);
		await page.context().setOffline(false);
		await page.goto(`${at}/player`);
		await page
			.getByText("Something on this device could not be read")
			.waitFor();
		await shows(page, "Height", "175 cm");
		await saved(page);
	});
});

describe("the app without a network", () => {
	const INSTALLED = { ...TABLET, serviceWorkers: "allow" } as const;
	const installed = async (): Promise<Page> => {
		const page = await browser.open(INSTALLED);
		await page.goto(browser.at("/coaching"));
		await page
			.getByText("Ready: this app opens on this device without a network.")
			.waitFor();
		return page;
	};

	test("opens where it was left, with every answer, says how old it is, and leads to the recommendation", async () => {
		const page = await installed();
		const at = await begin(page);
		await saved(page);
		await field(page, "Height").fill("171 cm");
		await saved(page);
		await page.context().setOffline(true);
		await page.goto(`${at}/hand`);
		await page.getByText(/Offline, as of \d\d:\d\d/).waitFor();
		await field(page, "Hand length").fill("181 mm");
		await page.getByText(/Kept on this device/).waitFor();
		await page.reload();
		await shows(page, "Hand length", "181 mm");
		await page
			.getByRole("navigation", { name: "Steps of the fitting" })
			.getByRole("link", { name: /Player/ })
			.click();
		await shows(page, "Height", "171 cm");
		await page
			.getByRole("link", { name: "Straight to the recommendation" })
			.click();
		await page.getByRole("heading", { name: "Cues worth making" }).waitFor();

		await page.context().setOffline(false);
		await saved(page);
		const other = await browser.open(TABLET);
		await other.goto(`${at}/hand`);
		await shows(other, "Hand length", "181 mm");
	});

	test("begins a fitting of a new player, which gets its number once, when the network is back", async () => {
		const page = await installed();
		await page.context().setOffline(true);
		await page.goto(browser.at("/"));
		await page.waitForURL(/\/coaching\?from=/);
		const name = `Invented Nowhere ${++count}`;
		await page.getByRole("button", { name: /^New player/ }).click();
		await page.getByLabel("Name of the new player").fill(name);
		await page.getByRole("button", { name: "Start the session" }).dblclick();
		await page.waitForURL(/fitting=.*step=player/);
		await page.getByText(/gets its number from the server/).waitFor();
		await field(page, "Height").fill("164 cm");
		await page.getByText(/Kept on this device/).waitFor();
		await page.reload();
		await shows(page, "Height", "164 cm");
		await page.context().setOffline(false);
		await saved(page);
		await page.getByText(/Fitting \d+\./).waitFor();

		const other = await browser.open(TABLET);
		await other.goto(
			browser.at(`/fittings?player=${encodeURIComponent(name)}`),
		);
		expect(await other.getByRole("row").count()).toBe(2);
		await other.getByRole("link", { name, exact: true }).click();
		await shows(other, "Height", "164 cm");
	});

	test("asks for a spec, which is saved with the figures that were seen", async () => {
		const page = await installed();
		const at = await begin(page);
		await field(page, "Height").fill("176 cm");
		await saved(page);
		await page.context().setOffline(true);
		await page.goto(`${at}/recommendation`);
		const save = page.getByRole("button", { name: "Save the spec" });
		await expect.poll(() => save.isDisabled(), { timeout: 30_000 }).toBe(false);
		const length = await page
			.getByRole("article")
			.filter({
				has: page.getByRole("heading", { name: "Length", exact: true }),
			})
			.textContent();
		await save.click();
		await page.getByText("The spec waits for the server").waitFor();
		await page.reload();
		await page.getByText("The spec waits for the server").waitFor();
		await page.context().setOffline(false);
		await page.getByText("The spec that waited is saved").waitFor();
		await page
			.getByRole("link", { name: /^Open spec \d+, revision 1$/ })
			.click();
		await page.waitForURL(/\/specs\/\d+\/1$/);
		const seen = /(\d{4}\u00a0mm)/.exec(length ?? "")?.[1] ?? "none";
		await page.getByRole("main").getByText(seen).first().waitFor();
	});

	test("keeps the build and the device's own page, and no page about a person", async () => {
		const page = await installed();
		const at = await begin(page);
		await saved(page);
		await page.goto(browser.at("/players"));
		await page.goto(`${at}/recommendation`);
		const kept = await page.evaluate(async () => {
			const paths: string[] = [];
			for (const name of await caches.keys())
				for (const { url } of await (await caches.open(name)).keys())
					paths.push(new URL(url).pathname);
			return paths;
		});
		expect(kept.length).toBeGreaterThan(20);
		// In whatever order the browser lists them.
		expect(
			kept
				.filter(
					(path) =>
						!path.startsWith("/_next/static/") && !path.startsWith("/icons/"),
				)
				.sort(),
		).toEqual(["/coaching", "/manifest.webmanifest"]);
		await page.context().setOffline(true);
		await page.goto(browser.at("/players"));
		await page.getByText("That page needs the server").waitFor();
		expect(
			await page
				.getByRole("link", { name: "Try that page again" })
				.getAttribute("href"),
		).toBe("/players");
	});
});

describe("two taps to a session", () => {
	const taps = async (page: Page, act: () => Promise<void>) => {
		await page.evaluate(() => {
			sessionStorage.setItem("taps", "0");
			document.addEventListener(
				"click",
				(event) => {
					// Enter in a form clicks its button: no finger did.
					if (event.detail === 0) return;
					const count = Number(sessionStorage.getItem("taps"));
					sessionStorage.setItem("taps", String(count + 1));
				},
				true,
			);
		});
		await act();
		await page.waitForURL(/\/fittings\/\d+\/player$/);
		return Number(await page.evaluate(() => sessionStorage.getItem("taps")));
	};

	test("from a known player, with the answers of last time", async () => {
		const page = await browser.open(TABLET);
		await begin(page);
		const name = `Invented Offline ${count}`;
		await field(page, "Height").fill("169 cm");
		await saved(page);
		await page.goto(browser.at("/"));
		const used = await taps(page, async () => {
			await page.getByRole("button", { name }).click();
			await page
				.getByRole("button", { name: /^New fitting with the answers of/ })
				.click();
		});
		expect(used).toBe(2);
		await shows(page, "Height", "169 cm");
	});

	test("from a new player: the tap, the name, and Enter or a second tap", async () => {
		const page = await browser.open(TABLET);
		await page.goto(browser.at("/"));
		const used = await taps(page, async () => {
			await page.getByRole("button", { name: /^New player/ }).click();
			// The name's field has the focus already.
			await page.keyboard.type(`Invented Typed ${++count}`);
			await page.getByRole("button", { name: "Start the session" }).click();
		});
		expect(used).toBe(2);
	});
});

describe("two devices on one fitting", () => {
	test("fields merge, and a clash is shown on both with whose and when, settled by a tap, the other value kept", async () => {
		const [first, second] = [
			await browser.open(TABLET),
			await browser.open(TABLET),
		];
		const at = await begin(first);
		await saved(first);
		await second.goto(`${at}/player`);
		await saved(second);
		for (const page of [first, second]) await page.context().setOffline(true);
		await field(first, "Height").fill("180 cm");
		await field(first, "Arm span").fill("182 cm");
		await field(second, "Age").fill("41");
		await field(second, "Arm span").fill("185 cm");
		for (const page of [first, second])
			await page.getByText(/Kept on this device/).waitFor();
		await first.context().setOffline(false);
		await saved(first);
		await second.context().setOffline(false);
		await saved(second);
		await shows(second, "Height", "180 cm");

		const clash = (page: Page) =>
			page.getByRole("group", { name: "Arm span" }).getByRole("button");
		await clash(second).first().waitFor();
		expect(await clash(second).allTextContents()).toEqual([
			expect.stringMatching(/185 cm.*\d\d:\d\d.*stands now/),
			expect.stringMatching(/182 cm.*\d\d:\d\d/),
		]);
		await look(first);
		await clash(first).first().waitFor();
		await clash(first).filter({ hasText: "182 cm" }).click();
		await clash(first).first().waitFor({ state: "detached" });
		await saved(first);
		await look(second);
		await clash(second).first().waitFor({ state: "detached" });
		await shows(second, "Arm span", "182 cm");
		await shows(second, "Age", "41");

		await first.goto(`${at}/changes`);
		await first
			.getByRole("row", { name: /Arm span/ })
			.filter({ hasText: "185 cm" })
			.getByRole("button", { name: /Use again/ })
			.click();
		await saved(first);
		await first.goto(`${at}/player`);
		await shows(first, "Arm span", "185 cm");
	});
});

describe("two tabs of one device", () => {
	test("show the same answers and never dispute with themselves", async () => {
		const one = await browser.open(TABLET);
		const at = await begin(one);
		await saved(one);
		const two = await one.context().newPage();
		await two.goto(`${at}/player`);
		await saved(two);
		await one.context().setOffline(true);
		await field(one, "Height").fill("180 cm");
		await shows(two, "Height", "180 cm");
		await field(two, "Height").fill("181 cm");
		await shows(one, "Height", "181 cm");
		await one.context().setOffline(false);
		for (const page of [one, two]) {
			await saved(page);
			await shows(page, "Height", "181 cm");
			expect(
				await page.getByText("Two devices gave different answers").count(),
			).toBe(0);
		}
	});
});
