import type { BilletDensities, CueDesign, CueRequest } from "@/lib/cue/design";
import { bendingModulusGPa } from "@/lib/cue/materials";
import { diameterAtMm } from "@/lib/cue/taper";
import { designFrom, TEMPLATE } from "@/lib/cue/template";
import { accept, type Outcome } from "@/lib/numerics/outcome";
import { closureMm } from "@/lib/player/hand";
import { METALS, type MetalId } from "@/lib/reference/metals";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { WOODS, type WoodId } from "@/lib/reference/woods";
import { squirtDeg } from "@/lib/shot/deflection";
import { AT, type CompiledCriteria, CRITERION_COUNT } from "./criteria";
import { type HandPlace, handFromButtMm } from "./fitting-needs";
import { forgivenessShare } from "./forgiveness";
import {
	type GeometryTable,
	geometryTable,
	tipGiveMmPerN,
} from "./geometry-table";
import type { Level } from "./input";
import { withJoint } from "./joint-table";
import { BENCH_ZONE } from "./judgement";
import { type Densities, inertiaAboutKgM2, type Load } from "./loading";
import type { Offering } from "./offering";

/** What a measure needs to know of the player and the workshop, beside the cue. */
export interface Setting {
	readonly gameId: GameId;
	readonly level: Level;
	readonly hand: HandPlace;
	readonly ringMm: number;
	readonly addedMetal: MetalId;
	readonly densities: BilletDensities;
	readonly offering: Offering;
}

/** One cue of the search: what to make, the weight to bring it to, and how far to bring its balance forward. */
export interface Candidate {
	readonly request: CueRequest;
	/** Null leaves the wood's own weight. */
	readonly massG: number | null;
	/** From where the usual rearmost slug has it. */
	readonly forwardMm: number;
}

/** Table woods: the shape's integrals do not depend on them. */
export const TABLE_WOODS = {
	shaftWood: "white-ash",
	buttWood: "gaboon-ebony",
} as const;

/** The shape of a request as a table, its joint put in. Refuses what `designFrom` refuses. */
export function tableFor(
	request: CueRequest,
	hand: HandPlace,
): Outcome<{ design: CueDesign; table: GeometryTable }> {
	const plain = designFrom({
		...request,
		...TABLE_WOODS,
		layout: "one-piece",
	});
	if (!plain.ok) return plain;
	const { lengthMm } = request;
	const table = geometryTable({
		design: plain.value,
		clampStationMm: lengthMm - handFromButtMm(hand, lengthMm),
	});
	if (request.layout === "one-piece")
		return accept({ design: plain.value, table });
	const jointed = designFrom({ ...request, ...TABLE_WOODS });
	if (!jointed.ok) return jointed;
	const { joint } = jointed.value;
	if (!joint) throw new RangeError(`layout ${request.layout} has no joint`);
	return accept({
		design: plain.value,
		table: withJoint({ plain: table, design: plain.value, joint }),
	});
}

export const densityOf = (wood: WoodId, densities: BilletDensities): number =>
	densities[wood]?.kgM3 ?? WOODS[wood].density12KgM3.value;

export const densitySdOf = (wood: WoodId, densities: BilletDensities): number =>
	densities[wood]?.sd ?? WOODS[wood].density12KgM3.sd;

/** What the two woods leave open in a cue's own weight, g. */
export const naturalSdG = (
	table: GeometryTable,
	woods: { readonly shaftWood: WoodId; readonly buttWood: WoodId },
	{ densities }: Pick<Setting, "densities">,
): number =>
	Math.hypot(
		table.shaft.zeroth * densitySdOf(woods.shaftWood, densities),
		table.butt.zeroth * densitySdOf(woods.buttWood, densities),
	) * 1e-6;

/** Densities of two woods and the added metal in g/mm³. */
export const densitiesFor = (
	woods: { readonly shaftWood: WoodId; readonly buttWood: WoodId },
	{ densities, addedMetal }: Pick<Setting, "densities" | "addedMetal">,
): Densities => ({
	shaft: densityOf(woods.shaftWood, densities) * 1e-6,
	butt: densityOf(woods.buttWood, densities) * 1e-6,
	metal: METALS[addedMetal].densityKgM3.value * 1e-6,
});

