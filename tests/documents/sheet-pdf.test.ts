import jsQR from "jsqr";
import { beforeAll, describe, expect, test, vi } from "vitest";
import type { SpecContent } from "@/lib/advice/spec";
import { jobCode } from "@/lib/documents/job-code";
import { PAPERS, type Paper, sheetPdf } from "@/lib/documents/sheet-pdf";
import { sheetHead } from "@/lib/present/sheet-head";
import { type SheetView, sheetView } from "@/lib/present/sheet-view";
import type { Reader } from "@/lib/words/reader";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import { buildFromSpec, withBillets } from "@/lib/workshop/job-content";
import { NO_EXTRAS } from "@/lib/workshop/job-extras";
import { METRIC, TRADE } from "@/tests/support/readers";
import { lettersOf, printPdf, readPdf } from "./support/pdf";
import { boundlessSpec, richSpec, specWith, usualSpec } from "./support/specs";

// Several PDFs are made in one test, each in a second or two where two processors are shared.
vi.setConfig({ testTimeout: 30_000 });

const ADDRESS = "https://cues.example.org/specs/12/1";
const savedAt = new Date(Date.UTC(2026, 4, 3));

/** As every sheet is printed: with the billets to pick. */
const buildOf = (content: SpecContent) => withBillets(buildFromSpec(content));
const AT_HAND = { extras: NO_EXTRAS, stock: DEFAULT_SETTINGS.stock };

const pdfOf = (p: {
	content: SpecContent;
	reader?: Reader;
	paper?: Paper;
	playerName?: string;
	latestRevision?: number;
}) => {
	const { content, reader = METRIC, paper = "a4" } = p;
	return sheetPdf({
		head: sheetHead(
			{
				number: 12,
				revision: 1,
				latestRevision: p.latestRevision ?? 1,
				fittingNumber: 7,
				playerName: p.playerName ?? "Invented Player",
				savedAt,
				modelVersion: content.modelVersion,
			},
			reader,
		),
		isInvented: true,
		build: buildOf(content),
		atHand: AT_HAND,
		reader,
		code: jobCode(ADDRESS),
		paper,
	});
};

/** Every text of the sheet, but for the picture, which is another on paper, and the second unit from the tip. */
function textsOf(view: SheetView): string[] {
	const { stations, ...rest } = view;
	return leavesOf({
		...rest,
		stations: stations.map(({ fromTip, ...station }) => ({
			...station,
			fromTip: fromTip.main,
		})),
	});
}

function leavesOf(value: unknown): string[] {
	if (typeof value === "string") return [value];
	return typeof value === "object" && value !== null
		? Object.values(value).flatMap(leavesOf)
		: [];
}

/** Texts of the sheet that a PDF does not hold. */
function missing(
	letters: string,
	content: SpecContent,
	reader: Reader = METRIC,
): string[] {
	const texts = textsOf(sheetView(buildOf(content), reader, AT_HAND));
	expect(texts.length).toBeGreaterThan(150);
	return texts.filter((text) => !letters.includes(lettersOf(text)));
}

const allLetters = async (pdf: Uint8Array) =>
	(await readPdf(pdf)).map(({ letters }) => letters).join("");

describe("the printed sheet, as an independent PDF reader sees it", () => {
	test.each([
		[METRIC, "a4"],
		[TRADE, "a4"],
		[METRIC, "letter"],
		[TRADE, "letter"],
	] as const)(
		"%s on %s: three pages of that paper with every text of the sheet",
		async (reader, paper) => {
			const content = usualSpec();
			const pdf = await pdfOf({ content, reader, paper });
			const pages = await readPdf(pdf);
			expect(pages).toHaveLength(3);
			// ISO 216 and ANSI/ASME Y14.1: 210 × 297 mm, 8½ × 11 in.
			const [widthPt, heightPt] =
				paper === "a4"
					? [(210 / 25.4) * 72, (297 / 25.4) * 72]
					: [8.5 * 72, 11 * 72];
			for (const page of pages) {
				expect(page.widthPt).toBeCloseTo(widthPt, 1);
				expect(page.heightPt).toBeCloseTo(heightPt, 1);
			}
			const letters = await allLetters(pdf);
			expect(missing(letters, content, reader)).toEqual([]);
			for (const text of [
				"Job sheet 12/1 (invented data)",
				"For Invented Player, fitting 7",
				"Saved 3 May 2026",
				ADDRESS,
			])
				expect(letters).toContain(lettersOf(text));
			expect(letters).toContain("Page1of3");
			expect(letters).toContain("Page3of3");
		},
	);

	test("the units asked for come first", async () => {
		const content = specWith({ lengthMm: 1473.2 }, 510.291);
		const metric = await allLetters(await pdfOf({ content }));
		const trade = await allLetters(await pdfOf({ content, reader: TRADE }));
		expect(metric).toContain(lettersOf("1473 mm58 in"));
		expect(trade).toContain(lettersOf("58 in1473 mm"));
		expect(trade).toContain(lettersOf("18 oz510 g").replace("18oz", "18.0oz"));
	});

	test("a replaced revision says so on every page", async () => {
		const pages = await readPdf(
			await pdfOf({ content: usualSpec(), latestRevision: 3 }),
		);
		for (const { letters } of pages)
			expect(letters).toContain(
				lettersOf("REPLACED by revision 3: do not build from this sheet"),
			);
	});

	test.each(Object.keys(PAPERS) as Paper[])(
		"a rich splice is three pages of %s, with nothing left out",
		async (paper) => {
			const content = richSpec();
			expect(content.design.splice.cuts).toHaveLength(27);
			const pdf = await pdfOf({ content, paper });
			expect(await readPdf(pdf)).toHaveLength(3);
			expect(missing(await allLetters(pdf), content)).toEqual([]);
		},
	);

	test("what three pages cannot hold goes on rather than lose a line", async () => {
		const content = boundlessSpec();
		expect(content.design.splice.cuts.length).toBeGreaterThan(50);
		const pdf = await pdfOf({ content });
		expect(await readPdf(pdf)).toHaveLength(4);
		expect(missing(await allLetters(pdf), content)).toEqual([]);
	});
});

