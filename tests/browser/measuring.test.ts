import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { accessibilityProblems, browserTest } from "../support/browser";
import { Hands } from "../support/hands";
import { pdfPages } from "../support/pdf-paths";

const browser = browserTest();
const PHONE = { viewport: { width: 360, height: 740 } };
const TABLET = { viewport: { width: 820, height: 1180 } };
const DESK = { viewport: { width: 1440, height: 900 } };

let count = 0;
/** A fitting of its own at a step; gives its number. */
async function begin(page: Page, step = "player"): Promise<string> {
	const name = `Invented Measured ${++count}`;
	await page.goto(browser.at("/fittings/new"));
	await page.getByLabel("Player", { exact: true }).fill(name);
	await page.getByRole("option", { name: `New player: ${name}` }).click();
	await page.getByRole("button", { name: "Start", exact: true }).click();
	await page.waitForURL(/\/player$/);
	const number = /fittings\/(\d+)/.exec(page.url())?.[1] ?? "";
	if (step !== "player")
		await page.goto(browser.at(`/fittings/${number}/${step}`));
	await page.getByRole("main").getByRole("heading").first().waitFor();
	return number;
}
const field = (page: Page, label: string) =>
	page.getByLabel(label, { exact: true });
const saved = async (page: Page) => {
	await page.waitForTimeout(50);
	await page.getByText(/All answers saved/).waitFor();
};
const plain = (text: string | null) => (text ?? "").replaceAll("\u00a0", " ");

/** Handling the tape or the cone is assumed, generously: 25 s a measure. */
const TAPE_S = 25;

test("the coach's whole measuring path: taps, fields, and under ten minutes", async () => {
	const page = await browser.open(TABLET);
	await begin(page);
	const hands = new Hands();
	const next = (step: string) =>
		hands.tap(page.getByRole("link", { name: `Next: ${step}` }));

	await hands.choose(page, "Snooker");
	await hands.choose(page, "Club player");
	await hands.choose(page, "Right");
	await hands.type(field(page, "Age"), "34");
	await hands.choose(page, "Women’s");
	await hands.type(field(page, "Height"), "171");
	await hands.type(field(page, "Arm span"), "172");
	await hands.tap(page.getByText("Further measures at the wall"));
	await hands.type(field(page, "Shoulder to elbow"), "34");
	await hands.type(field(page, "Elbow to middle of the fist"), "32");
	await hands.type(field(page, "Shoulder breadth, bone to bone"), "37");
	await next("Hand");
	for (const [i, reading] of ["28", "28.5", "28"].entries()) {
		if (i > 0)
			await hands.tap(page.getByRole("button", { name: "Add a reading" }));
		await hands.type(field(page, `Grip circle, reading ${i + 1}`), reading);
	}
	await hands.choose(page, "Just touching");
	await hands.type(field(page, "Hand length"), "184");
	await next("Stance");
	await hands.type(field(page, "Bridge hand to grip hand"), "101");
	await hands.type(field(page, "Bridge length"), "25");
	await hands.type(field(page, "Grip hand to butt end"), "12");
	for (const seen of ["Side-on", "Chin on the cue", "Straight", "Standing"])
		await hands.choose(page, seen);
	await page.getByRole("radio", { name: "No", exact: true }).first().waitFor();
	await hands.choose(page, "No");
	await page.getByRole("img", { name: /The pose from the side/ }).waitFor();
	await hands.tap(
		page.getByRole("link", { name: "Straight to the recommendation" }),
	);
	await page.waitForURL(/recommendation$/);

	// Twelve readings with a tape or a gauge; age is asked.
	const measures = hands.fields - 1;
	const seconds = hands.seconds + measures * TAPE_S;
	console.info(
		`measuring path: ${hands.taps} taps, ${hands.fields} fields, ${hands.keys} keys; about ${(seconds / 60).toFixed(1)} min with ${TAPE_S} s a measure`,
	);
	expect(measures).toBe(12);
	expect(hands.taps).toBeLessThanOrEqual(20);
	expect(hands.fields).toBeLessThanOrEqual(14);
	expect(seconds).toBeLessThan(600);
});

