import { describe, expect, test } from "vitest";
import { predictionChart, woodRows } from "@/lib/present/woods-view";
import { METRIC, reading, TRADE } from "@/tests/support/readers";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const result = (jobNumber: number, day: number, g: number, mm: number) => ({
	jobNumber,
	at: new Date(Date.UTC(2026, 3, day)),
	prediction: {
		mass: { expected: 372, sd: 20, measured: 372 + g },
		balance: { expected: 420, sd: 8, measured: 420 + mm },
	},
});

describe("the bands of woods", () => {
	const rows = (reading: number[]) =>
		woodRows({
			woods: ["white-ash", "gaboon-ebony"],
			evidence: { "white-ash": reading.map((kgM3) => ({ kgM3, sd: 10 })) },
			withdrawn: { "gaboon-ebony": 2 },
			reader: METRIC,
		});

	test("without a result a wood is as the tables have it", () => {
		const [ash, ebony] = rows([]);
		expect(ash).toMatchObject({ own: null, ownBand: null, counting: 0 });
		expect(ebony).toMatchObject({ counting: 0, withdrawn: 2 });
	});

	test("results pull the density their way and draw the band together", () => {
		const [before] = rows([]);
		const [after] = rows(Array.from({ length: 12 }, (_, i) => 720 + (i % 3)));
		const ends = (text: string | null | undefined) =>
			plain(text ?? "")
				.match(/\d+/g)
				?.map(Number) ?? [];
		const [low = 0, , high = 0] = ends(before?.tablesBand);
		const [ownLow = 0, , ownHigh = 0] = ends(after?.ownBand);
		expect(ownHigh - ownLow).toBeLessThan(high - low);
		expect(ends(after?.own)[0]).toBeGreaterThan(ends(before?.tables)[0] ?? 0);
		expect(after?.counting).toBe(12);
	});
});

describe("prediction against result", () => {
	test("nothing to show before there is a build", () => {
		expect(predictionChart([], METRIC)).toBeNull();
	});

	test("the points are result less prediction, oldest first; the band is each build's own", () => {
		const chart = predictionChart(
			[result(9, 20, 40, -3), result(4, 2, -12, 6)],
			METRIC,
		);
		const [mass, balance] = chart?.panels ?? [];
		expect(mass?.lines[1]?.points).toEqual([
			{ x: 1, y: -12 },
			{ x: 2, y: 40 },
		]);
		expect(balance?.lines[1]?.points.map(({ y }) => y)).toEqual([6, -3]);
		// 1.645 × 20 g
		expect(mass?.lines[0]?.points[0]?.high).toBeCloseTo(32.9, 1);
		expect(mass?.lines[0]?.points[0]?.low).toBeCloseTo(-32.9, 1);
	});

	test("the sentence and the table say the same, in either language and system", () => {
		const results = [result(9, 20, 40, -3), result(4, 2, -12, 6)];
		const chart = predictionChart(results, METRIC);
		expect(plain(chart?.summary ?? "")).toMatch(
			/^Of 2 builds the weight came out inside its band in 1 and the balance in 2;.* 14(\.0)? g heavier/,
		);
		expect(chart?.table.rows.map((row) => row.at(-1))).toEqual([
			"both",
			"balance",
		]);
		const trade = predictionChart(results, TRADE);
		// 40 g are 1.411 oz.
		expect(trade?.panels[0]?.lines[1]?.points[1]?.y).toBeCloseTo(1.411, 3);
		expect(trade?.panels[0]?.unit).toBe("oz");
		const german = predictionChart(results, reading("metric", "de"));
		expect(german?.summary).toMatch(/^Bei 2 Bauten .* schwerer/);
	});
});
