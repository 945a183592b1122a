import { describe, expect, test } from "vitest";
import type { BilletDensities, BilletDensity } from "@/lib/cue/design";
import { weighCue } from "@/lib/cue/mass";
import { must } from "@/lib/numerics/outcome";
import { Z90 } from "@/lib/reference/estimate";
import type { WoodId } from "@/lib/reference/woods";
import {
	densitiesSaid,
	predictionOf,
	type WeighedCue,
} from "@/lib/workshop/weighed-cue";
import {
	type DensityReading,
	isWild,
	surpriseOf,
	tableDensity,
	WOOD_PRIOR,
	woodBand,
} from "@/lib/workshop/wood-evidence";
import { normals, seeded } from "../cue/support/random";
import { cue } from "../support/designs";

const ash = tableDensity("white-ash");

describe("woodBand", () => {
	test("without evidence is the table's own band, to the last digit", () => {
		const { next, readings } = woodBand(ash, []);
		expect(next).toEqual(ash);
		expect(readings).toBe(0);
	});

	test("withdrawing what came last gives back what stood before, to the last digit", () => {
		const kept = [
			{ kgM3: 701, sd: 9 },
			{ kgM3: 722, sd: 12 },
		];
		const before = woodBand(ash, kept);
		expect(woodBand(ash, [...kept, { kgM3: 650, sd: 9 }])).not.toEqual(before);
		expect(woodBand(ash, [...kept])).toEqual(before);
	});

	test("one cue already moves the band, ten settle it", () => {
		const one = woodBand(ash, [{ kgM3: 740, sd: 10 }]);
		expect(one.next.kgM3).toBeGreaterThan(690);
		expect(one.next.kgM3).toBeLessThan(740);
		const ten = woodBand(
			ash,
			Array.from({ length: 10 }, (_, i) => ({
				kgM3: 740 + 18 * (i % 2 === 0 ? 1 : -1),
				sd: 10,
			})),
		);
		expect(Math.abs(ten.next.kgM3 - 740)).toBeLessThan(8);
		expect(ten.mean.sd).toBeLessThan(one.mean.sd);
		expect(ten.next.sd).toBeLessThan(one.next.sd);
	});

	test.each([0.25, 0.75])(
		"after thirty cues it matters little that workshops were taken to differ by half of the spread, and not by %f of it",
		(share) => {
			const readings = thirty();
			const asSet = woodBand(ash, readings).next;
			// Moved by asking for the same ω and τ from a table of another spread: ω²/σ² is the share.
			const { betweenWorkshops } = WOOD_PRIOR;
			const other = woodBand(
				{ ...ash, sd: ash.sd * Math.sqrt(share / betweenWorkshops) },
				readings,
			).next;
			expect(Math.abs(other.kgM3 - asSet.kgM3)).toBeLessThan(3);
			expect(Math.abs(other.sd - asSet.sd) / asSet.sd).toBeLessThan(0.12);
		},
	);

	test("asks about a wild value, and only about one", () => {
		const band = woodBand(ash, thirty());
		expect(isWild(band, { kgM3: band.next.kgM3 + 40, sd: 10 })).toBe(false);
		const wild = { kgM3: band.next.kgM3 + 160, sd: 10 };
		expect(surpriseOf(band, wild)).toBeGreaterThan(WOOD_PRIOR.maxSurprise);
		expect(isWild(band, wild)).toBe(true);
	});
});

function thirty(): DensityReading[] {
	const normal = normals(seeded(3));
	return Array.from({ length: 30 }, () => ({
		kgM3: 735 + 25 * normal() + 9 * normal(),
		sd: 9,
	}));
}

/** A workshop whose timber is not the tables': heavier ash, lighter ebony, both picked closely. */
const TRUE: Partial<Record<WoodId, BilletDensity>> = {
	"white-ash": { kgM3: 725, sd: 22 },
	"gaboon-ebony": { kgM3: 900, sd: 30 },
};
const WOODS_USED = Object.keys(TRUE) as WoodId[];
const LENGTHS_MM = [1440, 1460, 1473, 1486];
const SHAPES = LENGTHS_MM.map((lengthMm) => ({
	lengthMm,
	at: (densities: BilletDensities) => cue({ lengthMm, densities }),
}));