describe("a measure", () => {
	test("that could not be taken is kept apart from one not asked, and a reading takes it back", async () => {
		const page = await browser.open(TABLET);
		await begin(page);
		const flag = page.getByRole("button", {
			name: "Could not measure Arm span",
		});
		await flag.click();
		expect(await flag.getAttribute("aria-pressed")).toBe("true");
		await page.getByRole("button", { name: "Note on Arm span" }).click();
		await field(page, "Note on: Arm span").fill("left shoulder does not lift");
		await saved(page);
		await page.reload();
		await page.waitForFunction(
			() =>
				document.querySelector<HTMLInputElement>("input[name=armSpanNote]")
					?.value === "left shoulder does not lift",
		);
		expect(await flag.getAttribute("aria-pressed")).toBe("true");

		const number = /fittings\/(\d+)/.exec(page.url())?.[1];
		await page.goto(browser.at(`/fittings/${number}/stance`));
		await page.getByText("What was measured, and what could not be").click();
		const row = (name: string) => page.getByRole("row", { name });
		await row("Arm span").getByText("could not be measured").waitFor();
		await row("Arm span").getByText("left shoulder does not lift").waitFor();
		await row("Hand length").getByText("not asked").waitFor();

		await page.goto(browser.at(`/fittings/${number}/player`));
		await field(page, "Arm span").fill("180 cm");
		await flag.waitFor({ state: "detached" });
		await saved(page);
		await field(page, "Arm span").fill("");
		await flag.waitFor();
		expect(await flag.getAttribute("aria-pressed")).toBe("false");
	});

	test("that the others make improbable is asked for once more, by its name", async () => {
		const page = await browser.open(TABLET);
		await begin(page);
		await field(page, "Height").fill("178 cm");
		await field(page, "Arm span").fill("148 cm");
		await page
			.getByText(/^Arm span: 148\u00a0cm is unusual where .* read it once more/)
			.waitFor();
		await field(page, "Arm span").fill("180 cm");
		await page
			.getByText(/is unusual where/)
			.first()
			.waitFor({ state: "detached" });
	});

	test("has its drawing, mirrored for a left-handed player", async () => {
		const page = await browser.open(TABLET);
		const number = await begin(page);
		await page.getByText("Further measures at the wall").click();
		for (const words of [
			"heels and back against a wall",
			"arms stretched out",
			"bony tip of the shoulder down",
			"pencil in the fist",
			"from behind",
		])
			await page.getByRole("img", { name: words }).waitFor();
		await page.getByRole("radio", { name: "Left", exact: true }).check();
		await saved(page);
		await page.goto(browser.at(`/fittings/${number}/stance`));
		const drawing = page.getByRole("img", {
			name: /measured from the tip back/,
		});
		await drawing.waitFor();
		await expect
			.poll(() => drawing.locator("g").first().getAttribute("transform"))
			.toMatch(/scale\(-1/);
	});
});

describe("the ring", () => {
	test("readings that disagree are warned of; the closure along the grip zone follows", async () => {
		const page = await browser.open(TABLET);
		await begin(page, "hand");
		await page.getByRole("img", { name: /tapered cone/ }).waitFor();
		await field(page, "Grip circle, reading 1").fill("27 mm");
		await page.getByText(/One reading of the grip circle/).waitFor();
		await page.getByRole("button", { name: "Add a reading" }).click();
		await field(page, "Grip circle, reading 2").fill("32 mm");
		await page
			.getByText(/readings of the grip circle lie 5\.0\u00a0mm apart/)
			.waitFor();
		const places = page.getByRole("img", {
			name: /^(Hand slid|Usual grip).*cue .* across/,
		});
		expect(await places.count()).toBe(3);
		const before = await places.first().getAttribute("aria-label");
		await field(page, "Grip circle, reading 2").fill("27 mm");
		await page.waitForFunction(
			(text) =>
				document
					.querySelector("figure svg[role=img]")
					?.getAttribute("aria-label") !== text,
			before,
		);
		await page
			.getByText("Published research on handles, for hard grips")
			.click();
		await page.getByText(/A cue is held lightly/).waitFor();
	});

	test("is printed at true size on either paper, and the print is checked", async () => {
		const page = await browser.open(TABLET);
		await begin(page, "hand");
		await page.getByRole("radio", { name: "Printed gauge" }).check();
		for (const [name, heightMm] of [
			["A4", 297],
			["Letter", 279.4],
		] as const) {
			const href = await page
				.getByRole("link", { name: `Ring gauge, ${name} (PDF)` })
				.getAttribute("href");
			const response = await page.request.get(browser.at(href ?? ""));
			expect(response.headers()["content-type"]).toBe("application/pdf");
			expect(pdfPages(await response.body())[0]?.heightMm).toBeCloseTo(
				heightMm,
				2,
			);
		}
		const ruler = field(page, "The printed 100 mm measure");
		await ruler.fill("97 mm");
		await page.getByText(/print again at 100 %/).waitFor();
		await ruler.fill("100 mm");
		await page
			.getByText(/at true size/)
			.first()
			.waitFor();
		await ruler.fill("100 oz");
		await ruler.blur();
		await page.getByText(/unit in .* is not one of a length/).waitFor();
	});

	test.each([
		["phone", PHONE],
		["desk", DESK],
	] as const)(
		"is read on the screen once a card has set the scale, %s",
		async (_, size) => {
			const page = await browser.open(size);
			await begin(page, "hand");
			await page.getByRole("radio", { name: "This screen" }).check();
			const card = page.getByTestId("card-outline");
			const slider = page.getByRole("slider", { name: "Size of the card" });
			await slider.focus();
			for (let i = 0; i < 6; i++) await page.keyboard.press("ArrowRight");
			await page
				.getByRole("button", { name: "Size of the card: larger" })
				.click();
			const box = await card.boundingBox();
			if (!box) throw new Error("no card");
			const [long, short] = [
				Math.max(box.width, box.height),
				Math.min(box.width, box.height),
			];
			// ISO/IEC 7810 ID-1: 85.60 × 53.98 mm; boxes are measured to a sixty-fourth of a pixel.
			expect(long / short).toBeCloseTo(85.6 / 53.98, 3);
			await page.getByRole("button", { name: "The card fits" }).click();

			const circle = page.getByTestId("true-circle");
			const acrossMm = async () =>
				((await circle.boundingBox())?.width ?? 0) * (85.6 / long);
			const shownMm = async () =>
				Number.parseFloat(
					/Circle of ([\d.]+)/.exec(
						(await circle.getAttribute("aria-label")) ?? "",
					)?.[1] ?? "",
				);
			const start = await shownMm();
			expect(await acrossMm()).toBeCloseTo(start, 1);
			await page
				.getByRole("slider", { name: "Diameter of the circle" })
				.focus();
			await page.keyboard.press("ArrowRight");
			await page.keyboard.press("ArrowRight");
			expect(await shownMm()).toBe(start + 1);
			expect(await acrossMm()).toBeCloseTo(start + 1, 1);
			await page.getByRole("button", { name: "Take this reading" }).click();
			expect(await field(page, "Grip circle, reading 1").inputValue()).toBe(
				`${start + 1} mm`,
			);
			await page
				.getByRole("button", { name: "Diameter of the circle: smaller" })
				.click();
			await page.getByRole("button", { name: "Take this reading" }).click();
			await page.getByText(/Mean of 2/).waitFor();
			await saved(page);

			// Kept on the device, on the page of its own too; another zoom asks for the card again.
			await page.goto(browser.at("/gauges"));
			await circle.waitFor();
			await page.evaluate(() => {
				const kept = JSON.parse(localStorage.getItem("screen-scale") ?? "{}");
				localStorage.setItem(
					"screen-scale",
					JSON.stringify({ ...kept, zoom: 3.5 }),
				);
			});
			await page.reload();
			await page.getByText("The scale has to be checked").waitFor();
			await page
				.getByRole("button", { name: "Check with the card again" })
				.click();
			await page.getByRole("button", { name: "The card fits" }).click();
			await page
				.getByText("The scale has to be checked")
				.waitFor({ state: "detached" });
			await page.evaluate(() =>
				localStorage.setItem("screen-scale", "{damaged"),
			);
			await page.reload();
			await card.waitFor();
		},
	);
});

describe("the pose", () => {
	test("follows the answers, writes its lengths, and stands on paper", async () => {
		const page = await browser.open(DESK);
		await begin(page, "stance");
		const side = page.getByRole("img", { name: /The pose from the side/ });
		await side.waitFor();
		await field(page, "Bridge hand to grip hand").fill("108 cm");
		await side.getByText("1080\u00a0mm").waitFor();
		await field(page, "Bridge length").fill("25 cm");
		await side.getByText("250\u00a0mm").waitFor();
		const before = await side.getAttribute("viewBox");
		await page.getByRole("radio", { name: "Seated" }).check();
		await page.getByText(/^Seated, right-handed/).waitFor();
		expect(await side.getAttribute("viewBox")).not.toBe(before);
		await page.getByRole("radio", { name: "In a standing frame" }).check();
		await page.getByText(/^In a standing frame, /).waitFor();
		await page.getByText("Holding this pose").waitFor();
		const words = plain(await page.getByRole("main").textContent());
		expect(words).toMatch(/stand up between shots/i);
		expect(words).not.toMatch(/\bsafe\b/i);
		await page.emulateMedia({ media: "print" });
		const size = await side.getByText("1080\u00a0mm").evaluate((text) => {
			const { height } = text.getBoundingClientRect();
			return { height, color: getComputedStyle(text).fill };
		});
		// 9 pt is 12 CSS pixels.
		expect(size.height).toBeGreaterThan(11);
		expect(size.color).toBe("rgb(0, 0, 0)");
	});
	test("that cannot be says what it reaches, in numbers", async () => {
		const page = await browser.open(TABLET);
		await begin(page, "stance");
		await field(page, "Bridge hand to grip hand").fill("169 cm");
		await page
			.getByText(/No pose of this body gives the measured 1690\u00a0mm/)
			.waitFor();
	});
});

test("bridge and grip read on the present cue give the span with one tap", async () => {
	const page = await browser.open(TABLET);
	const number = await begin(page, "present-cue");
	await field(page, "Length of the present cue").fill("57 in");
	await page.goto(browser.at(`/fittings/${number}/stance`));
	await field(page, "Bridge length").fill("280 mm");
	await field(page, "Grip hand to butt end").fill("40 mm");
	await page
		.getByRole("button", { name: "Yes, the cue in hand was 57 in" })
		.click();
	// 57 in are 1447.8 mm; less 280 and 40.
	await page
		.getByRole("img", { name: /The pose from the side/ })
		.getByText("1128\u00a0mm")
		.waitFor();
	expect(await page.getByText("Read on the present cue?").count()).toBe(0);
});

describe("growing", () => {
	test("a junior has percentile, ranges, the next day and the pieces; a grown player has none", async () => {
		const page = await browser.open(TABLET);
		await begin(page);
		await field(page, "Height").fill("138 cm");
		await page
			.getByText(/With age or date of birth there is an outlook/)
			.waitFor();
		await field(page, "Age").fill("10");
		await page
			.getByText(/percentile: taller than about/)
			.first()
			.waitFor();
		await page.getByText(/^Measure again about/).waitFor();
		expect(
			await page.getByRole("row", { name: /^In 2 years/ }).textContent(),
		).toMatch(/cm.*mm/);
		const year = new Date().getFullYear() - 12;
		await field(page, "Date of birth").fill(`${year}-01-02`);
		const use = page.getByRole("button", { name: /^Use 1[12]\.\d years$/ });
		await use.click();
		await use.waitFor({ state: "detached" });
		expect(await field(page, "Age").inputValue()).toMatch(/^1[12]\.\d$/);
		await saved(page);
		await field(page, "Date of birth").fill("");
		await field(page, "Age").fill("41");
		await page
			.getByRole("heading", { name: "Growing" })
			.waitFor({ state: "detached" });
	});
});

test("measuring alone asks for less, remembers it, and hides no answer", async () => {
	const page = await browser.open(PHONE);
	const number = await begin(page);
	await field(page, "Arm span").waitFor();
	await page.getByRole("radio", { name: "Measuring alone" }).check();
	await field(page, "Arm span").waitFor({ state: "detached" });
	await page.getByText(/Press a book flat on your head/).waitFor();
	await saved(page);
	await page.goto(browser.at(`/fittings/${number}/stance`));
	await expect
		.poll(() =>
			page.getByRole("radio", { name: "Measuring alone" }).isChecked(),
		)
		.toBe(true);
	expect(await field(page, "Bridge hand to grip hand").count()).toBe(0);
	// The span follows from the cue: 1448 − 250 − 120.
	await field(page, "Length of the cue in hand").fill("1448 mm");
	await field(page, "Bridge length").fill("250 mm");
	await field(page, "Grip hand to butt end").fill("120 mm");
	await page
		.getByRole("img", { name: /The pose from the side/ })
		.getByText("1078\u00a0mm")
		.waitFor();
	await page.getByRole("radio", { name: "With a coach" }).check();
	await field(page, "Bridge hand to grip hand").fill("1080 mm");
	await saved(page);
	await page.goto(browser.at(`/fittings/${number}/player`));
	await page.getByRole("radio", { name: "Measuring alone" }).check();
	await page.goto(browser.at(`/fittings/${number}/stance`));
	await field(page, "Bridge hand to grip hand").waitFor();
});

describe("accessibility", () => {
	test.each([
		["light", PHONE],
		["dark", TABLET],
		["light", DESK],
	] as const)(
		"no axe violation with everything open, %s",
		async (colorScheme, size) => {
			const page = await browser.open({ ...size, colorScheme });
			const number = await begin(page);
			await field(page, "Height").fill("138 cm");
			await field(page, "Age").fill("10");
			await saved(page);
			const check = async (where: string) => {
				await page.evaluate(() => {
					for (const details of document.querySelectorAll("details"))
						details.open = true;
				});
				await page.waitForLoadState("networkidle");
				expect(await accessibilityProblems(page), where).toEqual([]);
				const overflow = await page.evaluate(
					() =>
						document.documentElement.scrollWidth -
						document.documentElement.clientWidth,
				);
				expect(overflow, `${where} scrolls sideways`).toBeLessThanOrEqual(0);
			};
			await page.getByRole("heading", { name: "Growing" }).waitFor();
			await check("player");
			await page.goto(browser.at(`/fittings/${number}/hand`));
			for (const way of ["Cone or dowels", "Printed gauge", "This screen"]) {
				await page.getByRole("radio", { name: way }).check();
				await check(`hand, ${way}`);
			}
			await page.getByRole("button", { name: "The card fits" }).click();
			await check("hand, circle");
			await page.goto(browser.at(`/fittings/${number}/stance`));
			await page.getByRole("img", { name: /The pose from the side/ }).waitFor();
			await page
				.getByRole("button", { name: "Could not measure Bridge length" })
				.click();
			await check("stance");
			await page.goto(browser.at("/gauges"));
			await check("gauges");
		},
	);
});
