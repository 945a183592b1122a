import type { CueDesign } from "@/lib/cue/design";
import { cutOffsetMm } from "@/lib/cue/layers";
import { type CueMass, weighCue } from "@/lib/cue/mass";
import {
	accept,
	type Caution,
	type Outcome,
	outside,
	refuse,
} from "@/lib/numerics/outcome";
import { rootBetween } from "@/lib/numerics/roots";
import { band90, type Estimate } from "@/lib/reference/estimate";
import type { MetalId } from "@/lib/reference/metals";
import { BORE, deepestBoreMm, withSlug } from "./bore";

export interface AddedWeightPlan {
	readonly naturalMassG: Estimate;
	readonly naturalBalanceFromButtMm: Estimate;
	readonly wantedMassG: number;
	/** Metal and plug in, minus wood drilled out. Its spread is that of the natural mass. */
	readonly addedMassG: Estimate;
	readonly metal: MetalId;
	/** Bore and slug are 0 where nothing is to be added. */
	readonly boreDiameterMm: number;
	readonly boreDepthMm: number;
	readonly slugLengthMm: number;
	readonly slugFromButtMm: number;
	readonly metalMassG: number;
	readonly drilledOutMassG: number;
	/** The plug of butt wood behind the slug. */
	readonly plugMassG: number;
	readonly balanceAfterFromButtMm: Estimate;
	readonly finished: CueDesign;
	readonly cautions: readonly Caution[];
}

interface Job {
	readonly design: CueDesign;
	readonly natural: CueMass;
	readonly wantedMassG: number;
	readonly metal: MetalId;
}

/** Less than this is left to the finish and the tip. */
const NEGLIGIBLE_G = 0.5;

/**
 * Where and how much metal brings a cue to a wanted weight, and to a wanted balance if one is given.
 * The slug goes into a bore from the butt end, as far back as its plug allows unless a balance is
 * asked for. A wanted weight under the natural one, yet inside its 90 % band, gives a plan of 0 g.
 * Refuses "weight-below-natural", "weight-above-bore" and "balance-out-of-reach", each with the
 * nearest that can be had, and "already-weighted" for a design that has metal in it.
 */
export function planAddedWeight(p: {
	design: CueDesign;
	wantedMassG: number;
	metal?: MetalId;
	wantedBalanceFromButtMm?: number;
}): Outcome<AddedWeightPlan> {
	const { design, wantedMassG, metal = "brass" } = p;
	if (design.addedWeight.length > 0)
		return refuse({
			code: "already-weighted",
			field: "design.addedWeight",
			value: design.addedWeight.length,
			max: 0,
		});
	const natural = weighCue(design);
	const range = outside("wantedMassG", wantedMassG, 100, 1200);
	if (range) return refuse(range);
	const lowestMassG = band90(natural.massG).low;
	if (wantedMassG < lowestMassG)
		return refuse({
			code: "weight-below-natural",
			field: "wantedMassG",
			value: wantedMassG,
			min: lowestMassG,
			facts: {
				naturalMassG: natural.massG.value,
				nearestMassG: natural.massG.value,
			},
		});
	const job = { design, natural, wantedMassG, metal };
	if (wantedMassG - natural.massG.value < NEGLIGIBLE_G)
		return withoutMetal(job, p.wantedBalanceFromButtMm);
	return withMetal(job, p.wantedBalanceFromButtMm);
}

function withoutMetal(
	job: Job,
	wantedBalanceFromButtMm: number | undefined,
): Outcome<AddedWeightPlan> {
	const { natural, design, wantedMassG } = job;
	const band = band90(natural.balanceFromButtMm);
	const balance =
		wantedBalanceFromButtMm === undefined
			? null
			: outside(
					"wantedBalanceFromButtMm",
					wantedBalanceFromButtMm,
					band.low,
					band.high,
				);
	if (balance)
		return refuse({
			...balance,
			code: "balance-out-of-reach",
			facts: { nearestBalanceFromButtMm: natural.balanceFromButtMm.value },
		});
	const excessG = natural.massG.value - wantedMassG;
	return accept({
		naturalMassG: natural.massG,
		naturalBalanceFromButtMm: natural.balanceFromButtMm,
		wantedMassG,
		addedMassG: { ...natural.massG, value: 0 },
		metal: job.metal,
		boreDiameterMm: 0,
		boreDepthMm: 0,
		slugLengthMm: 0,
		slugFromButtMm: 0,
		metalMassG: 0,
		drilledOutMassG: 0,
		plugMassG: 0,
		balanceAfterFromButtMm: natural.balanceFromButtMm,
		finished: design,
		cautions:
			excessG > NEGLIGIBLE_G
				? [{ code: "natural-above-wanted", facts: { excessG } }]
				: [],
	});
}

