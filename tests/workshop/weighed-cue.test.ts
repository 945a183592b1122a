import { describe, expect, test } from "vitest";
import { impliedDensities } from "@/lib/build/implied-densities";
import type { BilletDensities } from "@/lib/cue/design";
import { weighCue } from "@/lib/cue/mass";
import { must } from "@/lib/numerics/outcome";
import type { JobContent } from "@/lib/workshop/job-content";
import {
	densitiesSaid,
	predictionOf,
	weighedCue,
} from "@/lib/workshop/weighed-cue";
import { cue58 } from "../support/designs";
import { askedContent } from "./support/jobs";

const { build } = askedContent();
const HEAVY: BilletDensities = {
	"white-ash": { kgM3: 715, sd: 0 },
	"gaboon-ebony": { kgM3: 1010, sd: 0 },
};
const bare = (densities: BilletDensities) =>
	weighCue({ ...build.design, addedWeight: [], plugs: [], densities });
const read = (mass: ReturnType<typeof weighCue>) => ({
	massG: mass.massG.value,
	balanceFromButtMm: mass.balanceFromButtMm.value,
});
const evidence = (
	of: JobContent["build"],
	stage: "before-weighting" | "finished",
	readings: Parameters<typeof weighedCue>[2],
) => must(densitiesSaid(must(weighedCue(of, stage, readings)), {})).woods;

describe("weighedCue", () => {
	test("before weighting is the cue without metal", () => {
		const { design, massG } = must(
			weighedCue(build, "before-weighting", read(bare({}))),
		);
		expect(design.addedWeight).toEqual([]);
		expect(massG).toBeCloseTo(build.naturalMassG.value, 6);
	});

	test("a finished cue with less metal in it says the same of its woods as before weighting", () => {
		const before = evidence(build, "before-weighting", read(bare(HEAVY)));
		// The bench puts in what the heavier blank leaves to be added, in the planned place.
		const { metalMassG } = build.addedWeight;
		const planned = weighCue({ ...build.design, densities: HEAVY });
		const tooMuchG = planned.massG.value - build.targets.mass.value;
		const metal = build.design.addedWeight.at(0);
		if (metal === undefined) throw new Error("the build has metal");
		const metalFromButtMm =
			build.design.lengthMm - (metal.fromStationMm + metal.toStationMm) / 2;
		const massG = planned.massG.value - tooMuchG;
		const after = evidence(build, "finished", {
			massG,
			balanceFromButtMm:
				(planned.massG.value * planned.balanceFromButtMm.value -
					tooMuchG * metalFromButtMm) /
				massG,
			metalMassG: metalMassG - tooMuchG,
		});
		expect(massG).toBeCloseTo(540, 6);
		for (const { wood, evidenceKgM3 } of after) {
			const other = before.find((one) => one.wood === wood)?.evidenceKgM3;
			expect(evidenceKgM3?.kgM3).toBeCloseTo(other?.kgM3 ?? Number.NaN, -1);
			expect(
				Math.abs((evidenceKgM3?.kgM3 ?? 0) - (HEAVY[wood]?.kgM3 ?? 0)),
			).toBeLessThan(0.1 * (evidenceKgM3?.sd ?? 0) + 1);
		}
	});

	test.each([
		["turned", { massG: 500, balanceFromButtMm: 430 }, "stage-tells-nothing"],
		["finished", { balanceFromButtMm: 430 }, "not-weighed"],
		["before-weighting", { massG: 500 }, "not-weighed"],
		["finished", { massG: 540, balanceFromButtMm: 430 }, "metal-not-told"],
	] as const)("%s with %o is refused: %s", (stage, readings, code) => {
		const outcome = weighedCue(build, stage, readings);
		expect(outcome.ok ? "" : outcome.refusals[0]?.code).toBe(code);
	});

	test("metal where none was planned cannot be placed", () => {
		const plain = askedContent({}, Math.round(build.naturalMassG.value));
		const light = {
			...plain.build,
			addedWeight: { ...plain.build.addedWeight, metalMassG: 0 },
		};
		const outcome = weighedCue(light, "finished", {
			massG: 500,
			balanceFromButtMm: 430,
			metalMassG: 20,
		});
		expect(outcome.ok ? "" : outcome.refusals[0]?.code).toBe(
			"metal-not-planned",
		);
	});
});

describe("what the readings say by themselves", () => {
	test("is what is found from next to no knowledge of that wood beforehand", () => {
		const readings = read(bare(HEAVY));
		const design = must(weighedCue(build, "before-weighting", readings)).design;
		for (const { wood, evidenceKgM3 } of evidence(
			build,
			"before-weighting",
			readings,
		)) {
			const blank = must(
				impliedDensities({
					design: { ...design, densities: { [wood]: { kgM3: 800, sd: 1e5 } } },
					massG: { value: readings.massG },
					balanceFromButtMm: { value: readings.balanceFromButtMm },
				}),
			).woods.find((one) => one.wood === wood)?.impliedKgM3;
			expect(evidenceKgM3?.kgM3).toBeCloseTo(blank?.value ?? Number.NaN, 2);
			expect(evidenceKgM3?.sd).toBeCloseTo(blank?.sd ?? Number.NaN, 2);
		}
	});

	test("a wood that is hardly in the cue says nothing", () => {
		const design = cue58({
			splicing: {
				points: { veneers: [{ wood: "sugar-maple", thicknessMm: 0.6 }] },
			},
		});
		const mass = weighCue(design);
		const { woods } = must(
			impliedDensities({
				design,
				massG: { value: mass.massG.value },
				balanceFromButtMm: { value: mass.balanceFromButtMm.value },
			}),
		);
		const of = (wood: string) => woods.find((one) => one.wood === wood);
		expect(of("sugar-maple")?.evidenceKgM3).toBeNull();
		expect(of("white-ash")?.evidenceKgM3).not.toBeNull();
	});

	test("a billet weighed before the saw narrows it", () => {
		const cue = must(weighedCue(build, "before-weighting", read(bare(HEAVY))));
		const sdOf = (billets: BilletDensities) =>
			must(densitiesSaid(cue, billets)).woods.find(
				({ wood }) => wood === "gaboon-ebony",
			)?.evidenceKgM3?.sd ?? Number.NaN;
		const alone = sdOf({});
		const both = sdOf({ "gaboon-ebony": { kgM3: 1008, sd: 12 } });
		expect(both).toBeLessThan(alone);
		// Two readings of one thing: their precisions add, the scale's and the billet's.
		expect(1 / both ** 2).toBeCloseTo(1 / alone ** 2 + 1 / 144, 3);
	});

	test("a wild reading is refused, and taken when that is asked for", () => {
		const cue = must(
			weighedCue(build, "before-weighting", {
				massG: 620,
				balanceFromButtMm: 400,
			}),
		);
		const asked = densitiesSaid(cue, {});
		expect(asked.ok ? "" : asked.refusals[0]?.code).toBe("not-this-build");
		expect(densitiesSaid(cue, {}, true).ok).toBe(true);
	});
});

test("the prediction is that of the design as ordered, with the errors of reading it", () => {
	const natural = bare({});
	const cue = must(weighedCue(build, "before-weighting", read(bare(HEAVY))));
	const { mass, balance } = predictionOf(cue);
	expect(mass.expected).toBeCloseTo(natural.massG.value, 6);
	expect(mass.measured).toBeGreaterThan(mass.expected);
	expect(mass.sd).toBeGreaterThan(natural.massG.sd);
	expect(balance.sd).toBeCloseTo(
		Math.hypot(natural.balanceFromButtMm.sd, 1.5, 2),
		9,
	);
});
