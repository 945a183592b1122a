import type { Estimate, SourcedConstant } from "@/lib/reference/estimate";
import {
	METALS,
	type MetalId,
	PHENOLIC,
	TIP_LEATHER,
} from "@/lib/reference/metals";
import { WOODS, type WoodId } from "@/lib/reference/woods";
import type { CueDesign, MaterialId } from "./design";

export const isWood = (material: MaterialId): material is WoodId =>
	material in WOODS;
const isMetal = (material: MaterialId): material is MetalId =>
	material in METALS;

const asEstimate = (constant: SourcedConstant): Estimate => ({
	value: constant.value,
	sd: constant.sd,
	standing: constant.standing,
	sources: [constant.source],
});

/** Density of a material in a design, kg/m³: the workshop's billet where it was weighed, else published. */
export function densityKgM3(design: CueDesign, material: MaterialId): Estimate {
	if (isWood(material)) {
		const billet = design.densities[material];
		if (billet)
			return {
				value: billet.kgM3,
				sd: billet.sd,
				standing: "measured",
				sources: ["measured-here"],
			};
		return asEstimate(WOODS[material].density12KgM3);
	}
	if (isMetal(material)) return asEstimate(METALS[material].densityKgM3);
	return asEstimate(
		(material === "phenolic" ? PHENOLIC : TIP_LEATHER).densityKgM3,
	);
}

/** Shear-free bending modulus is this much above the handbook's centre-loaded one (its units note). */
const SHEAR_FREE_RATIO = 1.1;

/**
 * Bending modulus along the grain, GPa, free of shear. Where no figure was found, the handbook's
 * hardwood relation 16.5·G^0.7 at 12 % moisture (from memory), spread 30 %.
 */
export function bendingModulusGPa(material: MaterialId): Estimate {
	if (isWood(material)) {
		const wood = WOODS[material];
		if (wood.modulusGPa === null) {
			const gravity = wood.density12KgM3.value / 1120;
			const value = 16.5 * gravity ** 0.7;
			return {
				value,
				sd: 0.3 * value,
				standing: "derived",
				sources: ["wood-handbook-2010", wood.density12KgM3.source],
			};
		}
		const ratio = wood.modulusLoading === "centre" ? SHEAR_FREE_RATIO : 1;
		return {
			value: wood.modulusGPa.value * ratio,
			sd: wood.modulusGPa.sd * ratio,
			standing: ratio === 1 ? wood.modulusGPa.standing : "derived",
			sources: [wood.modulusGPa.source],
		};
	}
	if (isMetal(material)) return asEstimate(METALS[material].modulusGPa);
	return asEstimate(
		(material === "phenolic" ? PHENOLIC : TIP_LEATHER).modulusGPa,
	);
}