interface Fitted {
	readonly diameterMm: number;
	readonly slugLengthMm: number;
	readonly slugFromButtMm: number;
	readonly finished: CueDesign;
	readonly mass: CueMass;
}

function withMetal(
	job: Job,
	wantedBalanceFromButtMm: number | undefined,
): Outcome<AddedWeightPlan> {
	const options = BORE.diametersMm
		.map((diameterMm) => ({
			diameterMm,
			depthMm: deepestBoreMm(job.design, diameterMm),
		}))
		.filter((bore) => bore.depthMm > BORE.minPlugMm);
	let most = job.natural.massG.value;
	let mostDiameterMm = 0;
	const fits: Fitted[] = [];
	for (const { diameterMm, depthMm } of options) {
		const full = weighCue(
			withSlug(job.design, {
				metal: job.metal,
				diameterMm,
				slugLengthMm: depthMm - BORE.minPlugMm,
				slugFromButtMm: BORE.minPlugMm,
			}),
		).massG.value;
		if (full > most) {
			most = full;
			mostDiameterMm = diameterMm;
		}
		if (full < job.wantedMassG) continue;
		const fitted = slugFor(job, {
			diameterMm,
			depthMm,
			slugFromButtMm: BORE.minPlugMm,
		});
		if (!fitted) continue;
		fits.push(fitted);
	}
	if (fits.length === 0)
		return refuse({
			code: "weight-above-bore",
			field: "wantedMassG",
			value: job.wantedMassG,
			max: most,
			facts: {
				naturalMassG: job.natural.massG.value,
				nearestMassG: most,
				boreDiameterMm: mostDiameterMm,
				metal: job.metal,
			},
		});
	if (wantedBalanceFromButtMm === undefined) {
		const chosen =
			fits.find((one) => one.slugLengthMm <= BORE.preferredSlugMm) ??
			fits[fits.length - 1];
		if (!chosen) throw new Error("no bore fitted although one was found");
		return accept(planFrom(job, chosen));
	}
	return balanced(job, fits, wantedBalanceFromButtMm);
}

/** The slug that gives the wanted weight with its rear face at a distance from the butt end. */
function slugFor(
	job: Job,
	bore: { diameterMm: number; depthMm: number; slugFromButtMm: number },
): Fitted | null {
	const at = (slugLengthMm: number) =>
		withSlug(job.design, {
			metal: job.metal,
			diameterMm: bore.diameterMm,
			slugLengthMm,
			slugFromButtMm: bore.slugFromButtMm,
		});
	const longestMm = bore.depthMm - bore.slugFromButtMm;
	if (longestMm <= 0) return null;
	const result = rootBetween({
		f: (slugLengthMm) =>
			weighCue(at(slugLengthMm)).massG.value - job.wantedMassG,
		from: 0,
		to: longestMm,
		tolerance: 1e-9,
	});
	if (!result.converged) return null;
	const finished = at(result.root);
	return {
		diameterMm: bore.diameterMm,
		slugLengthMm: result.root,
		slugFromButtMm: bore.slugFromButtMm,
		finished,
		mass: weighCue(finished),
	};
}

