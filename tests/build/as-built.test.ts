import { describe, expect, test } from "vitest";
import {
	type AsBuiltReadings,
	BENCH_STAGES,
	type BenchStage,
	type BuildToHold,
	compareAsBuilt,
} from "@/lib/build/as-built";
import { FINISHED_TOLERANCE } from "@/lib/build/tolerance";
import { sheetView } from "@/lib/present/sheet-view";
import { GRAMS_PER_OUNCE } from "@/lib/units/quantity";
import { METRIC } from "../support/readers";
import { askedContent } from "../workshop/support/jobs";

const { build } = askedContent();
const target = (id: keyof BuildToHold["targets"]) => build.targets[id].value;
const found = (stage: BenchStage, readings: AsBuiltReadings) =>
	compareAsBuilt(build, readings, stage);
const one = (stage: BenchStage, readings: AsBuiltReadings) => {
	const { findings } = found(stage, readings);
	const [finding] = findings;
	if (finding === undefined || findings.length > 1)
		throw new Error(`${findings.length} findings`);
	return finding;
};

describe("the finished cue", () => {
	test.each([
		["lengthMm", "length", FINISHED_TOLERANCE.lengthMm],
		["massG", "mass", FINISHED_TOLERANCE.massG],
		["balanceFromButtMm", "balance", FINISHED_TOLERANCE.balanceMm],
		["buttDiameterMm", "butt", FINISHED_TOLERANCE.diameterMm],
		["tipDiameterMm", "tip", FINISHED_TOLERANCE.diameterMm],
	] as const)(
		"%s is held to the sheet's tolerance to either side",
		(name, figure, tolerance) => {
			for (const sign of [-1, 1]) {
				const at = (by: number) =>
					one("finished", { [name]: target(figure) + sign * by });
				expect(at(tolerance).isOut).toBe(false);
				expect(at(tolerance + 0.01).isOut).toBe(true);
				expect(at(tolerance + 0.01).deviation).toBeCloseTo(
					sign * (tolerance + 0.01),
					9,
				);
			}
		},
	);

	test("is held to what the job sheet prints", () => {
		const sheet = sheetView(build, METRIC);
		const { findings } = found("finished", {
			lengthMm: 1,
			massG: 1,
			balanceFromButtMm: 1,
			buttDiameterMm: 1,
			tipDiameterMm: 1,
		});
		const printed = (tolerance: number) =>
			sheet.summary
				.map(({ allowed }) => Number(/[\d.]+/.exec(allowed)?.[0]))
				.includes(tolerance);
		for (const { tolerance } of findings) expect(printed(tolerance)).toBe(true);
		expect(
			sheet.stations.map(({ tolerance }) =>
				Number(/[\d.]+/.exec(tolerance)?.[0]),
			),
		).toEqual(
			build.stations.map(
				({ stationMm }) =>
					one("finished", { stations: [{ stationMm, diameterMm: 20 }] })
						.tolerance,
			),
		);
	});

	test("a bound met in ounces is met", () => {
		const ounces =
			(target("mass") + FINISHED_TOLERANCE.massG) / GRAMS_PER_OUNCE;
		expect(one("finished", { massG: ounces * GRAMS_PER_OUNCE }).isOut).toBe(
			false,
		);
	});

	test("one figure out of five puts the cue out", () => {
		const readings = {
			lengthMm: target("length"),
			massG: target("mass") + 12,
			balanceFromButtMm: target("balance"),
		};
		const comparison = found("finished", readings);
		expect(comparison.isWithin).toBe(false);
		expect(
			comparison.findings
				.filter(({ isOut }) => isOut)
				.map(({ figure }) => figure),
		).toEqual(["mass"]);
		expect(
			found("finished", { ...readings, massG: target("mass") }),
		).toMatchObject({ isWithin: true });
	});

	test("a diameter is held where the sheet has its station, and nowhere else", () => {
		const [, station] = build.stations;
		if (station === undefined) throw new Error("a sheet has stations");
		const { stationMm, diameterMm, toleranceMm, fromButtMm } = station;
		expect(
			one("finished", {
				stations: [{ stationMm, diameterMm: diameterMm + toleranceMm + 0.02 }],
			}),
		).toMatchObject({ figure: "diameter", stationMm, fromButtMm, isOut: true });
		expect(
			found("finished", { stations: [{ stationMm: 3, diameterMm }] }),
		).toEqual({ findings: [], isWithin: true, unplacedStationsMm: [3] });
	});
});

describe("before it is finished", () => {
	test("the blank may be longer and thicker, not shorter or thinner", () => {
		const [station] = build.stations;
		if (station === undefined) throw new Error("a sheet has stations");
		const { stationMm, diameterMm } = station;
		const woodMm = target("length") - build.design.tip.heightMm;
		const blank = (lengthMm: number, moreMm: number) =>
			found("blank-glued", {
				lengthMm,
				massG: 1200,
				stations: [{ stationMm, diameterMm: diameterMm + moreMm }],
			});
		expect(blank(woodMm + 60, 8).isWithin).toBe(true);
		expect(blank(woodMm - 4, 8).isWithin).toBe(false);
		expect(blank(woodMm + 60, -1).isWithin).toBe(false);
		expect(blank(woodMm, 8).findings.map(({ figure }) => figure)).toEqual([
			"length",
			"diameter",
		]);
	});

	test("before weighting a cue too light is none too light, one too heavy is", () => {
		expect(one("before-weighting", { massG: 430 }).isOut).toBe(false);
		expect(one("before-weighting", { massG: target("mass") + 8 }).isOut).toBe(
			true,
		);
	});

	test("before weighting the balance is told against the natural one and held to nothing", () => {
		const { value } = build.naturalBalanceFromButtMm;
		expect(
			one("before-weighting", { balanceFromButtMm: value + 40 }),
		).toMatchObject({ wanted: value, hold: "none", isOut: false });
	});

	test("no readings, no findings; no stage forgets a reading given", () => {
		for (const stage of BENCH_STAGES)
			expect(found(stage, {})).toMatchObject({ findings: [], isWithin: true });
	});
});
