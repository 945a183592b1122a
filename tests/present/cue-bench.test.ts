import { describe, expect, test } from "vitest";
import { answerCue } from "@/lib/advice/answer-cue";
import { type BenchAnswers, readBench } from "@/lib/forms/cue-bench";
import { must } from "@/lib/numerics/outcome";
import {
	deflectionChart,
	spinChart,
	weightSpeedChart,
} from "@/lib/present/cue-bench-charts";
import {
	bendingFacts,
	type Fact,
	inertiaFacts,
	partRows,
	weightFacts,
	yearView,
} from "@/lib/present/cue-bench-view";
import { feltArmMassG } from "@/lib/shot/effort";
import { shotProfile } from "@/lib/shot/profile";
import type { Reader } from "@/lib/words/reader";
import { METRIC, TRADE } from "@/tests/support/readers";

const bench = (answers: BenchAnswers = {}) => {
	const { question } = readBench(answers, "metric");
	return { question, answer: must(answerCue(question)) };
};
const plain = (text: string) => text.replaceAll("\u00a0", " ");
const fact = (facts: readonly Fact[], label: string): Fact => {
	const found = facts.find((one) => one.label === label);
	if (!found)
		throw new Error(`no fact ${label} in ${facts.map((f) => f.label)}`);
	return found;
};
const profileOf = (answers: BenchAnswers = {}) => {
	const { question, answer } = bench(answers);
	return must(
		shotProfile({
			gameId: question.gameId,
			cueMassG: answer.mass.massG,
			endMassG: answer.endMassG,
			armMassG: feltArmMassG({}),
			tipDiameterMm: question.cue.tipDiameterMm,
			cueSpeedMPerS: 2,
		}),
	);
};

describe("weight", () => {
	test("the figures are the answer's own, with their bands", () => {
		const { answer } = bench();
		const facts = weightFacts(answer, METRIC);
		const { value, sd } = answer.mass.massG;
		const weight = fact(facts, "Weight");
		expect(plain(weight.value)).toBe(`${Math.round(value)} g`);
		expect(plain(weight.band ?? "")).toBe(
			`${Math.round(value - 1.6448536 * sd)}–${Math.round(value + 1.6448536 * sd)} g`,
		);
		// 1 kg·m² is 10,000 kg·cm².
		expect(
			plain(
				fact(inertiaFacts(answer, METRIC), "Inertia about the balance point")
					.value,
			),
		).toBe(
			`${Math.round(answer.mass.inertiaAboutBalanceKgM2.value * 1e4)} kg·cm²`,
		);
		expect(facts.some(({ label }) => label.startsWith("Added"))).toBe(false);
	});
	test("with a wanted weight, what goes in and what comes out", () => {
		const facts = weightFacts(bench({ mass: "520 g" }).answer, METRIC);
		expect(plain(fact(facts, "Weight").value)).toBe("520 g");
		expect(plain(fact(facts, "Added weight, net").note ?? "")).toMatch(
			/^Brass \d+ g in, wood \d+ g out; bore Ø[\d.]+ mm, \d+ mm deep\.$/,
		);
	});
	test("the parts add up to the whole", () => {
		const { answer } = bench({ mass: "500 g" });
		const rows = partRows(answer, METRIC);
		const sum = rows.reduce(
			(all, { weight }) => all + Number(weight.replace(/\u00a0g$/, "")),
			0,
		);
		expect(Math.abs(sum - 500)).toBeLessThan(0.5 * rows.length);
		expect(rows[0]).toMatchObject({ part: "Tip", material: "Leather" });
		expect(plain(rows[0]?.weight ?? "")).toMatch(/^0\.\d g$/);
	});
	test("in the trade's units there are no grams", () => {
		const all = weightFacts(bench({ mass: "520 g" }).answer, TRADE);
		expect(plain(fact(all, "Weight").value)).toMatch(/^18\.\d+ oz$/);
		expect(JSON.stringify(all)).not.toMatch(/\d\u00a0g\b/);
	});
});