function balanced(
	job: Job,
	rearmost: readonly Fitted[],
	wantedBalanceFromButtMm: number,
): Outcome<AddedWeightPlan> {
	let nearest: { gapMm: number; balanceMm: number } | null = null;
	let lowMm = Number.POSITIVE_INFINITY;
	let highMm = Number.NEGATIVE_INFINITY;
	for (const rear of rearmost) {
		const { diameterMm } = rear;
		const depthMm = deepestBoreMm(job.design, diameterMm);
		const farthestMm = depthMm - rear.slugLengthMm;
		const placed = (slugFromButtMm: number) =>
			slugFor(job, { diameterMm, depthMm, slugFromButtMm });
		const front =
			placed(farthestMm) ?? placed(farthestMm - 0.01 * rear.slugLengthMm);
		if (!front) continue;
		const from = rear.mass.balanceFromButtMm.value;
		const to = front.mass.balanceFromButtMm.value;
		lowMm = Math.min(lowMm, from);
		highMm = Math.max(highMm, to);
		if (wantedBalanceFromButtMm >= from && wantedBalanceFromButtMm <= to) {
			const result = rootBetween({
				f: (slugFromButtMm) =>
					(placed(slugFromButtMm)?.mass.balanceFromButtMm.value ?? to) -
					wantedBalanceFromButtMm,
				from: rear.slugFromButtMm,
				to: front.slugFromButtMm,
				tolerance: 1e-7,
			});
			const fitted = result.converged ? placed(result.root) : null;
			if (fitted) return accept(planFrom(job, fitted));
		}
		const balanceMm = wantedBalanceFromButtMm < from ? from : to;
		const gapMm = Math.abs(balanceMm - wantedBalanceFromButtMm);
		if (!nearest || gapMm < nearest.gapMm) nearest = { gapMm, balanceMm };
	}
	return refuse({
		code: "balance-out-of-reach",
		field: "wantedBalanceFromButtMm",
		value: wantedBalanceFromButtMm,
		min: lowMm,
		max: highMm,
		facts: {
			wantedMassG: job.wantedMassG,
			nearestBalanceFromButtMm: nearest?.balanceMm ?? lowMm,
		},
	});
}

function planFrom(job: Job, fitted: Fitted): AddedWeightPlan {
	const { natural, design } = job;
	const grams = (part: string) =>
		fitted.mass.parts
			.filter((one) => one.part === part)
			.reduce((sum, one) => sum + one.massG.value, 0);
	const metalMassG = grams("added weight");
	const plugMassG = grams("plug");
	const addedG = fitted.mass.massG.value - natural.massG.value;
	const boreDepthMm = fitted.slugFromButtMm + fitted.slugLengthMm;
	return {
		naturalMassG: natural.massG,
		naturalBalanceFromButtMm: natural.balanceFromButtMm,
		wantedMassG: job.wantedMassG,
		addedMassG: { ...natural.massG, value: addedG },
		metal: job.metal,
		boreDiameterMm: fitted.diameterMm,
		boreDepthMm,
		slugLengthMm: fitted.slugLengthMm,
		slugFromButtMm: fitted.slugFromButtMm,
		metalMassG,
		drilledOutMassG: metalMassG + plugMassG - addedG,
		plugMassG,
		balanceAfterFromButtMm: fitted.mass.balanceFromButtMm,
		finished: fitted.finished,
		cautions: cautionsFor({
			design,
			metal: job.metal,
			boreDiameterMm: fitted.diameterMm,
			natural,
		}),
	};
}

function cautionsFor(p: {
	design: CueDesign;
	metal: MetalId;
	boreDiameterMm: number;
	natural: CueMass;
}): readonly Caution[] {
	const cautions: Caution[] = [];
	if (p.metal === "lead") cautions.push({ code: "lead-handling" });
	const core = Math.min(
		...p.design.splice.cuts.map((cut) =>
			cutOffsetMm({ design: p.design, cut, stationMm: p.design.lengthMm }),
		),
	);
	if (core < p.boreDiameterMm / 2)
		cautions.push({
			code: "bore-meets-glue-lines",
			facts: { coreHalfWidthMm: core, boreDiameterMm: p.boreDiameterMm },
		});
	if (p.natural.massG.standing !== "measured")
		cautions.push({
			code: "weigh-before-boring",
			facts: { naturalMassSdG: p.natural.massG.sd },
		});
	return cautions;
}
