import { describe, expect, test } from "vitest";
import { advise } from "@/lib/advice/advise";
import type { FittingInput } from "@/lib/advice/input";
import { must } from "@/lib/numerics/outcome";
import { type GrowthView, growthOf } from "@/lib/present/growth-view";
import { METRIC, TRADE } from "@/tests/support/readers";
import { unsaid } from "../support/inputs";

const TODAY = "2026-01-12";
const growth = (
	player: FittingInput["player"],
	bornOn: string | null = null,
	wishes: FittingInput["wishes"] = {},
) =>
	growthOf(
		{
			advice: must(advise({ ...unsaid, player, wishes })),
			bornOn,
			today: TODAY,
		},
		METRIC,
	);
function shown(...given: Parameters<typeof growth>): GrowthView {
	const result = growth(...given);
	if (result.kind !== "shown") throw new Error(`growth is ${result.kind}`);
	return result.view;
}
const plain = (text: string) => text.replaceAll("\u00a0", " ");
const ends = (text: string) =>
	plain(text)
		.replace(/ (cm|mm)$/, "")
		.split("–")
		.map(Number);

/** CDC 2000 stature-for-age, boys at exactly 10 years: P5, P50, P95 = 127.99, 138.62, 149.67 cm (L, M, S interpolated). */
describe("percentiles by the published table", () => {
	test.each([
		[
			1279.9,
			/^5th percentile: taller than about 5 in 100 boys of 10\.0 years \(CDC 2000\)\.$/,
		],
		[1386.2, /^50th percentile/],
		[1496.7, /^95th percentile/],
		[1700, /^Above the 99th percentile/],
		[1050, /^Below the 1st percentile/],
	])("%d mm", (statureMm, words) => {
		expect(shown({ statureMm, ageYears: 10, sex: "male" }).percentiles).toEqual(
			[expect.stringMatching(words)],
		);
	});
	test("both tables where sex is not given", () => {
		const { percentiles } = shown({ statureMm: 1380, ageYears: 10 });
		expect(percentiles).toHaveLength(2);
		expect(percentiles.join()).toMatch(/girls.*boys|boys.*girls/);
	});
	test("endings of ranks", () => {
		const ranks = new Set<string>();
		for (let statureMm = 1270; statureMm <= 1500; statureMm += 2) {
			const [words = ""] = shown({
				statureMm,
				ageYears: 10,
				sex: "male",
			}).percentiles;
			ranks.add(/^\d+\D\D/.exec(words)?.[0] ?? "");
		}
		for (const rank of ranks)
			expect(rank).toMatch(
				/^(\d*(?<!1)1st|\d*(?<!1)2nd|\d*(?<!1)3rd|\d*1[123]th|\d*[04-9]th)$/,
			);
		expect(ranks.size).toBeGreaterThan(30);
	});
});

describe("the outlook", () => {
	const view = shown({
		statureMm: 1380,
		ageYears: 10,
		sex: "male",
		gripCircleReadingsMm: [23, 23.5],
	});
	test("ranges widen with the horizon, for height, and rise for cue and ring", () => {
		const heights = view.rows.map(({ height }) => ends(height));
		const widths = heights.map(([low = 0, high = 0]) => high - low);
		for (let i = 1; i < widths.length; i++)
			expect(widths[i]).toBeGreaterThanOrEqual(widths[i - 1] as number);
		for (const column of ["length", "ring"] as const) {
			const lows = view.rows.map((row) => ends(row[column])[0] as number);
			expect(lows).toEqual([...lows].sort((a, b) => a - b));
			expect(lows.at(-1)).toBeGreaterThan(lows[0] as number);
		}
	});
	test("two years on, a median boy of 10 is about the table's 12-year-old", () => {
		// CDC 2000 boys P50: 138.62 at 10, 149.05 at 12.
		const { rows } = shown({ statureMm: 1386.2, ageYears: 10, sex: "male" });
		const [low = 0, high = 0] = ends(
			rows.find(({ when }) => when === "In 2 years")?.height ?? "",
		);
		expect((low + high) / 2).toBeGreaterThan(148.5);
		expect((low + high) / 2).toBeLessThan(149.6);
	});
	test("the next day to measure, and the piece to add, are dates", () => {
		// Between 10 and 15 every six months.
		expect(view.plan[0]).toBe("Measure again about 12 July 2026, in 6 months.");
		expect(plain(view.plan[1] ?? "")).toMatch(
			/worth adding from about \w+ 20\d\d at the soonest, at the held percentile from about \w+ 20\d\d/,
		);
	});
	test("the published error is told: boys from 12, 2.0 cm root mean square after a year", () => {
		// 1.645 × 2.0 = 3.3 cm, written to the half centimetre.
		expect(
			plain(shown({ statureMm: 1490, ageYears: 12, sex: "male" }).error),
		).toContain("within 3.5 cm after one year");
	});
	test("a cue wished longer is outgrown later", () => {
		const when = (lengthMm: number) =>
			shown({ statureMm: 1380, ageYears: 10, sex: "male" }, null, { lengthMm })
				.plan[1] ?? "";
		expect(when(1200)).not.toBe(when(1300));
		expect(plain(when(1600))).toMatch(/not outgrown before 20/);
	});
	test("a range and never a promise", () => {
		const words = JSON.stringify(view);
		expect(words).toMatch(/range, not a promise/);
		expect(words).not.toMatch(/guarantee|will be|NaN|undefined/);
		expect(view.sources).toHaveLength(2);
	});
	test("in inches for who reads inches", () => {
		const result = growthOf(
			{
				advice: must(
					advise({ ...unsaid, player: { statureMm: 1380, ageYears: 10 } }),
				),
				bornOn: null,
				today: TODAY,
			},
			TRADE,
		);
		expect(JSON.stringify(result)).toMatch(/ft/);
		expect(JSON.stringify(result)).not.toMatch(/\d\u00a0[cm]m/);
	});
});

describe("whom it is for", () => {
	test("the date of birth is the finer age", () => {
		const { age } = shown(
			{ statureMm: 1380, ageYears: 10, sex: "male" },
			"2015-07-12",
		);
		expect(age).toBe("10.5 years");
	});
	test("nobody grown, by either", () => {
		expect(growth({ statureMm: 1780, ageYears: 40 }).kind).toBe("none");
		expect(growth({ statureMm: 1780 }).kind).toBe("none");
		expect(growth({ statureMm: 1780 }, "1990-01-01").kind).toBe("none");
	});
	test("a small player without an age, and a junior without a height, are asked", () => {
		expect(growth({ statureMm: 1250 })).toMatchObject({
			kind: "wanting",
			text: expect.stringMatching(/age/),
		});
		expect(growth({ ageYears: 9 })).toMatchObject({
			kind: "wanting",
			text: expect.stringMatching(/height/),
		});
	});
	test("an age no table covers is refused with its bounds", () => {
		const result = growth({ statureMm: 1000 }, "2024-01-12");
		expect(result).toMatchObject({
			kind: "refused",
			texts: [expect.stringMatching(/4/)],
		});
	});
});