describe("bending", () => {
	test.each([METRIC, TRADE])(
		"every figure is told, $system",
		(reader: Reader) => {
			const { answer } = bench();
			const facts = bendingFacts(answer, reader);
			const [first] = answer.bending.planes.x.freeHz;
			expect(plain(fact(facts, "First bending, hanging free").value)).toBe(
				`${first?.value.toFixed(1)} Hz`,
			);
			expect(fact(facts, "First bending, hanging free").note).toContain(
				" and ",
			);
			const held = (label: string) =>
				Number.parseFloat(fact(facts, label).value);
			expect(held("First bending, held in a fist")).toBeLessThan(
				held("First bending, held lightly"),
			);
			expect(plain(fact(facts, "Effective end mass").value)).toMatch(
				/^\d\.\d g$/,
			);
			for (const { value, band } of facts) {
				expect(value).not.toMatch(/NaN|undefined/);
				expect(band).not.toBeNull();
			}
		},
	);
	test("where the planes differ, both are told", () => {
		const { answer } = bench();
		const differing = {
			...answer,
			bending: { ...answer.bending, sideRatio: 1.034 },
		};
		expect(
			fact(bendingFacts(differing, METRIC), "First bending, hanging free").note,
		).toContain("3% between the planes");
	});
});

describe("the year", () => {
	test("each season its column, each figure its row", () => {
		const { question, answer } = bench({ place: "warm-humid-coast" });
		if (!answer.year) throw new Error("no year");
		const view = yearView(answer.year, question.seasons, METRIC);
		expect(view.columns).toEqual(["Dry half", "Damp half"]);
		expect(view.rows.map(({ values }) => values.length)).toEqual(
			view.rows.map(() => 2),
		);
		expect(plain(view.rows[0]?.values[1] ?? "")).toBe("29 °C, 80% humidity");
		expect(plain(view.sentence)).toMatch(
			/swings by \d+ g .* 0\.\d\d mm across/,
		);
		expect(view.cautions).toHaveLength(1);
		expect(view.cautions[0]).toMatch(
			/^In the damp half wood comes to 15\.\d%, outside the 6 to 14%/,
		);
	});
	test("a dry place and a damp one differ as the readings do", () => {
		const { question, answer } = bench({
			dryTemperature: "20",
			dryHumidity: "30",
			dampTemperature: "20",
			dampHumidity: "65",
		});
		if (!answer.year) throw new Error("no year");
		// Wood Handbook equation at 20 °C: 6.19 % and 12.00 %.
		const moisture = yearView(answer.year, question.seasons, METRIC).rows[1];
		expect(moisture?.values).toEqual(["6.2% ± 0.5", "12.0% ± 0.5"]);
	});
});

describe("charts", () => {
	test("weight and speed: best near its mark, flat, in both units", () => {
		const profile = profileOf();
		for (const reader of [METRIC, TRADE]) {
			const model = weightSpeedChart({
				profile,
				cueMassG: 520,
				gameId: "snooker",
				reader,
			});
			expect(model.marker?.x).toBeCloseTo(
				reader.system === "metric" ? 520 : 18.3425,
				3,
			);
			const [equal] = model.panels[0]?.lines ?? [];
			const best = equal?.points.reduce((a, b) => (b.y > a.y ? b : a));
			expect(best?.y).toBeCloseTo(100, 1);
			expect(model.table.rows.length).toBeGreaterThan(5);
			expect(model.summary).not.toMatch(/NaN|undefined/);
		}
	});
	const at = {
		profile: profileOf(),
		gameId: "snooker",
		reader: METRIC,
	} as const;
	test("at the centre nothing spins or deflects, and there is no pivot", () => {
		const spin = spinChart({ ...at, cueSpeedMPerS: 2 });
		const deflection = deflectionChart(at);
		expect(spin.panels[1]?.lines[0]?.points[0]).toMatchObject({ x: 0, y: 0 });
		expect(deflection.panels[0]?.lines[0]?.points[0]?.y).toBe(0);
		expect(deflection.panels[1]?.lines[0]?.points[0]?.x).toBeGreaterThan(0);
		expect(deflection.table.rows[0]?.[2]).toBe("–");
		expect(spin.table.rows).toHaveLength(13);
	});
	test("the reach is marked at the miscue limit, half a radius on a 52.5 mm ball", () => {
		for (const model of [
			spinChart({ ...at, cueSpeedMPerS: 2 }),
			deflectionChart(at),
		])
			for (const { zones } of model.panels)
				expect(zones[0]?.from).toBeCloseTo(13.125, 3);
	});
	test("summaries tell the figures of half a radius", () => {
		const half = at.profile.offsets.find(
			({ offsetRatio }) => offsetRatio === 0.5,
		);
		expect(plain(spinChart({ ...at, cueSpeedMPerS: 2 }).summary)).toContain(
			`spins ${half?.spinRevPerS.value.toFixed(0)} times`,
		);
		expect(plain(deflectionChart(at).summary)).toContain(
			`leaves ${half?.squirtDeg.value.toFixed(1)}° off`,
		);
	});
});
