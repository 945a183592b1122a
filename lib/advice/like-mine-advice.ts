import type { CueDesign } from "@/lib/cue/design";
import { type CueChange, changedCue } from "@/lib/cue/like-mine";
import { bendingModulusGPa, densityKgM3 } from "@/lib/cue/materials";
import { fitPresentCue } from "@/lib/cue/present-cue";
import type { PresentCue as CueReading } from "@/lib/cue/present-reading";
import { accept, type Caution, type Outcome } from "@/lib/numerics/outcome";
import { rootBetween } from "@/lib/numerics/roots";
import type { Estimate } from "@/lib/reference/estimate";
import { METALS, type MetalId } from "@/lib/reference/metals";
import { GRIP_LIMITS_MM } from "@/lib/stance/assumptions";
import {
	type GeometryTable,
	geometryTable,
	tipGiveMmPerN,
} from "./geometry-table";
import { FEEL_ZONE, FELT } from "./judgement";
import { type Kept, solvePairs } from "./keep-pairs";
import type { Densities } from "./loading";

/** What is asked to be different. */
export interface LikeMineChange extends CueChange {
	readonly massG?: number;
}

/** One quantity of the feel: what it was, what it would be, and whether a player would notice. */
export interface FeelKept {
	readonly was: number;
	readonly becomes: number;
	/** Of what it was. */
	readonly sd: number;
	/** Change in differences a player would notice. */
	readonly feltSteps: number;
	readonly isKept: boolean;
}

export interface LikeMineVariant {
	/** "stretched": the shaft changes with the cue; "stiffness-kept": filled out or slimmed until the tip gives as before. */
	readonly taper: "stretched" | "stiffness-kept";
	/** Without added metal. */
	readonly design: CueDesign;
	readonly naturalMassG: number;
	readonly stiffness: FeelKept;
	/** Every pair of weight, balance and inertia that was solved for, least felt miss first. */
	readonly pairs: readonly LikeMinePair[];
}

export interface LikeMinePair {
	/** The two that were solved for. */
	readonly keeps: readonly [Kept, Kept];
	/** Both were met exactly; false where wood and bore only let them be approached. */
	readonly isMet: boolean;
	readonly mass: FeelKept;
	readonly balance: FeelKept;
	readonly inertia: FeelKept;
	readonly metalG: number;
	readonly boreDiameterMm: number;
	readonly slugLengthMm: number;
	readonly slugFromButtMm: number;
	/** Root sum of squares of the misses, felt differences. */
	readonly feltMiss: number;
}

export interface LikeMine {
	readonly now: {
		readonly massG: number;
		readonly balanceFromButtMm: number;
		readonly inertiaAboutGripKgM2: Estimate;
		readonly giveMmPerN: number;
		readonly gripFromButtMm: number;
	};
	readonly gripFromButtMm: number;
	readonly variants: readonly LikeMineVariant[];
	/** What cannot be kept together with the asked change in the best variant: empty where all is kept. */
	readonly cannotKeep: readonly (Kept | "stiffness")[];
	readonly cautions: readonly Caution[];
}

/**
 * The present cue with something changed and the feel kept: inertia about the grip, balance, stiffness,
 * and the weight unless that is asked to change. One slug has two freedoms (how heavy, how far in), so
 * of weight, balance and inertia two can be met at a time; every pair is solved and the nearest offered
 * first. The hand keeps its distance from the tip, within its usual limits of the butt end. Refuses
 * what `fitPresentCue` and `changedCue` refuse.
 */