/** Joint from the butt end over the length, as the template has it. */
const JOINT_SHARE = {
	"one-piece": 0,
	"three-quarter": TEMPLATE.threeQuarterFromButtShare,
	centre: 0.5,
} as const;

/** Taken apart as far as it comes apart: at the joint and at a screw-in end piece. */
export function longestPieceMm(request: CueRequest): number {
	const { layout, lengthMm, fittings } = request;
	const endMm = fittings?.endPieceMm ?? 0;
	const rearMm =
		fittings?.jointFromButtMm ?? (JOINT_SHARE[layout] * lengthMm || endMm);
	return Math.max(lengthMm - rearMm, rearMm - endMm, endMm);
}

/** Measures that the shape alone decides. `endMassG` is of the shape with its shaft wood. */
export function measureShape(
	row: Float64Array,
	p: {
		request: CueRequest;
		design: CueDesign;
		endMassG: number;
		setting: Setting;
	},
): void {
	const { request, setting } = p;
	const { lengthMm, tipDiameterMm } = request;
	const handMm = handFromButtMm(setting.hand, lengthMm);
	row[AT.closure] = closureMm({
		circleMm: setting.ringMm,
		diameterMm: diameterAtMm(p.design, lengthMm - handMm),
	});
	row[AT.reach] = lengthMm;
	row[AT.tip] = tipDiameterMm;
	row[AT.deflection] = squirtDeg({
		offsetRatio: 0.5,
		ballMassG: GAMES[setting.gameId].cueBall.massG.value,
		endMassG: p.endMassG,
	});
	row[AT.forgiveness] = forgivenessShare({
		level: setting.level,
		tipDiameterMm,
	});
	row[AT.carrying] = longestPieceMm(request);
}

/** Measures that shape and woods decide. */
export function measureWoods(
	row: Float64Array,
	p: { request: CueRequest; table: GeometryTable; setting: Setting },
): void {
	const { request, table, setting } = p;
	row[AT.stiffness] = tipGiveMmPerN(table, {
		shaftGPa: bendingModulusGPa(request.shaftWood).value,
		buttGPa: bendingModulusGPa(request.buttWood).value,
	});
	row[AT.finish] = setting.offering.finishOf(request);
}

/**
 * The bench's burden as grams of metal: the metal itself, or what a bore reaching past the core into
 * the glued flats weighs as much as by the zones of the judgement.
 */
export function benchBurdenG(
	load: Pick<Load, "metalG" | "boreDiameterMm">,
	coreHalfWidthMm: number,
): number {
	if (load.metalG === 0) return 0;
	const { addedG, boreBeyondCoreMm } = BENCH_ZONE;
	const beyondMm = load.boreDiameterMm / 2 - coreHalfWidthMm;
	if (!(beyondMm > boreBeyondCoreMm.ideal)) return load.metalG;
	const share =
		(beyondMm - boreBeyondCoreMm.ideal) /
		(boreBeyondCoreMm.limit - boreBeyondCoreMm.ideal);
	const alike = addedG.ideal + share * (addedG.limit - addedG.ideal);
	return Math.max(alike, load.metalG);
}

/** Measures of the cue as loaded. `handMm` is the hand's middle from the butt end. */
export function measureLoad(
	row: Float64Array,
	p: {
		load: Load;
		handMm: number;
		coreHalfWidthMm: number;
		priceMinor: number;
	},
): void {
	const { load } = p;
	row[AT.weight] = load.massG;
	row[AT.steadiness] = inertiaAboutKgM2(load, p.handMm);
	row[AT.balance] = load.firstGMm / load.massG;
	row[AT.build] = benchBurdenG(load, p.coreHalfWidthMm);
	row[AT.price] = p.priceMinor;
}

/**
 * Overall desirability of a row of measures. With `least`, a desirability below it counts as it, so that
 * rows that fail somewhere can still be told apart; 0 keeps the strict product.
 */
export function overallOf(
	compiled: CompiledCriteria,
	row: ArrayLike<number>,
	least = 0,
): number {
	let logSum = 0;
	for (let i = 0; i < CRITERION_COUNT; i++) {
		const weight = compiled.weights[i] as number;
		if (weight > 0)
			logSum +=
				weight *
				Math.log(Math.max(least, compiled.desirability(i, row[i] as number)));
	}
	return Math.exp(logSum / compiled.weightSum);
}
