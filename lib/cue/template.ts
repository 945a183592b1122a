import {
	accept,
	type Outcome,
	outside,
	type Refusal,
	refuse,
} from "@/lib/numerics/outcome";
import { WOODS } from "@/lib/reference/woods";
import type { CueDesign, CueRequest, Joint, Splice } from "./design";
import { TAPER_LIMITS, taperCurve, taperPoints } from "./taper";

/** Common practice without a source, mm unless said: what a workshop would make unless asked otherwise. */
export const TEMPLATE = {
	tipHeightMm: 4,
	/** Close to the published 8.95 mm of the dome gauge in use with small tips. */
	domeRadiusMm: 9,
	ferruleLengthMm: 10,
	ferruleWallMm: 0.8,
	buttEndRadiusMm: 4,
	/** Splice points stand this share of the length from the butt, at most 711 mm (28 in). */
	pointFromButtShare: 0.475,
	pointFromButtMaxMm: 700,
	/** Half the core left at the butt end, as a share of the butt radius. */
	coreShare: 0.35,
	/** Machine splice: butt prongs' points and shaft prongs' ends from the butt, shares of the length. */
	prongPointShare: 0.42,
	prongEndShare: 0.19,
	/** Plain butt: share of the length, and its glued joint. */
	plainButtShare: 0.3,
	tenonDiameterMm: 12,
	tenonLengthMm: 50,
	threeQuarterFromButtShare: 0.3,
	jointPinDiameterMm: 11,
	jointPinReachMm: 20,
	jointCollarMm: 2,
} as const;

/**
 * The project's standard cue of a request. Refuses with field, value and bound outside 700–1700 mm
 * length, 22–34 mm butt, 7–14 mm tip, 8 mm growth; where a wood is not used for that part; and where
 * a billet density is not 300–1500 kg/m³.
 */
export function designFrom(request: CueRequest): Outcome<CueDesign> {
	const refusals = validity(request);
	if (refusals.length > 0) return refuse(...refusals);
	const { lengthMm } = request;
	const taper = taperPoints(request);
	return accept({
		lengthMm,
		taper,
		tip: {
			heightMm: TEMPLATE.tipHeightMm,
			domeRadiusMm: TEMPLATE.domeRadiusMm,
		},
		ferrule: {
			metal: request.ferruleMetal,
			lengthMm: TEMPLATE.ferruleLengthMm,
			wallMm: TEMPLATE.ferruleWallMm,
		},
		shaftWood: request.shaftWood,
		buttWood: request.buttWood,
		splice: spliceFor(
			request,
			(stationMm) => taperCurve(taper).at(stationMm) / 2,
		),
		layout: request.layout,
		joint: jointFor(request),
		addedWeight: [],
		plugs: [],
		buttEndRadiusMm: TEMPLATE.buttEndRadiusMm,
		densities: request.densities ?? {},
	});
}

function validity(request: CueRequest): readonly Refusal[] {
	const { lengthMm, buttDiameterMm, tipDiameterMm } = request;
	const refusals = [
		outside("lengthMm", lengthMm, ...TAPER_LIMITS.lengthMm),
		outside("buttDiameterMm", buttDiameterMm, ...TAPER_LIMITS.buttDiameterMm),
		outside("tipDiameterMm", tipDiameterMm, ...TAPER_LIMITS.tipDiameterMm),
	].filter((refusal) => refusal !== null);
	if (refusals.length === 0) {
		const growth = outside(
			"buttDiameterMm",
			buttDiameterMm,
			tipDiameterMm + TAPER_LIMITS.minGrowthMm,
			TAPER_LIMITS.buttDiameterMm[1],
		);
		if (growth) refusals.push(growth);
	}
	for (const [field, wood, use] of [
		["shaftWood", request.shaftWood, "shaft"],
		["buttWood", request.buttWood, "butt"],
	] as const) {
		if (!WOODS[wood].uses.includes(use))
			refusals.push({
				code: "wood-not-for-part",
				field,
				value: wood,
				facts: { part: use },
			});
	}
	for (const [wood, billet] of Object.entries(request.densities ?? {})) {
		if (!billet) continue;
		const density = outside(`densities.${wood}.kgM3`, billet.kgM3, 300, 1500);
		const spread = outside(`densities.${wood}.sd`, billet.sd, 0, 300);
		if (density) refusals.push(density);
		if (spread) refusals.push(spread);
	}
	return refusals;
}

function spliceFor(
	request: CueRequest,
	radiusAt: (stationMm: number) => number,
): Splice {
	const { lengthMm, splice: id } = request;
	if (id === "plain")
		return {
			id,
			base: {
				kind: "tenon",
				joinStationMm: lengthMm * (1 - TEMPLATE.plainButtShare),
				tenonDiameterMm: TEMPLATE.tenonDiameterMm,
				tenonLengthMm: TEMPLATE.tenonLengthMm,
			},
			cuts: [],
		};
	if (id === "machine-four-point") {
		const pointStationMm = lengthMm * (1 - TEMPLATE.prongPointShare);
		return {
			id,
			base: {
				kind: "prongs",
				pointStationMm,
				endStationMm: lengthMm * (1 - TEMPLATE.prongEndShare),
				pointHalfWidthMm: radiusAt(pointStationMm) / Math.SQRT2,
			},
			cuts: [],
		};
	}
	const fromButtMm = Math.min(
		TEMPLATE.pointFromButtMaxMm,
		lengthMm * TEMPLATE.pointFromButtShare,
	);
	const buttOffsetMm = TEMPLATE.coreShare * radiusAt(lengthMm);
	const angleDeg =
		(Math.atan((radiusAt(lengthMm - fromButtMm) - buttOffsetMm) / fromButtMm) *
			180) /
		Math.PI;
	const flat = (part: string, faceAngleDeg: number) => ({
		part,
		wood: request.buttWood,
		faceAngleDeg,
		buttOffsetMm,
		angleDeg,
	});
	return {
		id,
		base: { kind: "through" },
		cuts: [
			flat("first splice pair", 0),
			flat("first splice pair", 180),
			flat("second splice pair", 90),
			flat("second splice pair", 270),
		],
	};
}

function jointFor(request: CueRequest): Joint | null {
	if (request.layout === "one-piece") return null;
	const share =
		request.layout === "centre" ? 0.5 : TEMPLATE.threeQuarterFromButtShare;
	return {
		stationMm: request.lengthMm * (1 - share),
		metal: "brass",
		pinDiameterMm: TEMPLATE.jointPinDiameterMm,
		pinReachMm: TEMPLATE.jointPinReachMm,
		collarMm: TEMPLATE.jointCollarMm,
	};
}
