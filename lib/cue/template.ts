import { accept, type Outcome, refuse } from "@/lib/numerics/outcome";
import type {
	BaseWood,
	CueDesign,
	CueRequest,
	Joint,
	TaperPoint,
} from "./design";
import { cutsFor } from "./splicing";
import { taperCurve, taperPoints } from "./taper";
import { refusalsOf } from "./validity";

/** Common practice without a source, mm unless said: what a workshop would make unless asked otherwise. */
export const TEMPLATE = {
	tipHeightMm: 4,
	/** Close to the published 8.95 mm of the dome gauge in use with small tips. */
	domeRadiusMm: 9,
	ferruleLengthMm: 10,
	ferruleWallMm: 0.8,
	buttEndRadiusMm: 4,
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
	endJointPinDiameterMm: 10,
	endJointPinReachMm: 15,
} as const;

/**
 * The project's standard cue of a request. Refuses with field, value and bound outside 700–1700 mm
 * length, 22–34 mm butt, 7–14 mm tip, 8 mm growth; where free stations do not rise; where a wood is
 * not used for that part; where a billet density is not 300–1500 kg/m³; where a flat cannot be planed;
 * and where two metal parts would meet.
 */
export function designFrom(request: CueRequest): Outcome<CueDesign> {
	const refusals = refusalsOf(request);
	if (refusals.length > 0) return refuse(...refusals);
	const { lengthMm, fittings = {} } = request;
	const taper = taperOf(request);
	const radiusAt = (stationMm: number) => taperCurve(taper).at(stationMm) / 2;
	const cuts = cutsFor(request, { lengthMm, radiusAt });
	if (!cuts.ok) return cuts;
	const joint = jointFor(request);
	const endJoint = endJointFor(request);
	const gapMm =
		joint && endJoint
			? endJoint.stationMm -
				endJoint.pinReachMm -
				(joint.stationMm + joint.pinReachMm)
			: Number.POSITIVE_INFINITY;
	if (gapMm < 20)
		return refuse({
			code: "joints-too-close",
			field: "fittings.endPieceMm",
			value: fittings.endPieceMm ?? 0,
			max: (fittings.endPieceMm ?? 0) - (20 - gapMm),
		});
	return accept({
		lengthMm,
		taper,
		tip: {
			heightMm: fittings.tipHeightMm ?? TEMPLATE.tipHeightMm,
			domeRadiusMm: fittings.domeRadiusMm ?? TEMPLATE.domeRadiusMm,
		},
		ferrule: {
			metal: request.ferruleMetal,
			lengthMm: fittings.ferruleLengthMm ?? TEMPLATE.ferruleLengthMm,
			wallMm: fittings.ferruleWallMm ?? TEMPLATE.ferruleWallMm,
		},
		shaftWood: request.shaftWood,
		buttWood: request.buttWood,
		splice: {
			id: request.splice,
			base: baseFor(request, radiusAt),
			cuts: cuts.value,
		},
		layout: request.layout,
		joint,
		endJoint,
		addedWeight: [],
		plugs: [],
		buttEndRadiusMm: fittings.buttEndRadiusMm ?? TEMPLATE.buttEndRadiusMm,
		densities: request.densities ?? {},
	});
}

function taperOf(request: CueRequest): readonly TaperPoint[] {
	if (!request.freeTaper) return taperPoints(request);
	return [
		{ stationMm: 0, diameterMm: request.tipDiameterMm },
		...request.freeTaper,
		{ stationMm: request.lengthMm, diameterMm: request.buttDiameterMm },
	];
}

function baseFor(
	request: CueRequest,
	radiusAt: (stationMm: number) => number,
): BaseWood {
	const { lengthMm } = request;
	if (request.splice === "hand-four-point") return { kind: "through" };
	if (request.splice === "plain")
		return {
			kind: "tenon",
			joinStationMm: lengthMm * (1 - TEMPLATE.plainButtShare),
			tenonDiameterMm: TEMPLATE.tenonDiameterMm,
			tenonLengthMm: TEMPLATE.tenonLengthMm,
		};
	const pointStationMm = lengthMm * (1 - TEMPLATE.prongPointShare);
	return {
		kind: "prongs",
		pointStationMm,
		endStationMm: lengthMm * (1 - TEMPLATE.prongEndShare),
		pointHalfWidthMm: radiusAt(pointStationMm) / Math.SQRT2,
	};
}

function jointFor(request: CueRequest): Joint | null {
	const { layout, lengthMm, fittings = {} } = request;
	if (layout === "one-piece") return null;
	const share = layout === "centre" ? 0.5 : TEMPLATE.threeQuarterFromButtShare;
	return {
		stationMm: lengthMm - (fittings.jointFromButtMm ?? share * lengthMm),
		metal: fittings.jointMetal ?? "brass",
		pinDiameterMm: TEMPLATE.jointPinDiameterMm,
		pinReachMm: TEMPLATE.jointPinReachMm,
		collarMm: TEMPLATE.jointCollarMm,
	};
}

function endJointFor(request: CueRequest): Joint | null {
	const { lengthMm, fittings = {} } = request;
	if (fittings.endPieceMm === undefined) return null;
	return {
		stationMm: lengthMm - fittings.endPieceMm,
		metal: fittings.jointMetal ?? "brass",
		pinDiameterMm: TEMPLATE.endJointPinDiameterMm,
		pinReachMm: TEMPLATE.endJointPinReachMm,
		collarMm: TEMPLATE.jointCollarMm,
	};
}