/** Orders a hundred cues one after another, each predicted with what the ones before it taught. */
function hundredBuilds(seed: number) {
	const uniform = seeded(seed);
	const normal = normals(uniform);
	const evidence = new Map<WoodId, DensityReading[]>(
		WOODS_USED.map((wood) => [wood, []]),
	);
	const bands = () =>
		Object.fromEntries(
			WOODS_USED.map((wood) => [
				wood,
				woodBand(tableDensity(wood), evidence.get(wood) ?? []).next,
			]),
		) as BilletDensities;
	const builds = Array.from({ length: 100 }, () => {
		const shape = SHAPES[Math.floor(uniform() * SHAPES.length)];
		if (shape === undefined) throw new RangeError("no shape");
		const ordered = shape.at(bands());
		const real = weighCue(
			shape.at(
				Object.fromEntries(
					WOODS_USED.map((wood) => {
						const { kgM3 = 0, sd = 0 } = TRUE[wood] ?? {};
						return [wood, { kgM3: kgM3 + sd * normal(), sd: 0 }];
					}),
				),
			),
		);
		const weighed: WeighedCue = {
			design: ordered,
			massG: real.massG.value * (1 + 0.005 * normal()) + 0.5 * normal(),
			balanceFromButtMm:
				real.balanceFromButtMm.value + 2 * normal() + 1.5 * normal(),
		};
		const prediction = predictionOf(weighed);
		const said = densitiesSaid(weighed, {}, true);
		for (const { wood, evidenceKgM3 } of must(said).woods)
			if (evidenceKgM3) evidence.get(wood)?.push(evidenceKgM3);
		return prediction;
	});
	return { builds, bands: bands(), evidence };
}

const runs = [1, 2, 3, 4, 5, 6, 7, 8].map(hundredBuilds);
type Build = (typeof runs)[number]["builds"][number];

describe("a hundred builds of a workshop whose timber is not the tables'", () => {
	test.each(["mass", "balance"] as const)(
		"nine in ten of the %s bands hold what came out",
		(figure) => {
			const share = (builds: readonly Build[]) =>
				builds.filter(
					({ [figure]: { expected, sd, measured } }) =>
						Math.abs(measured - expected) <= Z90 * sd,
				).length / builds.length;
			// Binomial, p 0.9: SD 0.0106 of 800 and 0.015 of 400. The first bands are wide and hold more.
			const all = runs.flatMap(({ builds }) => builds);
			expect(share(all)).toBeGreaterThan(0.9 - 3 * 0.0106);
			const later = runs.flatMap(({ builds }) => builds.slice(50));
			expect(share(later)).toBeGreaterThan(0.9 - 3 * 0.015);
			expect(share(later)).toBeLessThan(0.9 + 3 * 0.015);
		},
	);

	test.each([
		["mass", 0.6],
		["balance", 0.75],
	] as const)("the %s band narrows with use", (figure, least) => {
		for (const { builds } of runs) {
			const widths = builds.map((build) => build[figure].sd);
			const mean = (from: number, to: number) =>
				widths.slice(from, to).reduce((sum, one) => sum + one, 0) / (to - from);
			expect(mean(10, 30) / (widths[0] ?? 0)).toBeLessThan(least);
			expect(mean(80, 100)).toBeLessThan(mean(10, 30));
		}
	});

	test("each wood's band comes to the workshop's own mean and spread", () => {
		for (const { bands, evidence } of runs)
			for (const wood of WOODS_USED) {
				const { kgM3 = 0, sd = 0 } = TRUE[wood] ?? {};
				const { mean } = woodBand(tableDensity(wood), evidence.get(wood) ?? []);
				expect(Math.abs(mean.kgM3 - kgM3)).toBeLessThan(4 * mean.sd);
				expect(bands[wood]?.sd).toBeGreaterThan(0.75 * sd);
				expect(bands[wood]?.sd).toBeLessThan(1.35 * sd);
			}
	});
});
