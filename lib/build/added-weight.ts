import type { CueDesign } from "@/lib/cue/design";
import { cutOffsetMm } from "@/lib/cue/layers";
import {
	accept,
	type Caution,
	type Outcome,
	outside,
	refuse,
} from "@/lib/numerics/outcome";
import { band90, type Estimate } from "@/lib/reference/estimate";
import type { MetalId } from "@/lib/reference/metals";
import { type JointSlug, withMetal } from "./bore";
import { type Job, jobFor, type Loaded, load } from "./load";
import { nearestPair } from "./nearest-pair";
import { type Figure, mostMetal, reachOf, usualPlacement } from "./placements";

export interface AddedWeightPlan {
	readonly naturalMassG: Estimate;
	readonly naturalBalanceFromButtMm: Estimate;
	readonly wantedMassG: number;
	/** Metal and plug in, minus wood drilled out. Its spread is that of the natural mass. */
	readonly addedMassG: Estimate;
	readonly metal: MetalId;
	/** Bore from the butt end and the slug in it, 0 where there is none. */
	readonly boreDiameterMm: number;
	readonly boreDepthMm: number;
	readonly slugLengthMm: number;
	/** From the butt end to the slug's rear face. */
	readonly slugFromButtMm: number;
	/** A second slug behind the joint, where the balance asks for it. */
	readonly jointSlug: JointSlug | null;
	readonly metalMassG: number;
	readonly drilledOutMassG: number;
	/** The plug of butt wood behind the slug. */
	readonly plugMassG: number;
	readonly balanceAfterFromButtMm: Estimate;
	readonly inertiaAfterAboutBalanceKgM2: Estimate;
	readonly finished: CueDesign;
	readonly cautions: readonly Caution[];
}

/** Less than this is left to the finish and the tip. */
const NEGLIGIBLE_G = 0.5;

export interface WeightWish {
	readonly design: CueDesign;
	readonly wantedMassG: number;
	/** Default brass. */
	readonly metal?: MetalId;
	/** Tried in this order where the first metal cannot give the wanted figures. */
	readonly otherMetals?: readonly MetalId[];
	readonly wantedBalanceFromButtMm?: number;
	/** Crosswise, about the balance point. Not together with a wanted balance. */
	readonly wantedInertiaKgM2?: number;
}

/**
 * Where and how much metal brings a cue to a wanted weight, and to a wanted balance or inertia if one
 * is given. Without one, a slug in a bore from the butt end as far back as its plug allows; with one,
 * the slug moves up the bore, and then part of it behind the joint.
 *
 * A wanted weight under the natural one, yet inside its 90 % band, gives a plan of 0 g.
 * Refusals: "weight-below-natural", "weight-above-bore", "balance-out-of-reach" and
 * "inertia-out-of-reach" with the nearest that can be had, "already-weighted" for a design that has
 * metal in it, "one-figure-only" where balance and inertia are both asked for.
 */
export function planAddedWeight(wish: WeightWish): Outcome<AddedWeightPlan> {
	const { design, wantedMassG, metal = "brass", otherMetals = [] } = wish;
	if (design.addedWeight.length > 0)
		return refuse({
			code: "already-weighted",
			field: "design.addedWeight",
			value: design.addedWeight.length,
			max: 0,
		});
	if (
		wish.wantedBalanceFromButtMm !== undefined &&
		wish.wantedInertiaKgM2 !== undefined
	)
		return refuse({
			code: "one-figure-only",
			field: "wantedInertiaKgM2",
			value: wish.wantedInertiaKgM2,
			facts: { wantedBalanceFromButtMm: wish.wantedBalanceFromButtMm },
		});
	const target = targetOf(wish);
	const range =
		outside("wantedMassG", wantedMassG, 100, 1200) ??
		(target &&
			outside(target.field, target.wanted, target.limits[0], target.limits[1]));
	if (range) return refuse(range);
	const job = jobFor(design, metal);
	const { massG } = job.natural;
	const lowestMassG = band90(massG).low;
	if (wantedMassG < lowestMassG)
		return refuse({
			code: "weight-below-natural",
			field: "wantedMassG",
			value: wantedMassG,
			min: lowestMassG,
			facts: { naturalMassG: massG.value, nearestMassG: massG.value },
		});
	if (wantedMassG - massG.value < NEGLIGIBLE_G)
		return withoutMetal(job, wantedMassG, target);
	const first = loadedPlan(job, wantedMassG, target);
	if (first.ok) return first;
	for (const other of otherMetals) {
		const next = loadedPlan({ ...job, metal: other }, wantedMassG, target);
		if (next.ok) return next;
	}
	return first;
}

interface Target {
	readonly code: "balance-out-of-reach" | "inertia-out-of-reach";
	readonly field: string;
	readonly nearestName: string;
	readonly wanted: number;
	readonly limits: readonly [number, number];
	readonly estimate: (mass: Loaded["mass"]) => Estimate;
}