describe("names", () => {
	test.each([
		"Zoë Łukaszewska-Müller",
		"Çağrı Őszintén Ţăran",
		"Дмитро Ґалаґан",
		"Ωμέγα Παπαδάκη",
		// Not with ị: two glyphs in this face, which a reader gives back as the letter and its dot again.
		"Nguyễn Đỗ Hạnh",
	])("%s is printed letter by letter", async (playerName) => {
		const letters = await allLetters(
			await pdfOf({ content: usualSpec(), playerName }),
		);
		expect(letters).toContain(lettersOf(`For ${playerName}, fitting 7`));
	});

	test("a name in letters that no face here has is not printed as boxes", async () => {
		const letters = await allLetters(
			await pdfOf({ content: usualSpec(), playerName: "虚構の選手" }),
		);
		expect(letters).toContain(
			lettersOf("For the player named on the page the code opens, fitting 7"),
		);
	});
});

describe("on paper", () => {
	const DPI = 150;
	const pages: Awaited<ReturnType<typeof printPdf>>[] = [];
	beforeAll(async () => {
		const pdf = await pdfOf({ content: usualSpec() });
		for (const page of [1, 2, 3])
			pages.push(await printPdf(pdf, { page, dpi: DPI }));
	});

	test("there is no colour", () => {
		for (const { rgba } of pages) {
			let most = 0;
			for (let i = 0; i < rgba.length; i += 4) {
				const [r = 0, g = 0, b = 0] = [rgba[i], rgba[i + 1], rgba[i + 2]];
				most = Math.max(most, Math.max(r, g, b) - Math.min(r, g, b));
			}
			expect(most).toBeLessThanOrEqual(1);
		}
	});

	test("there is black ink, and white paper 10 mm from every edge", () => {
		const marginPx = Math.floor((10 / 25.4) * DPI);
		for (const { rgba, widthPx, heightPx } of pages) {
			let darkest = 255;
			const inMargin: number[] = [];
			for (let y = 0; y < heightPx; y++)
				for (let x = 0; x < widthPx; x++) {
					const value = rgba[4 * (y * widthPx + x)] ?? 0;
					darkest = Math.min(darkest, value);
					const isMargin =
						x < marginPx ||
						x >= widthPx - marginPx ||
						y < marginPx ||
						y >= heightPx - marginPx;
					if (isMargin && value < 255) inMargin.push(y);
				}
			expect(darkest).toBe(0);
			// The foot stands lower than the rest.
			expect(inMargin.filter((y) => y < heightPx - 1.2 * marginPx)).toEqual([]);
		}
	});

	test("the code is read by an independent decoder, also with a stain on it", () => {
		const { rgba, widthPx, heightPx } = pages[0] ?? {
			rgba: new Uint8ClampedArray(),
			widthPx: 0,
			heightPx: 0,
		};
		const read = jsQR(rgba, widthPx, heightPx);
		expect(read?.data).toBe(ADDRESS);
		const stained = rgba.slice();
		const { topLeftCorner: from, bottomRightCorner: to } = read?.location ?? {
			topLeftCorner: { x: 0, y: 0 },
			bottomRightCorner: { x: 0, y: 0 },
		};
		const at = (share: number) => ({
			x: Math.round(from.x + share * (to.x - from.x)),
			y: Math.round(from.y + share * (to.y - from.y)),
		});
		for (let y = at(0.45).y; y < at(0.6).y; y++)
			for (let x = at(0.45).x; x < at(0.6).x; x++)
				stained.fill(0, 4 * (y * widthPx + x), 4 * (y * widthPx + x) + 3);
		expect(jsQR(stained, widthPx, heightPx)?.data).toBe(ADDRESS);
	});
});
