import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planAddedWeight } from "@/lib/build/added-weight";
import { splicePointStationsMm } from "@/lib/build/stations";
import type { CueDesign } from "@/lib/cue/design";
import { changedCue } from "@/lib/cue/like-mine";
import { inertiaAboutStationKgM2, weighCue } from "@/lib/cue/mass";
import { fitPresentCue } from "@/lib/cue/present-cue";
import type { PresentCue } from "@/lib/cue/present-reading";
import { bendingSectionAt } from "@/lib/cue/section";
import { diameterAtMm } from "@/lib/cue/taper";
import { must } from "@/lib/numerics/outcome";
import { anyRequest, cue58 } from "../support/designs";

/** What a player would read off a cue of this project, with its true figures beside. */
function read(design: CueDesign): PresentCue {
	const mass = weighCue(design);
	return {
		lengthMm: design.lengthMm,
		massG: mass.massG.value,
		balanceFromButtMm: mass.balanceFromButtMm.value,
		tipDiameterMm: diameterAtMm(design, 0),
		diameters: [0, 450, 900].map((fromButtMm) => ({
			fromButtMm,
			diameterMm: diameterAtMm(design, design.lengthMm - fromButtMm),
		})),
		gripFromButtMm: 120,
	};
}

const MADE: readonly (readonly [string, CueDesign])[] = [
	[
		"ebony, hand splice, weighted to 18 oz",
		must(planAddedWeight({ design: cue58(), wantedMassG: 510 })).finished,
	],
	[
		"rosewood, machine splice, one piece, weighted",
		must(
			planAddedWeight({
				design: cue58({
					buttWood: "indian-rosewood",
					splice: "machine-four-point",
					layout: "one-piece",
				}),
				wantedMassG: 480,
			}),
		).finished,
	],
	["unweighted Macassar ebony", cue58({ buttWood: "macassar-ebony" })],
	[
		"maple and walnut, full forward, dense billets",
		cue58({
			shaftWood: "sugar-maple",
			buttWood: "black-walnut",
			taperShape: "full-forward",
			densities: { "sugar-maple": { kgM3: 760, sd: 0 } },
		}),
	],
];

describe("fitPresentCue", () => {
	it.each(MADE)(
		"%s: inertia and stiffness within its bands, build unknown",
		(_name, design) => {
			const truth = weighCue(design);
			const fit = must(fitPresentCue(read(design)));
			const inBand = (
				band: { value: number; sd: number },
				value: number,
				sds = 2,
			) => expect(Math.abs(band.value - value)).toBeLessThan(sds * band.sd);
			inBand(fit.inertiaAboutBalanceKgM2, truth.inertiaAboutBalanceKgM2.value);
			if (!fit.inertiaAboutGripKgM2) throw new Error("a grip was given");
			inBand(
				fit.inertiaAboutGripKgM2,
				inertiaAboutStationKgM2(truth, design.lengthMm - 120).value,
			);
			inBand(fit.inertiaAboutAxisKgM2, truth.inertiaAboutAxisKgM2.value);
			for (const { stationMm, stiffnessNm2 } of fit.stiffness)
				inBand(stiffnessNm2, bendingSectionAt(design, stationMm).stiffnessXNm2);
			// Weight and balance tie the inertia to within some per cent, the stiffness less well.
			expect(
				fit.inertiaAboutBalanceKgM2.sd / fit.inertiaAboutBalanceKgM2.value,
			).toBeLessThan(0.09);
			expect(fit.cautions[0]?.code).toBe("build-guessed");
		},
	);

	it("returns a design that weighs and balances as read", () => {
		for (const [, design] of MADE) {
			const readings = read(design);
			const found = weighCue(must(fitPresentCue(readings)).design);
			expect(Math.abs(found.massG.value / readings.massG - 1)).toBeLessThan(
				0.01,
			);
			expect(
				Math.abs(found.balanceFromButtMm.value - readings.balanceFromButtMm),
			).toBeLessThan(4);
		}
	});

	it("narrows when the build is known", () => {
		const [, design] = MADE[0] ?? [];
		if (!design) throw new Error("a cue was expected");
		const vague = must(fitPresentCue(read(design)));
		const known = must(
			fitPresentCue({
				...read(design),
				shaftWood: "white-ash",
				buttWood: "gaboon-ebony",
				splice: "hand-four-point",
				layout: "three-quarter",
			}),
		);
		expect(known.inertiaAboutBalanceKgM2.sd).toBeLessThan(
			0.8 * vague.inertiaAboutBalanceKgM2.sd,
		);
		expect(known.cautions).toEqual([]);
		expect(known.addedMassG.value).toBeGreaterThan(100);
		expect(known.addedMassG.value).toBeLessThan(180);
	});

	it("sees metal in a heavy cue and little in a light one", () => {
		const [weighted, , unweighted] = MADE.map(([, design]) =>
			must(fitPresentCue(read(design))),
		);
		expect(weighted?.addedMassG.value).toBeGreaterThan(
			2 * (unweighted?.addedMassG.value ?? 0),
		);
	});

	it("refuses readings no usual build gives, with the nearest", () => {
		const readings = read(cue58());
		const outcome = fitPresentCue({
			...readings,
			massG: 900,
			balanceFromButtMm: 800,
		});
		expect(outcome.ok).toBe(false);
		if (outcome.ok) return;
		expect(outcome.refusals[0]).toMatchObject({
			code: "not-explained",
			field: "massG",
			value: 900,
		});
		expect(outcome.refusals[0]?.facts?.nearestMassG).toBeTypeOf("number");
	});

	it.each([
		[{ lengthMm: 100 }, "lengthMm"],
		[{ massG: 50 }, "massG"],
		[{ balanceFromButtMm: 1200 }, "balanceFromButtMm"],
		[{ diameters: [{ fromButtMm: 0, diameterMm: 29 }] }, "diameters"],
		[
			{
				diameters: [
					{ fromButtMm: 200, diameterMm: 25 },
					{ fromButtMm: 450, diameterMm: 22 },
					{ fromButtMm: 900, diameterMm: 15 },
				],
			},
			"diameters.butt.fromButtMm",
		],
		[
			{
				diameters: [
					{ fromButtMm: 0, diameterMm: 29 },
					{ fromButtMm: 450, diameterMm: 15 },
					{ fromButtMm: 900, diameterMm: 22 },
				],
			},
			"diameters.1.diameterMm",
		],
	])("refuses %j", (change, field) => {
		const outcome = fitPresentCue({ ...read(cue58()), ...change });
		expect(outcome.ok).toBe(false);
		if (outcome.ok) return;
		expect(outcome.refusals.map((refusal) => refusal.field)).toContain(field);
	});
});

