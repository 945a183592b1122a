import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planAddedWeight, type WeightWish } from "@/lib/build/added-weight";
import { BORE, deepestBoreMm, jointBore } from "@/lib/build/bore";
import { weighCue } from "@/lib/cue/mass";
import { materialAt } from "@/lib/cue/material";
import { diameterAtMm } from "@/lib/cue/taper";
import { must, type Refusal } from "@/lib/numerics/outcome";
import { band90 } from "@/lib/reference/estimate";
import { METALS } from "@/lib/reference/metals";
import { anyRequest, cue58 } from "../support/designs";

const refusalOf = (wish: WeightWish): Refusal => {
	const outcome = planAddedWeight(wish);
	if (outcome.ok) throw new Error("a refusal was expected");
	const [refusal] = outcome.refusals;
	if (!refusal) throw new Error("a refusal was expected");
	return refusal;
};

describe("planAddedWeight", () => {
	it("brings the finished design to the wanted weight, whatever the cue", () => {
		fc.assert(
			fc.property(
				anyRequest,
				fc.double({ min: 5, max: 180, noNaN: true }),
				(request, moreG) => {
					const design = cue58(request);
					const natural = weighCue(design).massG.value;
					const wantedMassG = Math.max(110, natural + moreG);
					const outcome = planAddedWeight({ design, wantedMassG });
					if (!outcome.ok) {
						expect(outcome.refusals[0]?.code).toBe("weight-above-bore");
						expect(outcome.refusals[0]?.max).toBeLessThan(wantedMassG);
						return;
					}
					const plan = outcome.value;
					const finished = weighCue(plan.finished);
					// Two quadratures of one geometry: apart by what the bore's own breaks cost.
					expect(finished.massG.value).toBeCloseTo(wantedMassG, 4);
					expect(finished.balanceFromButtMm.value).toBeCloseTo(
						plan.balanceAfterFromButtMm.value,
						4,
					);
					expect(
						plan.metalMassG + plan.plugMassG - plan.drilledOutMassG,
					).toBeCloseTo(plan.addedMassG.value, 9);
					expect(plan.balanceAfterFromButtMm.value).toBeLessThan(
						plan.naturalBalanceFromButtMm.value,
					);
				},
			),
			{ numRuns: 60 },
		);
	});

	it("leaves the wall, the plug and the joint's clearance", () => {
		fc.assert(
			fc.property(
				anyRequest,
				fc.double({ min: 20, max: 150, noNaN: true }),
				(request, moreG) => {
					const design = cue58(request);
					const outcome = planAddedWeight({
						design,
						wantedMassG: Math.max(110, weighCue(design).massG.value + moreG),
					});
					if (!outcome.ok || outcome.value.boreDiameterMm === 0) return;
					const plan = outcome.value;
					const frontMm = design.lengthMm - plan.boreDepthMm;
					expect(
						(diameterAtMm(design, frontMm) - plan.boreDiameterMm) / 2,
					).toBeGreaterThanOrEqual(BORE.minWallMm - 1e-9);
					expect(plan.slugFromButtMm).toBeGreaterThanOrEqual(BORE.minPlugMm);
					expect(plan.boreDepthMm).toBeLessThanOrEqual(BORE.maxDepthMm);
					if (design.joint)
						expect(frontMm).toBeGreaterThanOrEqual(
							design.joint.stationMm + design.joint.pinReachMm + 10 - 1e-9,
						);
				},
			),
			{ numRuns: 60 },
		);
	});

	it("drills out what materialAt says was there", () => {
		const design = cue58();
		const plan = must(planAddedWeight({ design, wantedMassG: 500 }));
		const [slug] = plan.finished.addedWeight;
		if (!slug) throw new Error("a slug was expected");
		// Sum of small rings of the natural cue's wood inside the bore.
		let grams = 0;
		const rings = 40;
		const turns = 72;
		const steps = 120;
		const frontMm = slug.fromStationMm;
		const spanMm = design.lengthMm - frontMm;
		for (let i = 0; i < steps; i++)
			for (let j = 0; j < rings; j++)
				for (let k = 0; k < turns; k++) {
					const radiusMm = ((j + 0.5) / rings) * (slug.diameterMm / 2);
					const point = materialAt({
						design,
						stationMm: frontMm + ((i + 0.5) / steps) * spanMm,
						angleDeg: ((k + 0.5) / turns) * 360,
						radiusMm,
					});
					const density = point?.material === "white-ash" ? 672 : 955;
					const volumeMm3 =
						(spanMm / steps) *
						(slug.diameterMm / 2 / rings) *
						((2 * Math.PI * radiusMm) / turns);
					grams += density * volumeMm3 * 1e-6;
				}
		expect(plan.drilledOutMassG).toBeCloseTo(grams, 1);
		const metal =
			((Math.PI * slug.diameterMm ** 2) / 4) *
			plan.slugLengthMm *
			METALS.brass.densityKgM3.value *
			1e-6;
		expect(plan.metalMassG).toBeCloseTo(metal, 9);
	});

	it("takes less room with a denser metal", () => {
		const design = cue58();
		const volumeOf = (metal: "brass" | "lead" | "tungsten-alloy") => {
			const plan = must(planAddedWeight({ design, wantedMassG: 480, metal }));
			return plan.slugLengthMm * plan.boreDiameterMm ** 2;
		};
		expect(volumeOf("lead")).toBeLessThan(volumeOf("brass"));
		expect(volumeOf("tungsten-alloy")).toBeLessThan(volumeOf("lead"));
	});

	it("warns of lead, of glue lines and of wood nobody weighed", () => {
		const codes = (wish: Partial<WeightWish>) =>
			must(
				planAddedWeight({ design: cue58(), wantedMassG: 500, ...wish }),
			).cautions.map((caution) => caution.code);
		expect(codes({ metal: "lead" })).toContain("lead-handling");
		expect(codes({})).not.toContain("lead-handling");
		expect(codes({})).toContain("bore-meets-glue-lines");
		expect(codes({})).toContain("weigh-before-boring");
		const weighed = cue58({
			densities: {
				"white-ash": { kgM3: 680, sd: 5 },
				"gaboon-ebony": { kgM3: 980, sd: 5 },
			},
		});
		expect(codes({ design: weighed })).not.toContain("weigh-before-boring");
	});
});

