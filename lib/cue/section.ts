import type { CueDesign, MaterialId } from "./design";
import { bendingModulusGPa, densityKgM3 } from "./materials";
import { regionsAt } from "./regions";
import { outlineRadiusMm } from "./taper";

export interface CueSection {
	readonly diameterMm: number;
	readonly areaMm2: number;
	readonly areaByMaterialMm2: Readonly<Partial<Record<MaterialId, number>>>;
	/** Areas of the wood that runs up from the tip, and of all wood glued to it, over the section. */
	readonly shaftWoodShare: number;
	readonly buttWoodShare: number;
	/** Leather and metal. */
	readonly otherShare: number;
}

/**
 * The turned section at a station, from exact areas of a disc cut by planes.
 * Throws RangeError outside 0–lengthMm.
 */
export function sectionAt(design: CueDesign, stationMm: number): CueSection {
	const radiusMm = outlineRadiusMm(design, stationMm);
	const areaMm2 = Math.PI * radiusMm * radiusMm;
	const areaByMaterialMm2: Partial<Record<MaterialId, number>> = {};
	let shaft = 0;
	let butt = 0;
	for (const { part, material, moments } of regionsAt(design, stationMm)) {
		areaByMaterialMm2[material] =
			(areaByMaterialMm2[material] ?? 0) + moments.area;
		if (part === "shaft") shaft += moments.area;
		else if (!FITTINGS.has(part)) butt += moments.area;
	}
	const share = (part: number) => (areaMm2 > 0 ? part / areaMm2 : 0);
	return {
		diameterMm: 2 * radiusMm,
		areaMm2,
		areaByMaterialMm2,
		shaftWoodShare: share(shaft),
		buttWoodShare: share(butt),
		otherShare: areaMm2 > 0 ? 1 - share(shaft) - share(butt) : 0,
	};
}

const FITTINGS: ReadonlySet<string> = new Set([
	"tip",
	"ferrule",
	"joint",
	"end joint",
	"added weight",
	"plug",
]);

export interface BendingSection {
	readonly massPerLengthKgM: number;
	/** Σ E ∬ x² dA about the stiffness-weighted centre: bending that moves the axis along x. */
	readonly stiffnessXNm2: number;
	/** Bending that moves the axis along y. */
	readonly stiffnessYNm2: number;
}

/**
 * Mass per length and bending stiffness of the composite section, plane sections staying plane.
 * Moduli are the table's, free of shear. Throws RangeError outside 0–lengthMm.
 */
export function bendingSectionAt(
	design: CueDesign,
	stationMm: number,
): BendingSection {
	let massPerLengthKgM = 0;
	let axial = 0;
	let firstX = 0;
	let firstY = 0;
	let secondX = 0;
	let secondY = 0;
	for (const { material, moments } of regionsAt(design, stationMm)) {
		massPerLengthKgM +=
			moments.area * 1e-6 * densityKgM3(design, material).value;
		const modulusPa = bendingModulusGPa(material).value * 1e9;
		axial += modulusPa * moments.area * 1e-6;
		firstX += modulusPa * moments.firstX * 1e-9;
		firstY += modulusPa * moments.firstY * 1e-9;
		secondX += (modulusPa * (moments.polar + moments.difference) * 1e-12) / 2;
		secondY += (modulusPa * (moments.polar - moments.difference) * 1e-12) / 2;
	}
	if (axial === 0)
		return { massPerLengthKgM: 0, stiffnessXNm2: 0, stiffnessYNm2: 0 };
	return {
		massPerLengthKgM,
		stiffnessXNm2: secondX - (firstX * firstX) / axial,
		stiffnessYNm2: secondY - (firstY * firstY) / axial,
	};
}
