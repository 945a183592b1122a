import type { CueDesign, MaterialId } from "./design";
import { cutOffsetMm, prongHalfWidthMm, sleevesOf } from "./layers";
import { outlineRadiusMm } from "./taper";

export interface MaterialPoint {
	readonly part: string;
	readonly material: MaterialId;
}

/**
 * What stands at a point of the cue, or null outside it. The angle turns round the axis from the x
 * axis; bodies of revolution win over planed flats, flats over the base wood, later over earlier.
 */
export function materialAt(p: {
	design: CueDesign;
	stationMm: number;
	angleDeg: number;
	radiusMm: number;
}): MaterialPoint | null {
	const { design, stationMm, radiusMm } = p;
	if (stationMm < 0 || stationMm > design.lengthMm || radiusMm < 0) return null;
	if (radiusMm > outlineRadiusMm(design, stationMm)) return null;
	const sleeve = sleevesOf(design).findLast(
		(body) =>
			stationMm >= body.fromStationMm &&
			stationMm < body.toStationMm &&
			radiusMm >= body.innerRadiusMm &&
			radiusMm < body.outerRadiusMm,
	);
	if (sleeve) return { part: sleeve.part, material: sleeve.material };
	const angleRad = (p.angleDeg * Math.PI) / 180;
	const cut = design.splice.cuts.findLast(
		(flat) =>
			radiusMm * Math.cos(angleRad - (flat.faceAngleDeg * Math.PI) / 180) >
			cutOffsetMm({ design, cut: flat, stationMm }),
	);
	if (cut) return { part: cut.part, material: cut.wood };
	return inShaftWood({ design, stationMm, angleRad, radiusMm })
		? { part: "shaft", material: design.shaftWood }
		: { part: "butt", material: design.buttWood };
}

function inShaftWood(p: {
	design: CueDesign;
	stationMm: number;
	angleRad: number;
	radiusMm: number;
}): boolean {
	const { base } = p.design.splice;
	if (base.kind === "through") return true;
	if (base.kind === "tenon") {
		if (p.stationMm < base.joinStationMm) return true;
		return (
			p.stationMm < base.joinStationMm + base.tenonLengthMm &&
			p.radiusMm < base.tenonDiameterMm / 2
		);
	}
	const half = prongHalfWidthMm(p.design, p.stationMm);
	const along = Math.abs(p.radiusMm * Math.cos(p.angleRad - Math.PI / 4));
	const across = Math.abs(p.radiusMm * Math.sin(p.angleRad - Math.PI / 4));
	return along < half || across < half;
}