export function likeMineBut(p: {
	reading: CueReading & { readonly gripFromButtMm: number };
	change: LikeMineChange;
	metal?: MetalId;
}): Outcome<LikeMine> {
	const { reading, change, metal = "brass" } = p;
	const fit = fitPresentCue(reading);
	if (!fit.ok) return fit;
	const { inertiaAboutGripKgM2, cautions } = fit.value;
	if (inertiaAboutGripKgM2 === null)
		throw new RangeError("likeMineBut: no grip point was read");
	const bare: CueDesign = { ...fit.value.design, addedWeight: [], plugs: [] };
	const changed = changedCue(bare, change);
	if (!changed.ok) return changed;
	const { gripFromButtMm } = reading;
	const handMm = Math.min(
		Math.max(GRIP_LIMITS_MM.most, gripFromButtMm),
		Math.max(
			Math.min(GRIP_LIMITS_MM.least, gripFromButtMm),
			gripFromButtMm + changed.value.lengthMm - bare.lengthMm,
		),
	);
	const was = tabled(bare, gripFromButtMm);
	const now: LikeMine["now"] = {
		massG: reading.massG,
		balanceFromButtMm: reading.balanceFromButtMm,
		inertiaAboutGripKgM2,
		giveMmPerN: was.giveMmPerN,
		gripFromButtMm,
	};
	const target = {
		massG: change.massG ?? reading.massG,
		balanceMm: reading.balanceFromButtMm,
		inertiaKgM2: inertiaAboutGripKgM2.value,
	};
	const variantOf = (
		taper: LikeMineVariant["taper"],
		design: CueDesign,
	): LikeMineVariant => {
		const { table, giveMmPerN } = tabled(design, handMm);
		const d = densitiesOf(design, metal);
		const solved = solvePairs({ table, densities: d, handMm, target });
		const pairs = solved.pairs
			.map((pair): LikeMinePair => {
				const mass = kept(target.massG, pair.massG, {
					felt: FELT.massG,
					sd: 0,
				});
				const balance = kept(target.balanceMm, pair.balanceMm, {
					felt: FELT.balanceMm,
					sd: 0,
				});
				const inertia = kept(target.inertiaKgM2, pair.inertiaKgM2, {
					felt: INERTIA_FELT * target.inertiaKgM2,
					sd: inertiaAboutGripKgM2.sd,
				});
				const { massG: _m, balanceMm: _b, inertiaKgM2: _i, ...rest } = pair;
				return {
					...rest,
					mass,
					balance,
					inertia,
					feltMiss: Math.hypot(
						mass.feltSteps,
						balance.feltSteps,
						inertia.feltSteps,
					),
				};
			})
			.sort((a, b) => a.feltMiss - b.feltMiss);
		return {
			taper,
			design,
			naturalMassG: solved.naturalG,
			stiffness: kept(was.giveMmPerN, giveMmPerN, {
				felt: GIVE_FELT * was.giveMmPerN,
				sd: 0,
			}),
			pairs,
		};
	};
	const stretched = variantOf("stretched", changed.value);
	const stiff = stretched.stiffness.isKept
		? null
		: stiffnessKept(changed.value, { handMm, giveMmPerN: was.giveMmPerN });
	const variants = stiff
		? [variantOf("stiffness-kept", stiff), stretched]
		: [stretched];
	const [best] = variants;
	const [nearest] = best?.pairs ?? [];
	const cannotKeep: (Kept | "stiffness")[] = nearest
		? (["mass", "balance", "inertia"] as const).filter(
				(name) => !nearest[name].isKept,
			)
		: ["mass", "balance", "inertia"];
	if (best && !best.stiffness.isKept) cannotKeep.push("stiffness");
	return accept({
		now,
		gripFromButtMm: handMm,
		variants,
		cannotKeep,
		cautions,
	});
}

/** Changes of inertia and of the tip's give that a player would notice, as shares. */
const INERTIA_FELT = FEEL_ZONE.steadiness["present-cue"].ideal;
const GIVE_FELT = FEEL_ZONE.stiffness["present-cue"].ideal;

function kept(
	was: number,
	becomes: number,
	p: { felt: number; sd: number },
): FeelKept {
	const feltSteps = Math.abs(becomes - was) / p.felt;
	return { was, becomes, sd: p.sd, feltSteps, isKept: feltSteps <= 1 };
}

const densitiesOf = (design: CueDesign, metal: MetalId): Densities => ({
	shaft: densityKgM3(design, design.shaftWood).value * 1e-6,
	butt: densityKgM3(design, design.buttWood).value * 1e-6,
	metal: METALS[metal].densityKgM3.value * 1e-6,
});

function tabled(
	design: CueDesign,
	handMm: number,
): { table: GeometryTable; giveMmPerN: number } {
	const table = geometryTable({
		design,
		clampStationMm: design.lengthMm - handMm,
	});
	return {
		table,
		giveMmPerN: tipGiveMmPerN(table, {
			shaftGPa: bendingModulusGPa(design.shaftWood).value,
			buttGPa: bendingModulusGPa(design.buttWood).value,
		}),
	};
}

/** The most a shaft is filled out or slimmed between tip and butt, as a share of its diameter. Assumed. */
const MOST_FILLING = 0.12;

/**
 * The same cue with its diameters between tip and butt scaled until the tip gives as wanted; null where
 * the most does not reach it or the taper would no longer grow.
 */
export function stiffnessKept(
	design: CueDesign,
	wanted: { handMm: number; giveMmPerN: number },
): CueDesign | null {
	const scaled = (by: number): CueDesign => ({
		...design,
		taper: design.taper.map((point, i) =>
			i === 0 || i === design.taper.length - 1
				? point
				: { ...point, diameterMm: point.diameterMm * (1 + by) },
		),
	});
	const grows = ({ taper }: CueDesign) =>
		taper.every(
			(point, i) =>
				i === 0 || point.diameterMm > (taper[i - 1]?.diameterMm ?? 0),
		);
	const result = rootBetween({
		f: (by) => tabled(scaled(by), wanted.handMm).giveMmPerN - wanted.giveMmPerN,
		from: -MOST_FILLING,
		to: MOST_FILLING,
		tolerance: 1e-6,
	});
	if (!result.converged) return null;
	const found = scaled(result.root);
	return grows(found) ? found : null;
}
