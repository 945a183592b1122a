import { describe, expect, test } from "vitest";
import { geometryTable } from "@/lib/advice/geometry-table";
import { solvePairs } from "@/lib/advice/keep-pairs";
import {
	type LikeMine,
	type LikeMineChange,
	likeMineBut,
	stiffnessKept,
} from "@/lib/advice/like-mine-advice";
import { inertiaAboutKgM2, type Load } from "@/lib/advice/loading";
import { withMetal } from "@/lib/build/bore";
import { inertiaAboutStationKgM2, weighCue } from "@/lib/cue/mass";
import { densityKgM3 } from "@/lib/cue/materials";
import { droopClampedAt } from "@/lib/mechanics/droop";
import { beamProfileOf } from "@/lib/mechanics/profile";
import { must } from "@/lib/numerics/outcome";
import { inchesToMm } from "@/lib/units/quantity";
import { cue } from "../support/designs";

const reading = {
	lengthMm: inchesToMm(58),
	massG: 510,
	balanceFromButtMm: 430,
	tipDiameterMm: 9.5,
	diameters: [
		{ fromButtMm: 0, diameterMm: 29 },
		{ fromButtMm: 300, diameterMm: 24.5 },
		{ fromButtMm: 700, diameterMm: 18.5 },
		{ fromButtMm: 1100, diameterMm: 13 },
	],
	gripFromButtMm: 100,
	shaftWood: "white-ash",
	buttWood: "gaboon-ebony",
	splice: "hand-four-point",
	layout: "three-quarter",
} as const;
const changed = (change: LikeMineChange): LikeMine =>
	must(likeMineBut({ reading, change }));

describe("like mine, but…", () => {
	test("nothing changed: everything is kept, and the cue is the present one", () => {
		const same = changed({});
		expect(same.cannotKeep).toEqual([]);
		const [variant] = same.variants;
		const [pair] = variant?.pairs ?? [];
		expect(pair?.isMet).toBe(true);
		expect(pair?.mass.becomes).toBeCloseTo(510, 3);
		expect(pair?.balance.becomes).toBeCloseTo(430, 1);
		expect(
			Math.abs(
				(pair?.inertia.becomes ?? 0) / same.now.inertiaAboutGripKgM2.value - 1,
			),
		).toBeLessThan(0.01);
		expect(variant?.stiffness.becomes).toBeCloseTo(same.now.giveMmPerN, 6);
	});

	test("a pair that is met, made by the bench's own model, is that weight, balance and inertia", () => {
		for (const change of [{ lengthMm: inchesToMm(57) }, { massG: 480 }, {}]) {
			const { variants, gripFromButtMm } = changed(change);
			for (const { design, pairs } of variants)
				for (const pair of pairs) {
					const finished = weighCue(
						pair.metalG === 0
							? design
							: withMetal(design, {
									metal: "brass",
									end: {
										diameterMm: pair.boreDiameterMm,
										slugLengthMm: pair.slugLengthMm,
										slugFromButtMm: pair.slugFromButtMm,
									},
									joint: null,
								}),
					);
					expect(finished.massG.value).toBeCloseTo(pair.mass.becomes, 3);
					expect(finished.balanceFromButtMm.value).toBeCloseTo(
						pair.balance.becomes,
						2,
					);
					expect(
						inertiaAboutStationKgM2(finished, design.lengthMm - gripFromButtMm)
							.value,
					).toBeCloseTo(pair.inertia.becomes, 5);
					if (!pair.isMet) continue;
					for (const name of pair.keeps)
						expect(
							Math.abs(pair[name].becomes / pair[name].was - 1),
						).toBeLessThan(2e-4);
				}
		}
	});

	test("pairs come nearest first", () => {
		const { variants } = changed({ lengthMm: inchesToMm(56) });
		for (const { pairs } of variants) {
			const misses = pairs.map(({ feltMiss }) => feltMiss);
			expect([...misses].sort((a, b) => a - b)).toEqual(misses);
			expect(pairs).toHaveLength(3);
		}
	});

	test("much shorter at the same weight and balance cannot turn the same, and says so", () => {
		const { cannotKeep, variants } = changed({
			lengthMm: inchesToMm(50),
			massG: 510,
		});
		expect(cannotKeep.length).toBeGreaterThan(0);
		const [nearest] = variants[0]?.pairs ?? [];
		expect(nearest?.feltMiss).toBeGreaterThan(1);
	});

	test("a slimmer butt gives more, unless the shaft is filled out to match", () => {
		const { variants } = changed({ buttDiameterMm: 27 });
		expect(variants.map(({ taper }) => taper)).toEqual([
			"stiffness-kept",
			"stretched",
		]);
		const [kept, stretched] = variants;
		expect(stretched?.stiffness.becomes).toBeGreaterThan(
			stretched?.stiffness.was ?? 0,
		);
		expect(stretched?.stiffness.isKept).toBe(false);
		expect(kept?.stiffness.becomes).toBeCloseTo(kept?.stiffness.was ?? 0, 3);
	});

	test("the hand keeps its place from the tip, within its limits of the butt end", () => {
		expect(changed({ lengthMm: inchesToMm(57.5) }).gripFromButtMm).toBeCloseTo(
			100 - 12.7,
			6,
		);
		expect(changed({ lengthMm: inchesToMm(54) }).gripFromButtMm).toBe(60);
		expect(changed({ lengthMm: inchesToMm(62) }).gripFromButtMm).toBe(180);
	});

	test("a change no cue can have is refused with its bound", () => {
		const found = likeMineBut({ reading, change: { buttDiameterMm: 40 } });
		if (found.ok) throw new Error("expected a refusal");
		expect(found.refusals).toMatchObject([
			{ field: "buttDiameterMm", value: 40, max: 34 },
		]);
	});
	test("readings no usual build gives are refused", () => {
		const found = likeMineBut({
			reading: { ...reading, balanceFromButtMm: 700 },
			change: {},
		});
		if (found.ok) throw new Error("expected a refusal");
		expect(found.refusals[0]?.code).toBe("not-explained");
	});
});