describe("near and under the natural weight", () => {
	const design = cue58();
	const natural = weighCue(design).massG;

	it("plans 0 g inside the natural band, with the excess said", () => {
		const plan = must(
			planAddedWeight({ design, wantedMassG: natural.value - natural.sd }),
		);
		expect(plan.metalMassG).toBe(0);
		expect(plan.addedMassG.value).toBe(0);
		expect(plan.boreDepthMm).toBe(0);
		expect(plan.finished).toBe(design);
		expect(plan.cautions[0]?.code).toBe("natural-above-wanted");
		expect(plan.cautions[0]?.facts?.excessG).toBeCloseTo(natural.sd, 9);
	});

	it("refuses below the band with the nearest weight", () => {
		const { low } = band90(natural);
		const refusal = refusalOf({ design, wantedMassG: low - 1 });
		expect(refusal).toMatchObject({
			code: "weight-below-natural",
			field: "wantedMassG",
			min: low,
			facts: { naturalMassG: natural.value, nearestMassG: natural.value },
		});
	});

	it("refuses above the bore with the most that fits, and that most can be planned", () => {
		const refusal = refusalOf({ design, wantedMassG: 1000 });
		expect(refusal.code).toBe("weight-above-bore");
		const most = refusal.max ?? 0;
		expect(planAddedWeight({ design, wantedMassG: most - 0.01 }).ok).toBe(true);
		expect(planAddedWeight({ design, wantedMassG: most + 0.01 }).ok).toBe(
			false,
		);
	});

	it("refuses nonsense and a cue that has metal in it already", () => {
		expect(refusalOf({ design, wantedMassG: Number.NaN })).toMatchObject({
			code: "out-of-range",
			field: "wantedMassG",
			min: 100,
			max: 1200,
		});
		const loaded = must(planAddedWeight({ design, wantedMassG: 450 })).finished;
		expect(refusalOf({ design: loaded, wantedMassG: 480 }).code).toBe(
			"already-weighted",
		);
		expect(
			refusalOf({
				design,
				wantedMassG: 450,
				wantedBalanceFromButtMm: 400,
				wantedInertiaKgM2: 0.05,
			}).code,
		).toBe("one-figure-only");
	});
});