describe("changedCue", () => {
	it("is the same cue when nothing is changed", () => {
		const design = cue58({ splice: "machine-four-point" });
		const same = must(changedCue(design, {}));
		expect(weighCue(same).massG.value).toBeCloseTo(
			weighCue(design).massG.value,
			9,
		);
	});

	it("makes a longer one heavier, a slimmer one lighter, and keeps the points on the surface", () => {
		fc.assert(
			fc.property(anyRequest, (request) => {
				const design = cue58({
					...request,
					lengthMm: Math.min(1500, request.lengthMm),
					buttDiameterMm: Math.max(request.buttDiameterMm, 26),
				});
				fc.pre(request.tipDiameterMm < 15);
				const mass = weighCue(design).massG.value;
				const longer = must(
					changedCue(design, { lengthMm: design.lengthMm + 25 }),
				);
				expect(weighCue(longer).massG.value).toBeGreaterThan(mass);
				const buttMm = diameterAtMm(design, design.lengthMm);
				const slimmer = must(
					changedCue(design, { buttDiameterMm: buttMm - 1 }),
				);
				expect(weighCue(slimmer).massG.value).toBeLessThan(mass);
				expect(diameterAtMm(slimmer, slimmer.lengthMm)).toBeCloseTo(
					buttMm - 1,
					9,
				);
				expect(diameterAtMm(slimmer, 0)).toBeCloseTo(request.tipDiameterMm, 9);
			}),
			{ numRuns: 40 },
		);
	});

	it("moves splice points with the length", () => {
		for (const splice of ["hand-four-point", "machine-four-point"] as const) {
			const design = cue58({ splice });
			const [point = 0] = splicePointStationsMm(design);
			const longer = must(changedCue(design, { lengthMm: 1546.65 }));
			expect(splicePointStationsMm(longer)[0]).toBeCloseTo(1.05 * point, 4);
		}
	});

	it("keeps metal at its distance from the butt end", () => {
		const { finished } = must(
			planAddedWeight({ design: cue58(), wantedMassG: 500 }),
		);
		const longer = must(changedCue(finished, { lengthMm: 1499 }));
		const rear = (design: CueDesign) =>
			design.lengthMm - (design.addedWeight[0]?.toStationMm ?? 0);
		expect(rear(longer)).toBeCloseTo(rear(finished), 9);
		expect(longer.lengthMm - (longer.joint?.stationMm ?? 0)).toBeCloseTo(
			441.9,
			9,
		);
	});

	it("refuses what could not be built", () => {
		const outcome = changedCue(cue58(), { buttDiameterMm: 40 });
		expect(outcome.ok).toBe(false);
		if (outcome.ok) return;
		expect(outcome.refusals[0]).toMatchObject({
			field: "buttDiameterMm",
			value: 40,
			min: 22,
			max: 34,
		});
	});
});
