import { describe, expect, test } from "vitest";
import type { BilletPick } from "@/lib/build/billet-window";
import { pickRows, stepsView } from "@/lib/present/sheet-work";
import { withBillets } from "@/lib/workshop/job-content";
import type { Stock } from "@/lib/workshop/stock";
import { METRIC, reading } from "@/tests/support/readers";
import { askedContent } from "../workshop/support/jobs";

const GERMAN = reading("metric", "de");
const build = askedContent().build;
const ash: BilletPick = {
	wood: "white-ash",
	use: "shaft",
	densityKgM3: { value: 670, sd: 60, standing: "published", sources: [] },
	window: { lowKgM3: 610.2, highKgM3: 720.9 },
};
const rowOf = (pick: BilletPick, stock: Stock | null = null) => {
	const [row] = pickRows({ ...build, billets: [pick] }, METRIC, stock);
	if (row === undefined) throw new Error("no row");
	return row;
};
const STOCK: Stock = {
	basis: "invented",
	woods: [
		{
			wood: "white-ash",
			grade: "A",
			ringSpacingMm: 2,
			billets: [
				{ label: "7", moisturePct: null, massG: 660, volumeCm3: 1000 },
				{ label: "8", moisturePct: null, massG: 760, volumeCm3: 1000 },
			],
			count: 2,
			stated: null,
		},
	],
};

describe("billets to pick", () => {
	test("a window is rounded inwards, so that every whole number in it does", () => {
		expect(rowOf(ash).density).toBe("611 to 720 kg/m³");
		expect(
			rowOf({ ...ash, window: { lowKgM3: 610.2, highKgM3: null } }).density,
		).toBe("at least 611 kg/m³");
		expect(
			rowOf({ ...ash, window: { lowKgM3: null, highKgM3: 720.9 } }).density,
		).toBe("at most 720 kg/m³");
	});

	test("only billets at hand inside the window are named, with grade and rings", () => {
		const row = rowOf(ash, STOCK);
		expect(row.grain).toMatch(
			/^grade A, rings 2(\.0)?\u00a0mm apart; straight/,
		);
		expect(row.atHand).toContain("7 (660)");
		expect(row.atHand).not.toContain("760");
	});

	test("decoration is picked by eye", () => {
		expect(rowOf({ ...ash, use: "decoration", window: null }).density).toBe(
			"by eye",
		);
	});

	test("what a real build asks for has one row a wood", () => {
		const rows = pickRows(withBillets(build), METRIC, STOCK);
		expect(rows.map(({ use }) => use)).toEqual(["Shaft and core", "Butt"]);
	});
});

test("every step has its words in both languages, its waiting time, and the sum on top", () => {
	for (const reader of [METRIC, GERMAN]) {
		const { about, rows } = stepsView(build, reader);
		expect(about).toMatch(/\d+ (to|bis) \d+/);
		expect(rows.length).toBeGreaterThan(12);
		for (const { step } of rows) expect(step).not.toMatch(/sheet\.|[{}]/);
	}
	const oil = stepsView(build, METRIC).rows.find(({ step }) =>
		/coat of oil/.test(step),
	);
	expect(oil?.step).toMatch(/3 times\.$/);
	expect(oil?.wait).toBe("1 day each time");
});
