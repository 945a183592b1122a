import { expect, test, vi } from "vitest";
import { advise } from "@/lib/advice/advise";
import type { Paper } from "@/lib/documents/sheet-pdf";
import { summaryPdf } from "@/lib/documents/summary-pdf";
import type { Answers } from "@/lib/forms/fields";
import { must } from "@/lib/numerics/outcome";
import { summaryHead } from "@/lib/present/summary-head";
import { summarySource, summaryView } from "@/lib/present/summary-view";
import type { Reader } from "@/lib/words/reader";
import { inputOf } from "../support/fittings";
import { METRIC, reading, TRADE } from "../support/readers";
import { lettersOf, readPdf } from "./support/pdf";

vi.setConfig({ testTimeout: 30_000 });

const ADULT: Answers = {
	stature: "178 cm",
	gripReadings: ["30 mm", "31 mm"],
	presentLength: "1448 mm",
	wishMass: "530 g",
};
const JUNIOR: Answers = {
	sex: "female",
	birthDate: "2015-08-19",
	age: "10",
	stature: "138 cm",
};

function printed(
	answers: Answers,
	reader: Reader,
	paper: Paper,
	playerName = "Invented Player",
) {
	const advice = must(advise(inputOf(answers)));
	const head = summaryHead(
		{
			playerName,
			fittingNumber: 7,
			answeredAt: new Date(Date.UTC(2026, 4, 3)),
			spec: null,
			modelVersion: advice.modelVersion,
			workshop: { name: "Invented Workshop", lines: [], contact: "" },
		},
		reader,
	);
	const view = summaryView(
		{
			source: summarySource(advice),
			around: advice,
			answers,
			disputed: ["armSpan"],
			spec: null,
			today: "2026-05-03",
		},
		reader,
	);
	return {
		head,
		view,
		pdf: summaryPdf({ head, view, isInvented: true, reader, paper }),
	};
}

/** Every text of a view, but for its keys. */
function textsOf(value: unknown): string[] {
	if (typeof value === "string") return [value];
	if (typeof value !== "object" || value === null) return [];
	return Object.entries(value).flatMap(([key, part]) =>
		key === "id" || key === "state" ? [] : textsOf(part),
	);
}

test.each([
	[METRIC, "a4", ADULT],
	[TRADE, "letter", ADULT],
	[reading("metric", "de"), "a4", JUNIOR],
	[reading("trade", "de"), "letter", JUNIOR],
] as const)(
	"%s on %s: every text of the summary, on two pages at most",
	async (reader, paper, answers) => {
		const { head, view, pdf } = printed(answers, reader, paper);
		const pages = await readPdf(await pdf);
		expect(pages.length).toBeLessThanOrEqual(2);
		// ISO 216 and ANSI/ASME Y14.1: 210 × 297 mm, 8½ × 11 in.
		const [widthPt, heightPt] =
			paper === "a4"
				? [(210 / 25.4) * 72, (297 / 25.4) * 72]
				: [8.5 * 72, 11 * 72];
		for (const page of pages) {
			expect(page.widthPt).toBeCloseTo(widthPt, 1);
			expect(page.heightPt).toBeCloseTo(heightPt, 1);
		}
		const letters = pages.map((page) => page.letters).join("");
		const texts = textsOf({ head, view });
		expect(texts.length).toBeGreaterThan(50);
		expect(texts.filter((text) => !letters.includes(lettersOf(text)))).toEqual(
			[],
		);
		for (const key of ["invented", "figuresLead", "measuredLead"] as const)
			expect(letters).toContain(lettersOf(reader.say(`summary.${key}`)));
	},
);

test("a name in another alphabet is printed as it is", async () => {
	const name = "Αλεξάνδρα Źdźbło";
	const { pdf } = printed(ADULT, METRIC, "a4", name);
	const [first] = await readPdf(await pdf);
	expect(first?.letters).toContain(lettersOf(name));
});
