import { rememberLast } from "@/lib/numerics/remember-last";
import type { CueDesign, MaterialId, PlaneCut } from "./design";
import { diameterAtMm } from "./taper";

/** A metal, leather or wooden body of revolution that replaces the wood between two radii. */
export interface Sleeve {
	readonly part: string;
	readonly material: MaterialId;
	readonly fromStationMm: number;
	readonly toStationMm: number;
	readonly innerRadiusMm: number;
	/** Infinity reaches the surface. */
	readonly outerRadiusMm: number;
}

/** Every body that replaces wood, in order: a later one replaces an earlier one. */
export const sleevesOf: (design: CueDesign) => readonly Sleeve[] =
	rememberLast(bodiesOf);

function bodiesOf(design: CueDesign): readonly Sleeve[] {
	const { tip, ferrule, joint } = design;
	const ferruleEndMm = tip.heightMm + ferrule.lengthMm;
	const sleeves: Sleeve[] = [
		{
			part: "tip",
			material: "tip-leather",
			fromStationMm: 0,
			toStationMm: tip.heightMm,
			innerRadiusMm: 0,
			outerRadiusMm: Number.POSITIVE_INFINITY,
		},
		{
			part: "ferrule",
			material: ferrule.metal,
			fromStationMm: tip.heightMm,
			toStationMm: ferruleEndMm,
			innerRadiusMm: ferruleTenonRadiusMm(design),
			outerRadiusMm: Number.POSITIVE_INFINITY,
		},
	];
	for (const [part, one] of [
		["joint", joint],
		["end joint", design.endJoint],
	] as const) {
		if (!one) continue;
		sleeves.push(
			{
				part,
				material: one.metal,
				fromStationMm: one.stationMm - one.pinReachMm,
				toStationMm: one.stationMm + one.pinReachMm,
				innerRadiusMm: 0,
				outerRadiusMm: one.pinDiameterMm / 2,
			},
			{
				part,
				material: one.metal,
				fromStationMm: one.stationMm - one.collarMm,
				toStationMm: one.stationMm + one.collarMm,
				innerRadiusMm: 0,
				outerRadiusMm: Number.POSITIVE_INFINITY,
			},
		);
	}
	for (const plug of design.plugs)
		sleeves.push({
			part: "plug",
			material: plug.wood,
			fromStationMm: plug.fromStationMm,
			toStationMm: plug.toStationMm,
			innerRadiusMm: 0,
			outerRadiusMm: plug.diameterMm / 2,
		});
	for (const slug of design.addedWeight)
		sleeves.push({
			part: "added weight",
			material: slug.metal,
			fromStationMm: slug.fromStationMm,
			toStationMm: slug.toStationMm,
			innerRadiusMm: (slug.annulusInnerMm ?? 0) / 2,
			outerRadiusMm: slug.diameterMm / 2,
		});
	return sleeves;
}

/** A ring of the section: a body, or wood where `sleeve` is null. Infinity reaches the surface. */
export interface Shell {
	readonly innerRadiusMm: number;
	readonly outerRadiusMm: number;
	readonly sleeve: Sleeve | null;
}

const ALL_WOOD: readonly Shell[] = [
	{
		innerRadiusMm: 0,
		outerRadiusMm: Number.POSITIVE_INFINITY,
		sleeve: null,
	},
];

/** The rings that make up the section at a station, from the axis out. */
export function shellsAt(
	design: CueDesign,
	stationMm: number,
): readonly Shell[] {
	const bodies: Sleeve[] = [];
	const edges: number[] = [0, Number.POSITIVE_INFINITY];
	for (const body of sleevesOf(design)) {
		if (stationMm < body.fromStationMm || stationMm >= body.toStationMm)
			continue;
		bodies.push(body);
		for (const radius of [body.innerRadiusMm, body.outerRadiusMm])
			if (!edges.includes(radius)) edges.push(radius);
	}
	if (bodies.length === 0) return ALL_WOOD;
	edges.sort((a, b) => a - b);
	const shells: Shell[] = [];
	for (let i = 0; i + 1 < edges.length; i++) {
		const innerRadiusMm = edges[i] ?? 0;
		const outerRadiusMm = edges[i + 1] ?? 0;
		const sleeve =
			bodies.findLast(
				(body) =>
					body.innerRadiusMm <= innerRadiusMm &&
					body.outerRadiusMm >= outerRadiusMm,
			) ?? null;
		const below = shells[shells.length - 1];
		if (below && below.sleeve === sleeve)
			shells[shells.length - 1] = { ...below, outerRadiusMm };
		else shells.push({ innerRadiusMm, outerRadiusMm, sleeve });
	}
	return shells;
}

/** Radius of the wooden tenon inside the ferrule, the same along its length. */
export function ferruleTenonRadiusMm(design: CueDesign): number {
	return diameterAtMm(design, design.tip.heightMm) / 2 - design.ferrule.wallMm;
}

/** Distance of a planed flat from the axis at a station, mm. */
export function cutOffsetMm(p: {
	design: CueDesign;
	cut: PlaneCut;
	stationMm: number;
}): number {
	return (
		p.cut.buttOffsetMm +
		(p.design.lengthMm - p.stationMm) *
			Math.tan((p.cut.angleDeg * Math.PI) / 180)
	);
}

/** Half-width of the machine splice's crossed strips at a station, mm; Infinity before the points. */
export function prongHalfWidthMm(design: CueDesign, stationMm: number): number {
	const { base } = design.splice;
	if (base.kind !== "prongs")
		throw new RangeError(`a ${base.kind} base has no prongs`);
	if (stationMm < base.pointStationMm) return Number.POSITIVE_INFINITY;
	if (stationMm >= base.endStationMm) return 0;
	return (
		(base.pointHalfWidthMm * (base.endStationMm - stationMm)) /
		(base.endStationMm - base.pointStationMm)
	);
}
