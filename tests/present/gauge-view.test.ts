import { describe, expect, test } from "vitest";
import { advise } from "@/lib/advice/advise";
import { must } from "@/lib/numerics/outcome";
import {
	CARD_ON_SCREEN_PX,
	cardOnScreen,
	closureView,
	closureWords,
	GAUGE_MM,
	handleContext,
	printCheck,
	readingNotices,
	scaleFromCard,
} from "@/lib/present/gauge-view";
import { HANDLE_STUDIES } from "@/lib/reference/handles";
import type { MessageKey } from "@/lib/words/reader";
import { METRIC, reading, TRADE } from "@/tests/support/readers";
import { unsaid } from "../support/inputs";

const withReadings = (gripCircleReadingsMm: number[], handLengthMm?: number) =>
	must(
		advise({
			...unsaid,
			player: { statureMm: 1780, gripCircleReadingsMm, handLengthMm },
		}),
	);
const plain = (text: string) => text.replaceAll("\u00a0", " ");

describe("closure along the grip zone", () => {
	const advice = withReadings([28, 28.5, 28]);
	const { places, lead } = closureView(advice, METRIC);
	test("three places, 50 mm apart, the ring told", () => {
		expect(places.map(({ place }) => place)).toEqual([
			"back",
			"usual",
			"forward",
		]);
		const [back, usual, forward] = places.map(({ fromButt }) =>
			Number.parseFloat(fromButt),
		);
		expect(usual).toBe((back ?? 0) + 50);
		expect(forward).toBe((usual ?? 0) + 50);
		expect(plain(lead)).toContain("28.2 mm");
	});
	test("what the picture shows is the ring over the girth, and what the words say is π(D − C)", () => {
		for (const { diameterMm, ringDeg, closure } of places) {
			const closureMm = Math.PI * (diameterMm - 84.5 / 3);
			expect(plain(closure)).toBe(
				Math.abs(closureMm) < 0.5
					? "pads just meet"
					: `${Math.abs(closureMm).toFixed(1)} mm ${closureMm > 0 ? "gap" : "overlap"}`,
			);
			if (Math.abs(closureMm) >= 0.5)
				expect(ringDeg / 360).toBeCloseTo(84.5 / 3 / diameterMm, 12);
		}
	});
	test("further forward the cue is slimmer and the ring closes more", () => {
		const [back, usual, forward] = places.map(({ ringDeg }) => ringDeg);
		expect(back).toBeLessThan(usual ?? 0);
		expect(usual).toBeLessThan(forward ?? 0);
	});
	test("a hand that guesses says so, and a hair's breadth is no gap", () => {
		expect(closureView(must(advise(unsaid)), METRIC).lead).toMatch(
			/guessed ring/,
		);
		expect(closureWords(0.4, METRIC)).toBe("pads just meet");
		expect(plain(closureWords(-2, TRADE))).toBe("0.08 in overlap");
	});
});

describe("readings", () => {
	test("that disagree are warned of, with the numbers", () => {
		const [words] = readingNotices(withReadings([26, 31]), METRIC);
		expect(plain(words ?? "")).toContain("5.0 mm apart");
		expect(readingNotices(withReadings([28, 28.5]), METRIC)).toEqual([]);
	});
	test("none taken asks for nothing, one asks for more", () => {
		expect(readingNotices(must(advise(unsaid)), METRIC)).toEqual([]);
		expect(readingNotices(withReadings([28]), METRIC)).toHaveLength(1);
	});
});

/** Kong & Lowe 2005: 19.7 % of hand length for the greatest force. */
test("handle research is told to be for hard grips, with its sources", () => {
	const context = handleContext(withReadings([28], 200), METRIC);
	expect(context.lead).toMatch(/hard grips/);
	expect(context.lead).toMatch(/held lightly/);
	expect(plain(context.rows[0]?.diameter ?? "")).toBe("39.4 mm");
	for (const { what, source } of context.rows) {
		expect(what).toMatch(/hard|Pinching|finger tips|Largest ring/);
		expect(source.length).toBeGreaterThan(5);
	}
});

describe("true size", () => {
	/** ISO/IEC 7810 ID-1: 85.60 × 53.98 mm, from memory of the standard. */
	test("a card keeps its shape, lying where there is room and upright where not", () => {
		const wide = cardOnScreen({ pixelsPerMm: 4, roomPx: 400 });
		expect(wide).toEqual({ upright: false, widthPx: 342.4, heightPx: 215.92 });
		const narrow = cardOnScreen({ pixelsPerMm: 5.5, roomPx: 296 });
		expect(narrow.upright).toBe(true);
		expect(narrow.heightPx / narrow.widthPx).toBeCloseTo(85.6 / 53.98, 12);
	});
	test("every size the card can be slid to is a scale", () => {
		for (const px of [CARD_ON_SCREEN_PX.min, CARD_ON_SCREEN_PX.max])
			expect(must(scaleFromCard(px))).toBeCloseTo(px / 85.6, 12);
		expect(scaleFromCard(20).ok).toBe(false);
		expect(scaleFromCard(Number.NaN).ok).toBe(false);
	});
	test("the upright card at the usual phone scale fits a phone of 360 pixels", () => {
		// 5.5 CSS pixels a millimetre: 360 over a screen 65 mm wide.
		const { widthPx } = cardOnScreen({ pixelsPerMm: 5.5, roomPx: 296 });
		expect(widthPx).toBeLessThan(300);
		expect(GAUGE_MM.to * 5.5).toBeLessThan(296);
	});
	test("a print is true within 1 % and refused beyond, with its scale", () => {
		expect(printCheck(100.9, METRIC).ok).toBe(true);
		const off = printCheck(97, METRIC);
		expect(off.ok).toBe(false);
		expect(plain(off.text)).toMatch(
			/97\.0%.*print again at 100 %.*99\.0–101\.0 mm/,
		);
	});
});

test("where in a study a figure stands is told as the table has it, and in German otherwise", () => {
	const GERMAN = reading("metric", "de");
	for (const { purpose, source, locator } of HANDLE_STUDIES) {
		const key = `gauge.handles.locator.${purpose}-${source}` as MessageKey;
		expect(METRIC.say(key)).toBe(locator);
		expect(GERMAN.say(key)).not.toBe(locator);
	}
});
