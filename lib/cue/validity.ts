import { outside, type Refusal } from "@/lib/numerics/outcome";
import { WOOD_IDS, WOODS } from "@/lib/reference/woods";
import type { CueRequest, FittingsRequest } from "./design";
import { TAPER_LIMITS } from "./taper";

/** What fittings may be, mm. This project's judgement. */
export const FITTING_LIMITS = {
	tipHeightMm: [1, 12],
	domeRadiusMm: [7, 20],
	ferruleLengthMm: [4, 40],
	ferruleWallMm: [0.4, 1.5],
	endPieceMm: [50, 400],
	buttEndRadiusMm: [0, 8],
} as const satisfies Partial<
	Record<keyof FittingsRequest, readonly [number, number]>
>;

/** Every refusal of a request's plain figures; empty where it can be built on. */
export function refusalsOf(request: CueRequest): readonly Refusal[] {
	const { lengthMm, buttDiameterMm, tipDiameterMm } = request;
	const refusals = [
		outside("lengthMm", lengthMm, ...TAPER_LIMITS.lengthMm),
		outside("buttDiameterMm", buttDiameterMm, ...TAPER_LIMITS.buttDiameterMm),
		outside("tipDiameterMm", tipDiameterMm, ...TAPER_LIMITS.tipDiameterMm),
	].filter((refusal) => refusal !== null);
	if (refusals.length > 0) return refusals;
	const growth = outside(
		"buttDiameterMm",
		buttDiameterMm,
		tipDiameterMm + TAPER_LIMITS.minGrowthMm,
		TAPER_LIMITS.buttDiameterMm[1],
	);
	return [
		...(growth ? [growth] : []),
		...taperRefusals(request),
		...woodRefusals(request),
		...fittingRefusals(request),
	];
}

/** Free stations must lie between tip and butt, rise along the cue and never thin towards the butt. */
function taperRefusals(request: CueRequest): readonly Refusal[] {
	const refusals: Refusal[] = [];
	let lastStationMm = 0;
	let lastDiameterMm = request.tipDiameterMm;
	(request.freeTaper ?? []).forEach((point, i) => {
		const field = `freeTaper.${i}`;
		const station = outside(
			`${field}.stationMm`,
			point.stationMm,
			lastStationMm + 1,
			request.lengthMm - 1,
		);
		const diameter = outside(
			`${field}.diameterMm`,
			point.diameterMm,
			lastDiameterMm,
			request.buttDiameterMm,
		);
		if (station) refusals.push(station);
		if (diameter) refusals.push(diameter);
		lastStationMm = point.stationMm;
		lastDiameterMm = point.diameterMm;
	});
	return refusals;
}

function woodRefusals(request: CueRequest): readonly Refusal[] {
	const refusals: Refusal[] = [];
	for (const [field, wood, use] of [
		["shaftWood", request.shaftWood, "shaft"],
		["buttWood", request.buttWood, "butt"],
	] as const)
		if (!WOODS[wood].uses.includes(use))
			refusals.push({
				code: "wood-not-for-part",
				field,
				value: wood,
				facts: { part: use },
			});
	for (const wood of WOOD_IDS) {
		const billet = request.densities?.[wood];
		if (!billet) continue;
		const density = outside(`densities.${wood}.kgM3`, billet.kgM3, 300, 1500);
		const spread = outside(`densities.${wood}.sd`, billet.sd, 0, 300);
		if (density) refusals.push(density);
		if (spread) refusals.push(spread);
	}
	return refusals;
}

function fittingRefusals(request: CueRequest): readonly Refusal[] {
	const { fittings = {}, layout, lengthMm, tipDiameterMm } = request;
	const refusals: Refusal[] = [];
	for (const name of Object.keys(
		FITTING_LIMITS,
	) as (keyof typeof FITTING_LIMITS)[]) {
		const value = fittings[name];
		if (value === undefined) continue;
		const [low, high] = FITTING_LIMITS[name];
		const refusal = outside(`fittings.${name}`, value, low, high);
		if (refusal) refusals.push(refusal);
	}
	const { domeRadiusMm, jointFromButtMm } = fittings;
	if (domeRadiusMm !== undefined && domeRadiusMm < tipDiameterMm / 2 + 0.5)
		refusals.push({
			code: "out-of-range",
			field: "fittings.domeRadiusMm",
			value: domeRadiusMm,
			min: tipDiameterMm / 2 + 0.5,
			max: FITTING_LIMITS.domeRadiusMm[1],
		});
	if (jointFromButtMm === undefined) return refusals;
	if (layout === "one-piece")
		refusals.push({
			code: "no-joint-in-layout",
			field: "fittings.jointFromButtMm",
			value: jointFromButtMm,
		});
	const joint = outside(
		"fittings.jointFromButtMm",
		jointFromButtMm,
		0.15 * lengthMm,
		0.65 * lengthMm,
	);
	if (joint) refusals.push(joint);
	return refusals;
}