function targetOf(wish: WeightWish): Target | null {
	if (wish.wantedBalanceFromButtMm !== undefined)
		return {
			code: "balance-out-of-reach",
			field: "wantedBalanceFromButtMm",
			nearestName: "nearestBalanceFromButtMm",
			wanted: wish.wantedBalanceFromButtMm,
			limits: [0, wish.design.lengthMm],
			estimate: (mass) => mass.balanceFromButtMm,
		};
	if (wish.wantedInertiaKgM2 !== undefined)
		return {
			code: "inertia-out-of-reach",
			field: "wantedInertiaKgM2",
			nearestName: "nearestInertiaKgM2",
			wanted: wish.wantedInertiaKgM2,
			limits: [0.001, 1],
			estimate: (mass) => mass.inertiaAboutBalanceKgM2,
		};
	return null;
}

function withoutMetal(
	job: Job,
	wantedMassG: number,
	target: Target | null,
): Outcome<AddedWeightPlan> {
	const { natural } = job;
	if (target) {
		const had = target.estimate(natural);
		const band = band90(had);
		const missed = outside(target.field, target.wanted, band.low, band.high);
		if (missed)
			return refuse({
				...missed,
				code: target.code,
				facts: { [target.nearestName]: had.value, wantedMassG },
			});
	}
	const nothing = load(job, { metal: job.metal, end: null, joint: null });
	const excessG = natural.massG.value - wantedMassG;
	const plan = planFrom(job, wantedMassG, nothing);
	return accept({
		...plan,
		cautions:
			excessG > NEGLIGIBLE_G
				? [{ code: "natural-above-wanted", facts: { excessG } }]
				: [],
	});
}

function loadedPlan(
	job: Job,
	wantedMassG: number,
	target: Target | null,
): Outcome<AddedWeightPlan> {
	const naturalG = job.natural.massG.value;
	const netG = wantedMassG - naturalG;
	const usual = usualPlacement(job, netG);
	if (!usual) {
		const most = mostMetal(job);
		return refuse({
			code: "weight-above-bore",
			field: "wantedMassG",
			value: wantedMassG,
			max: naturalG + most.netG,
			facts: {
				naturalMassG: naturalG,
				nearestMassG: naturalG + most.netG,
				boreDiameterMm: most.diameterMm,
				metal: job.metal,
			},
		});
	}
	if (!target) return accept(planFrom(job, wantedMassG, load(job, usual)));
	const figure: Figure = (loaded) => target.estimate(loaded.mass).value;
	const reach = reachOf(job, { netG, figure, wanted: target.wanted });
	if (reach.found) return accept(planFrom(job, wantedMassG, reach.found));
	const pair = nearestPair(job, {
		wantedMassG,
		wantedFigure: target.wanted,
		figure,
		scale: target.code === "balance-out-of-reach" ? 10 : 0.001,
		start: {
			massG: wantedMassG,
			figure: reach.nearest ? figure(reach.nearest) : reach.low,
		},
	});
	return refuse({
		code: target.code,
		field: target.field,
		value: target.wanted,
		min: reach.low,
		max: reach.high,
		facts: {
			wantedMassG,
			[target.nearestName]: reach.nearest ? figure(reach.nearest) : reach.low,
			pairMassG: pair.massG,
			pairFigure: pair.figure,
			metal: job.metal,
		},
	});
}

function planFrom(
	job: Job,
	wantedMassG: number,
	loaded: Loaded,
): AddedWeightPlan {
	const { natural, design } = job;
	const { end, joint } = loaded.placement;
	return {
		naturalMassG: natural.massG,
		naturalBalanceFromButtMm: natural.balanceFromButtMm,
		wantedMassG,
		addedMassG: {
			...natural.massG,
			value: loaded.mass.massG.value - natural.massG.value,
		},
		metal: job.metal,
		boreDiameterMm: end?.diameterMm ?? 0,
		boreDepthMm: end ? end.slugFromButtMm + end.slugLengthMm : 0,
		slugLengthMm: end?.slugLengthMm ?? 0,
		slugFromButtMm: end?.slugFromButtMm ?? 0,
		jointSlug: joint,
		metalMassG: loaded.metalMassG,
		drilledOutMassG: loaded.drilledOutMassG,
		plugMassG: loaded.plugMassG,
		balanceAfterFromButtMm: loaded.mass.balanceFromButtMm,
		inertiaAfterAboutBalanceKgM2: loaded.mass.inertiaAboutBalanceKgM2,
		finished: end || joint ? withMetal(design, loaded.placement) : design,
		cautions: cautionsFor(job, loaded),
	};
}

function cautionsFor(job: Job, loaded: Loaded): readonly Caution[] {
	const { design, natural, metal } = job;
	const cautions: Caution[] = [];
	const boreMm = Math.max(
		loaded.placement.end?.diameterMm ?? 0,
		loaded.placement.joint?.diameterMm ?? 0,
	);
	if (boreMm === 0) return cautions;
	if (metal === "lead") cautions.push({ code: "lead-handling" });
	const core = Math.min(
		...design.splice.cuts.map((cut) =>
			cutOffsetMm({ design, cut, stationMm: design.lengthMm }),
		),
	);
	if (core < boreMm / 2)
		cautions.push({
			code: "bore-meets-glue-lines",
			facts: { coreHalfWidthMm: core, boreDiameterMm: boreMm },
		});
	if (natural.massG.standing !== "measured")
		cautions.push({
			code: "weigh-before-boring",
			facts: { naturalMassSdG: natural.massG.sd },
		});
	return cautions;
}
