import { describe, expect, test } from "vitest";
import { advise } from "@/lib/advice/advise";
import { diameterAtMm } from "@/lib/cue/taper";
import { must } from "@/lib/numerics/outcome";
import { closureMm } from "@/lib/player/hand";
import { buttChart } from "@/lib/present/butt-chart";
import { type ChartModel, lineAt } from "@/lib/present/chart-model";
import { lengthChart } from "@/lib/present/length-chart";
import { tipChart } from "@/lib/present/tip-chart";
import { weightChart } from "@/lib/present/weight-chart";
import { MM_PER_INCH } from "@/lib/units/quantity";
import { METRIC, reading, TRADE } from "@/tests/support/readers";
import { withStature } from "../support/inputs";

const advice = must(
	advise(
		withStature(1780, {
			player: { statureMm: 1780, gripCircleReadingsMm: [27, 27.5] },
		}),
	),
);
const line = (model: ChartModel, panel = 0, index = 0) =>
	model.panels[panel]?.lines[index]?.points ?? [];
const marked = (model: ChartModel, panel = 0, index = 0) =>
	lineAt(line(model, panel, index), model.marker?.x ?? Number.NaN) ??
	Number.NaN;

describe.each([METRIC, TRADE, reading("metric", "de")])(
	"charts in $system, $language",
	(reader) => {
		test.each([weightChart, buttChart, lengthChart, tipChart])(
			"%o has finite lines, a marker inside, a summary and a table",
			(chart) => {
				const model = chart(advice, reader);
				for (const { lines } of model.panels)
					for (const { points } of lines) {
						expect(points.length).toBeGreaterThan(5);
						for (const point of points)
							expect(Object.values(point).every(Number.isFinite)).toBe(true);
					}
				expect(model.marker?.x).toBeGreaterThanOrEqual(model.x.domain[0]);
				expect(model.marker?.x).toBeLessThanOrEqual(model.x.domain[1]);
				expect(model.summary).toMatch(/\.$/);
				for (const row of model.table.rows)
					expect(row).toHaveLength(model.table.columns.length);
				expect(model.table.rows.length).toBeGreaterThan(4);
			},
		);
	},
);

describe("the marker stands where the advice does", () => {
	test("weight: the metal of the plan, and the balance it gives", () => {
		const plan = must(advice.build.plan);
		expect(marked(weightChart(advice, METRIC))).toBeCloseTo(
			plan.addedMassG.value,
			0,
		);
	});
	test("butt: the closure of the chosen diameter at the usual grip", () => {
		const diameterMm = diameterAtMm(
			advice.build.design,
			advice.butt.gripStationMm,
		);
		const closure = closureMm({
			circleMm: advice.grip.circleMm.value,
			diameterMm,
		});
		expect(marked(buttChart(advice, METRIC), 0, 1)).toBeCloseTo(closure, 6);
	});
	test("tip: the deflection of the trade-off", () => {
		expect(marked(tipChart(advice, METRIC))).toBeCloseTo(
			advice.tipTradeoff.squirtDegAtHalf.value,
			1,
		);
	});
	test("length: an inch more of cue is an inch more behind the hand", () => {
		const points = line(lengthChart(advice, TRADE));
		const first = points[0];
		const last = points.at(-1);
		if (first === undefined || last === undefined) throw new Error("no points");
		expect((last.y - first.y) / (last.x - first.x)).toBeCloseTo(1, 9);
	});
});

test("both unit systems draw the same lines", () => {
	const metric = line(lengthChart(advice, METRIC));
	const trade = line(lengthChart(advice, TRADE));
	for (const [i, point] of metric.entries())
		expect(point.y / (trade[i]?.y ?? 0)).toBeCloseTo(MM_PER_INCH, 6);
});

test("a bigger tip deflects more, and more metal moves the balance back", () => {
	const rising = (values: number[]) =>
		values.every((value, i) => i === 0 || value >= (values[i - 1] ?? 0));
	expect(rising(line(tipChart(advice, METRIC)).map(({ y }) => y))).toBe(true);
	expect(rising(line(buttChart(advice, METRIC), 0, 1).map(({ y }) => y))).toBe(
		true,
	);
});