describe("a wanted balance or inertia", () => {
	const design = cue58();

	it.each([355, 370, 385, 400, 405])(
		"comes out at %i mm from the butt end",
		(wantedBalanceFromButtMm) => {
			const plan = must(
				planAddedWeight({ design, wantedMassG: 500, wantedBalanceFromButtMm }),
			);
			const finished = weighCue(plan.finished);
			expect(finished.massG.value).toBeCloseTo(500, 4);
			expect(finished.balanceFromButtMm.value).toBeCloseTo(
				wantedBalanceFromButtMm,
				4,
			);
		},
	);

	it("puts a second slug behind the joint where the bore alone cannot", () => {
		const plan = must(
			planAddedWeight({
				design,
				wantedMassG: 500,
				wantedBalanceFromButtMm: 405,
			}),
		);
		expect(plan.jointSlug).not.toBeNull();
		expect(plan.finished.addedWeight).toHaveLength(2);
		const onePiece = cue58({ layout: "one-piece" });
		const reach = refusalOf({
			design: onePiece,
			wantedMassG: 480,
			wantedBalanceFromButtMm: 440,
		});
		expect(reach.code).toBe("balance-out-of-reach");
	});

	it.each([0.052, 0.055, 0.058])(
		"comes out at an inertia of %f kg m²",
		(wantedInertiaKgM2) => {
			const plan = must(
				planAddedWeight({ design, wantedMassG: 500, wantedInertiaKgM2 }),
			);
			expect(weighCue(plan.finished).inertiaAboutBalanceKgM2.value).toBeCloseTo(
				wantedInertiaKgM2,
				8,
			);
		},
	);

	it("proves it out of reach with the range, and both ends of the range can be had", () => {
		const refusal = refusalOf({
			design,
			wantedMassG: 500,
			wantedBalanceFromButtMm: 450,
		});
		expect(refusal).toMatchObject({
			code: "balance-out-of-reach",
			field: "wantedBalanceFromButtMm",
			value: 450,
		});
		const { min = 0, max = 0 } = refusal;
		for (const wanted of [min + 0.01, max - 0.01])
			expect(
				planAddedWeight({
					design,
					wantedMassG: 500,
					wantedBalanceFromButtMm: wanted,
				}).ok,
			).toBe(true);
		expect(refusal.facts?.nearestBalanceFromButtMm).toBeCloseTo(max, 9);
	});

	it("names a nearest pair that can be built and is no farther than the nearest balance", () => {
		const refusal = refusalOf({
			design,
			wantedMassG: 500,
			wantedBalanceFromButtMm: 450,
		});
		const massG = Number(refusal.facts?.pairMassG);
		const balanceMm = Number(refusal.facts?.pairFigure);
		const far = (m: number, b: number) =>
			Math.hypot((m - 500) / 10, (b - 450) / 10);
		expect(far(massG, balanceMm)).toBeLessThan(
			0.98 * far(500, Number(refusal.facts?.nearestBalanceFromButtMm)),
		);
		// No lighter or heavier cue comes nearer: the farthest forward at each weight, by refusal.
		for (const otherG of [440, 460, 475, 490, 510, 530]) {
			const other = refusalOf({
				design,
				wantedMassG: otherG,
				wantedBalanceFromButtMm: 1000,
			});
			expect(far(otherG, other.max ?? 0)).toBeGreaterThan(
				0.98 * far(massG, balanceMm),
			);
		}
		const pair = must(
			planAddedWeight({
				design,
				wantedMassG: massG,
				wantedBalanceFromButtMm: balanceMm,
			}),
		);
		expect(pair.balanceAfterFromButtMm.value).toBeCloseTo(balanceMm, 6);
	});

	it("no scattered placement does better than the range it proves", () => {
		// Random bores, gaps and joint shares within the rules, each brought to 500 g by bisection.
		const refusal = refusalOf({
			design,
			wantedMassG: 500,
			wantedBalanceFromButtMm: 450,
		});
		const { min = 0, max = 0 } = refusal;
		fc.assert(
			fc.property(
				fc.constantFrom(...BORE.diametersMm),
				fc.double({ min: 0, max: 1, noNaN: true }),
				(diameterMm, share) => {
					const depthMm = deepestBoreMm(design, diameterMm);
					const gapMm = 15 + share * (depthMm - 20);
					const rearMm = design.lengthMm - gapMm;
					const at = (lengthMm: number) =>
						weighCue({
							...design,
							addedWeight: [
								{
									fromStationMm: rearMm - lengthMm,
									toStationMm: rearMm,
									diameterMm,
									metal: "brass",
								},
							],
							plugs: [
								{
									fromStationMm: rearMm,
									toStationMm: design.lengthMm,
									diameterMm,
									wood: "gaboon-ebony",
								},
							],
						});
					let low = 1e-6;
					let high = depthMm - gapMm;
					if (at(high).massG.value < 500) return;
					for (let i = 0; i < 40; i++) {
						const middle = (low + high) / 2;
						if (at(middle).massG.value < 500) low = middle;
						else high = middle;
					}
					const balance = at(high).balanceFromButtMm.value;
					expect(balance).toBeGreaterThanOrEqual(min - 1e-3);
					expect(balance).toBeLessThanOrEqual(max + 1e-3);
				},
			),
			{ numRuns: 40 },
		);
	});

	it("leaves a slim joint alone", () => {
		const slim = cue58({ layout: "centre", buttDiameterMm: 24 });
		const { joint } = slim;
		if (!joint) throw new Error("a joint was expected");
		const wallMm =
			(diameterAtMm(slim, joint.stationMm + joint.pinReachMm) -
				joint.pinDiameterMm) /
			2;
		expect(wallMm).toBeLessThan(BORE.minWallMm);
		expect(jointBore(slim)).toBeNull();
		expect(jointBore(cue58())?.diameterMm).toBe(11);
		expect(jointBore(cue58({ layout: "one-piece" }))).toBeNull();
	});

	it("tries another metal where the first cannot", () => {
		const slim = cue58({ buttDiameterMm: 24, layout: "one-piece" });
		expect(planAddedWeight({ design: slim, wantedMassG: 500 }).ok).toBe(false);
		const plan = must(
			planAddedWeight({
				design: slim,
				wantedMassG: 500,
				otherMetals: ["stainless-steel", "tungsten-alloy"],
			}),
		);
		expect(plan.metal).toBe("tungsten-alloy");
	});
});

it("a split whose rest the plug alone outweighs is no placement, and no fault", () => {
	// Between the joint's slug and the butt's there are weights that no bore from the butt end can hold.
	const design = cue58({
		lengthMm: 1416.05,
		buttDiameterMm: 29.25,
		tipDiameterMm: 9,
		taperShape: "full-forward",
		buttWood: "macassar-ebony",
	});
	const wantedMassG = 503.204;
	const rearmost = must(planAddedWeight({ design, wantedMassG }));
	for (let forwardMm = 30; forwardMm <= 46; forwardMm += 0.1) {
		const wantedBalanceFromButtMm =
			rearmost.balanceAfterFromButtMm.value + forwardMm;
		const plan = planAddedWeight({
			design,
			wantedMassG,
			wantedBalanceFromButtMm,
		});
		if (plan.ok) {
			expect(plan.value.balanceAfterFromButtMm.value).toBeCloseTo(
				wantedBalanceFromButtMm,
				4,
			);
			expect(weighCue(plan.value.finished).massG.value).toBeCloseTo(
				wantedMassG,
				4,
			);
		} else
			expect(plan.refusals.map(({ code }) => code)).toContain(
				"balance-out-of-reach",
			);
	}
});