describe("stiffness kept by the shaft's middle", () => {
	test("the finite elements agree that the tip gives as wanted", () => {
		const design = cue();
		const wanted = { handMm: 110, giveMmPerN: 7.4 };
		const found = stiffnessKept(design, wanted);
		if (!found) throw new Error("not found");
		expect(
			droopClampedAt({
				profile: beamProfileOf(found),
				axis: "x",
				clampStationMm: found.lengthMm - wanted.handMm,
			}).tipGiveMmPerN,
		).toBeCloseTo(7.4, 3);
	});
	test("what no filling out reaches is null", () => {
		expect(stiffnessKept(cue(), { handMm: 110, giveMmPerN: 0.5 })).toBeNull();
	});
});

// A dense grid over drills, places and lengths, sharing only the sums of one load with the solver.
test("no load on a dense grid comes nearer to any wanted pair", () => {
	const design = cue({ buttWood: "indian-rosewood" });
	const table = geometryTable({ design, clampStationMm: 1350 });
	const densities = {
		shaft: densityKgM3(design, "white-ash").value * 1e-6,
		butt: densityKgM3(design, "indian-rosewood").value * 1e-6,
		metal: densityKgM3(design, "brass").value * 1e-6,
	};
	const handMm = 110;
	const target = { massG: 545, balanceMm: 395, inertiaKgM2: 0.098 };
	const { pairs } = solvePairs({ table, densities, handMm, target });
	const loads: Load[] = [];
	for (const { diameterMm, depthMm } of table.bores)
		for (let from = 15; from < depthMm; from += 6)
			for (let length = 2; from + length <= depthMm; length += 6) {
				const mass = weighCue(
					withMetal(design, {
						metal: "brass",
						end: { diameterMm, slugLengthMm: length, slugFromButtMm: from },
						joint: null,
					}),
				);
				const massG = mass.massG.value;
				if (Math.abs(massG - target.massG) > 60) continue;
				loads.push({
					massG,
					firstGMm: massG * mass.balanceFromButtMm.value,
					secondGMm2:
						inertiaAboutStationKgM2(mass, design.lengthMm).value * 1e9,
					metalG: 0,
					boreDiameterMm: diameterMm,
					slugLengthMm: length,
					slugFromButtMm: from,
				});
			}
	expect(loads.length).toBeGreaterThan(500);
	const misses = {
		mass: (one: { massG: number }) => one.massG / target.massG - 1,
		balance: (one: { balanceMm: number }) =>
			one.balanceMm / target.balanceMm - 1,
		inertia: (one: { inertiaKgM2: number }) =>
			one.inertiaKgM2 / target.inertiaKgM2 - 1,
	};
	const gridded = loads.map((load) => ({
		massG: load.massG,
		balanceMm: load.firstGMm / load.massG,
		inertiaKgM2: inertiaAboutKgM2(load, handMm),
	}));
	for (const pair of pairs) {
		// A pair with the weight in it has that weight; only what it keeps beside it can be missed.
		const keepsMass = pair.keeps.includes("mass");
		if (keepsMass) expect(pair.massG).toBeCloseTo(target.massG, 3);
		const rivals = keepsMass
			? gridded.filter(({ massG }) => Math.abs(massG - target.massG) < 0.7)
			: gridded;
		expect(rivals.length).toBeGreaterThan(10);
		const names = pair.keeps.filter((name) => name !== "mass");
		const missOf = (one: (typeof gridded)[number]) =>
			Math.hypot(...names.map((name) => misses[name](one)));
		const best = Math.min(...rivals.map(missOf));
		expect(missOf(pair), pair.keeps.join()).toBeLessThan(best + 2e-3);
	}
}, 60_000);
